// The guide between two taps, by touch: the tally runs on, a pause is told why, steps are taken back together, a strayed
// pass asks why, a refill asks what was left, and the first trial on paving becomes a calibration.
import type { Page } from '@playwright/test';
import type { Panel } from '../src/lib/generated/Panel';
import { expect, test, type App } from './app';
import { axeFinds } from './judge';
import { bentLawn, keepLawn } from './lawns';
import { show } from './screens';
import { Visitor } from './visitor';

const heading = (page: Page, name: string | RegExp) => page.getByRole('heading', { level: 1, name });
const main = (page: Page) => page.locator('button.main-act');
const inTank = (page: Page) => page.locator('.tally dl > div').nth(3).locator('b');

const axeFindsNothing = async (page: Page): Promise<void> => expect(await axeFinds(page)).toEqual([]);

/** A visit that stands at a panel. */
async function visitAt(app: App, panel: Panel['panel'], lawn = 'Front lawn', change = {}): Promise<Visitor> {
  const visitor = new Visitor(app);
  visitor.change = change;
  await visitor.open(lawn);
  await visitor.until(panel);
  return visitor;
}

/** The first kit with a tank so small that it is filled again in mid-pass. */
async function withSmallTank(app: App): Promise<void> {
  const kits = await app.ask({ ask: 'kits' });
  const kit = kits.answer === 'kits' ? kits.value.find(({ entry }) => entry.calibration !== null) : undefined;
  if (kit === undefined) throw new Error('no kit that was measured');
  const input = { ...kit.entry.input, tank: { text: '3', unit: 'L' } };
  await app.ask({ ask: 'save_kit', kit_id: kit.id, input, draft_key: null });
}

test('the tally counts down between two taps and stands still in a pause', async ({ page, app }) => {
  const visitor = await visitAt(app, 'walk');
  await page.clock.install();
  await show(page, app, `#/visit/${visitor.visitId}`);
  await expect(heading(page, 'Walk')).toBeVisible();
  const before = Number(await inTank(page).textContent());
  await page.clock.runFor(60_000);
  const after = Number(await inTank(page).textContent());
  expect(before - after).toBeGreaterThan(0.4);
  expect(before - after).toBeLessThan(1.2);
  await page.getByRole('button', { name: 'Pause' }).tap();
  await expect(heading(page, 'Paused')).toBeVisible();
  const paused = await inTank(page).textContent();
  await page.clock.runFor(60_000);
  await expect(inTank(page)).toHaveText(paused ?? '');
});

test('a pause is one tap, and why is told after it', async ({ page, app }) => {
  const visitor = await visitAt(app, 'walk');
  await show(page, app, `#/visit/${visitor.visitId}`);
  await page.getByRole('button', { name: 'Pause' }).tap();
  await expect(page.getByRole('heading', { name: 'Why did you stop?' })).toBeVisible();
  await axeFindsNothing(page);
  const rain = page.getByRole('button', { name: 'Rain', exact: true });
  await rain.tap();
  await expect(rain).toHaveAttribute('aria-pressed', 'true');
  await expect(page.getByText('Paused: Rain')).toBeVisible();
  const { panel } = await visitor.look();
  if (panel.panel !== 'walk') throw new Error('not walking');
  for (const _ of panel.again) {
    await main(page).tap();
    await page.waitForTimeout(520);
  }
  await page.getByRole('button', { name: 'Carry on walking' }).tap();
  await expect(heading(page, 'Walk')).toBeVisible();
});

test('the rest is left for another day, and waits on the first page', async ({ page, app }) => {
  const visitor = await visitAt(app, 'walk', 'Front lawn', { guide: 'strip' });
  for (let strip = 0; strip < 4; strip += 1) await visitor.act({ act: 'strip_done' });
  await show(page, app, `#/visit/${visitor.visitId}`);
  await page.getByRole('button', { name: 'Pause' }).tap();
  await page.locator('summary', { hasText: 'Finish it another day' }).tap();
  await expect(page.getByText('Mixture is not kept in the sprayer')).toBeVisible();
  await page.getByRole('button', { name: 'End for today' }).tap();
  await expect(heading(page, 'What is left in the tank?')).toBeVisible();
  const { panel } = await visitor.look();
  if (panel.panel !== 'pass_end') throw new Error('the tank is not read');
  const left = (panel.most.value - 1.2).toFixed(2);
  await page.getByRole('textbox', { name: 'Left in the tank' }).fill(left);
  await main(page).tap();
  await expect(heading(page, 'Use up what is left')).toBeVisible();
  await visitor.look();
  await visitor.until('closed');
  await show(page, app, '#/home');
  await expect(page.getByRole('button', { name: /Treat the rest/ })).toBeVisible();
  const home = await app.ask({ ask: 'home' });
  expect(home.answer === 'home' ? home.value.unfinished.map((one) => one.visit_id) : []).toContain(visitor.visitId);
});

test('steps are taken back to a chosen one at one touch', async ({ page, app }) => {
  const visitor = await visitAt(app, 'walk', 'Front lawn', { guide: 'strip' });
  for (let strip = 0; strip < 4; strip += 1) await visitor.act({ act: 'strip_done' });
  await show(page, app, `#/visit/${visitor.visitId}`);
  await page.getByRole('button', { name: 'More' }).tap();
  await page.locator('summary', { hasText: 'Take back' }).tap();
  await axeFindsNothing(page);
  const second = page.getByRole('listitem').filter({ hasText: 'Strip 2 of pass 1 was done' });
  await second.getByRole('button', { name: /Take back to here/ }).tap();
  await expect.poll(async () => (await visitor.look()).panel).toMatchObject({ strip: { strip: 2 } });
});

test('a pass that strayed asks why before anything is put right', async ({ page, app }) => {
  const visitor = await visitAt(app, 'pass_end');
  const { panel } = visitor.view;
  if (panel.panel !== 'pass_end') throw new Error('the pass has not ended');
  const left = { text: (panel.planned_left.value + 1.2).toFixed(2), unit: panel.planned_left.unit };
  await visitor.act({ act: 'tank_left', left });
  await show(page, app, `#/visit/${visitor.visitId}`);
  await expect(page.getByText(/It took .* less than it should/)).toBeVisible();
  // Nobody's guess: not knowing stands ready, and a clicker alone gets on.
  await expect(main(page)).toContainText('I do not know');
  await axeFindsNothing(page);
  await page.locator('label', { hasText: 'The nozzle or its strainer was blocked' }).tap();
  await page.getByRole('button', { name: /This is why/ }).tap();
  await expect(page.getByText('Never blow through them with your mouth')).toBeVisible();
  await expect(page.getByRole('button', { name: /Do this/ })).toBeVisible();
  await axeFindsNothing(page);
  await page.reload();
  await expect(page.getByText('Never blow through them with your mouth')).toBeVisible();
  await page.getByRole('button', { name: 'It was something else' }).tap();
  await expect(page.getByRole('button', { name: /This is why/ })).toBeVisible();
});

test('a refill in mid-pass asks what is left before anything is poured', async ({ page, app }) => {
  await withSmallTank(app);
  await keepLawn(app, bentLawn('Short-tank lawn'));
  const visitor = await visitAt(app, 'walk', 'Short-tank lawn');
  await show(page, app, `#/visit/${visitor.visitId}`);
  await expect(page.getByText(/Refill before strip/)).toBeVisible();
  await page.getByRole('button', { name: /Refill now/ }).tap();
  await expect(page.getByRole('heading', { name: 'What is left in the tank?' })).toBeVisible();
  await axeFindsNothing(page);
  const left = page.getByRole('textbox', { name: 'Left in the tank' });
  await left.fill('a drop');
  await main(page).tap();
  await expect(left).toHaveAttribute('aria-invalid', 'true');
  await expect(left).toHaveValue('a drop');
  await left.fill('0.6');
  await page.waitForTimeout(520);
  await page.getByRole('button', { name: /Write down what is left/ }).tap();
  await expect(page.getByText(/There are 0\.6.* still in the tank/)).toBeVisible();
  await expect(page.getByRole('button', { name: /Done, next step/ })).toBeVisible();
});

test('the rest is drawn on the strips that may take it', async ({ page, app }) => {
  const visitor = await visitAt(app, 'walk', 'Front lawn', { guide: 'strip', dose: { text: '2.5', unit: 'mL/m2' } });
  for (let strip = 0; strip < 3; strip += 1) await visitor.act({ act: 'strip_done' });
  await visitor.act({ act: 'stop_for_good', reason: 'client', note: '' });
  const { panel } = visitor.view;
  if (panel.panel !== 'pass_end') throw new Error('the tank is not read');
  // At 2.5 mL/m2 of at most 5 there is room for the rest of three passes on less than half of the lawn.
  const left = { text: (panel.most.value - 0.9).toFixed(2), unit: 'L' };
  await visitor.act({ act: 'tank_left', left });
  await show(page, app, `#/visit/${visitor.visitId}`);
  const part = page.locator('label', { hasText: 'On part of the lawn' });
  await part.tap();
  await expect(page.getByRole('img', { name: /The strips that take the rest/ })).toBeVisible();
  await axeFindsNothing(page);
});

test('a trial on paving becomes a calibration with its evidence', async ({ page, app }) => {
  const kits = await app.ask({ ask: 'kits' });
  const kit = kits.answer === 'kits' ? kits.value.find(({ entry }) => entry.calibration === null) : undefined;
  if (kit === undefined) throw new Error('no kit that was never measured');
  await page.clock.install();
  await show(page, app, `#/calibrate/${kit.id}`);
  await page.getByRole('link', { name: 'Trial on paving' }).tap();
  await expect(heading(page, 'Trial on paving')).toBeVisible();
  await axeFindsNothing(page);
  await page.getByRole('checkbox', { name: 'The full sprayer was on my back' }).check();
  // Time stands still but for what is let go by: walks that differ by more than a tenth would be refused, and rightly.
  await page.clock.pauseAt(Date.now() + 120_000);
  for (const poured of ['600', '604', '596']) {
    for (let length = 0; length < 4; length += 1) {
      await page.getByRole('button', { name: 'Start at the first mark' }).tap();
      await page.clock.runFor(10_000);
      await page.getByRole('button', { name: /At the second mark/ }).tap();
      await page.clock.runFor(1_000);
    }
    await page.getByRole('textbox', { name: 'Poured back up to the mark' }).fill(poured);
    await page.getByRole('button', { name: 'The round is done' }).tap();
    await page.clock.runFor(1_000);
  }
  await expect(page.getByText('12 lengths walked, 3 rounds poured back')).toBeVisible();
  await page.clock.resume();
  await page.reload();
  await expect(page.getByText('12 lengths walked, 3 rounds poured back')).toBeVisible();
  await page.getByRole('textbox', { name: 'Steps of the last length' }).fill('16');
  await page.getByRole('textbox', { name: 'Wet width' }).fill('1.1');
  await page.getByRole('button', { name: 'Keep this width with the kit' }).tap();
  await expect(page.getByText(/Swath by the widths so far/)).toBeVisible();
  await page.getByRole('button', { name: 'To the figures, and keep them' }).tap();
  await expect(heading(page, 'Jug test and timed walk')).toBeVisible();
  await page.getByRole('button', { name: 'Keep this measurement' }).tap();
  await expect(heading(page, 'Kits')).toBeVisible();
  const after = await app.ask({ ask: 'kit', kit_id: kit.id });
  if (after.answer !== 'kit') throw new Error('no kit');
  const { calibration, input } = after.value;
  // 1.8 L in 120 s are 0.9 L a minute; ten metres in ten seconds are 1 m/s.
  expect(calibration?.flow?.value).toBeCloseTo(0.9, 1);
  expect(calibration?.pace?.value).toBeCloseTo(1, 1);
  expect(calibration?.catches.length).toBe(3);
  expect(calibration?.walks.length).toBe(12);
  expect(input.paving.at(-1)?.text).toBe('1.1');
});
