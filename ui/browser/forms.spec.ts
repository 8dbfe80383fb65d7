// Wrong input at every field of every form: the message stands at the field, what was typed stays, and it is all still
// there after the page was loaded anew.
import type { Locator, Page } from '@playwright/test';
import { GROUPS, type LabelGroup } from '../src/lib/label';
import { expect, test, type App } from './app';
import { show } from './screens';

/** What a wet thumb may type into a field for a figure. */
const BAD_FIGURES = ['twelve', '0', '-3', '99999999'];

async function leave(field: Locator): Promise<void> {
  await field.blur();
}

/** The message that stands at a field. */
function messageAt(page: Page, field: Locator): Promise<Locator> {
  return field.getAttribute('aria-describedby').then((ids) => page.locator(`[id="${(ids ?? '').split(' ')[0]}"]`));
}

/** Types each bad figure into every figure field that the page shows; each must be answered at the field. */
async function everyFigureRefused(page: Page, allowsZero: RegExp): Promise<number> {
  const fields = page.locator('main input[inputmode="decimal"]:visible');
  const nFields = await fields.count();
  for (let idx = 0; idx < nFields; idx += 1) {
    const field = fields.nth(idx);
    const name = (await field.getAttribute('name')) ?? '';
    for (const bad of BAD_FIGURES) {
      if (bad === '0' && allowsZero.test(name)) continue;
      await field.fill(bad);
      await leave(field);
      const message = await messageAt(page, field);
      await expect(message, `${name} took ${bad}`).toHaveText(/\p{L}{3}/u);
      await expect(message).not.toContainText('⟦');
      await expect(field).toHaveAttribute('aria-invalid', 'true');
      await expect(field).toHaveValue(bad);
    }
    await field.fill(`bad ${idx}`);
    await leave(field);
  }
  return nFields;
}

/** What every field of the page holds; radios and boxes by whether they are chosen. */
function held(page: Page): Promise<string[]> {
  return page.locator('main input:visible, main textarea:visible').evaluateAll((fields) =>
    (fields as HTMLInputElement[]).map((field) => {
      const isChosen = field.type === 'radio' || field.type === 'checkbox';
      return `${isChosen ? field.value : field.name}=${isChosen ? field.checked : field.value}`;
    }),
  );
}

/** Turns the label's form to a group of its questions. */
async function toGroup(page: Page, group: LabelGroup): Promise<void> {
  const list = page.locator('details', { hasText: 'All parts of the label' });
  if (!(await list.evaluate((fold) => (fold as HTMLDetailsElement).open))) await list.locator('summary').click();
  await list.getByRole('button').nth(GROUPS.indexOf(group)).click();
}

async function stillThereAfterReload(page: Page): Promise<void> {
  const before = await held(page);
  // The promise: what is typed is written within 300 ms.
  await page.waitForTimeout(300);
  await page.reload();
  await page.locator('main[data-ready="true"]').waitFor();
  await expect(page.getByText('This carries on from what you typed before.')).toBeVisible();
  await expect.poll(() => held(page)).toEqual(before);
}

test('the operator must have a name, and nothing typed is lost', async ({ page, emptyApp }) => {
  await show(page, emptyApp, '#/home');
  await page.getByRole('textbox', { name: 'Firm' }).fill('An invented firm');
  await page.getByRole('button', { name: 'Go on to the first lawn' }).click();
  await expect(page.getByRole('textbox', { name: 'Your name' })).toHaveAttribute('aria-invalid', 'true');
  await page.waitForTimeout(300);
  await page.reload();
  await expect(page.getByRole('textbox', { name: 'Firm' })).toHaveValue('An invented firm');
  await page.getByRole('textbox', { name: 'Your name' }).fill('Demo Operator');
  await page.getByRole('button', { name: 'Go on to the first lawn' }).click();
  await expect(page.getByRole('button', { name: 'Measure the first lawn' })).toBeVisible();
});

test('a lawn: every length of every shape says what is wrong with it', async ({ page, app }) => {
  await show(page, app, `#/lawn/${crypto.randomUUID()}`);
  await page.getByRole('textbox', { name: 'What you call this lawn' }).fill('Half-typed lawn');
  let nFields = 0;
  for (const shape of ['Rectangle', 'Triangle', 'Circle', 'Part of a circle']) {
    await page.getByRole('radio', { name: shape, exact: true }).check();
    nFields += await everyFigureRefused(page, /margin|doubt/);
  }
  expect(nFields).toBe(12);
  await stillThereAfterReload(page);
});

test('a lawn: margins, paces, slope and bearing say what is wrong with them', async ({ page, app }) => {
  await show(page, app, `#/lawn/${crypto.randomUUID()}`);
  await page.getByRole('textbox', { name: 'Width, along the front' }).fill('10');
  await page.getByRole('textbox', { name: 'Length, away from the front' }).fill('10');
  for (const side of ['Front', 'Right', 'Back', 'Left']) {
    await page.getByRole('combobox', { name: `What lies beyond: ${side}` }).selectOption('hedge');
  }
  await page.getByRole('radio', { name: 'Paces' }).check();
  await page.locator('summary', { hasText: 'Does it slope?' }).click();
  await page.getByRole('radio', { name: 'Rise over a taped length' }).check();
  await page.locator('summary', { hasText: 'Compass' }).click();
  // Width, length, a pace, four margins, two of the slope, the bearing, the doubt.
  expect(await everyFigureRefused(page, /margin|doubt|rise|bearing/)).toBe(11);
});

test('a lawn by braces and along a baseline: every figure says what is wrong with it', async ({ page, app }) => {
  await show(page, app, `#/lawn/${crypto.randomUUID()}`);
  await page.locator('label', { hasText: 'Sides and braces' }).click();
  await page.getByRole('button', { name: 'Add this brace' }).click();
  expect(await everyFigureRefused(page, /doubt/)).toBe(6);
  await page.getByRole('button', { name: 'Measure it another way' }).click();
  await page.locator('label', { hasText: 'Along a baseline' }).click();
  expect(await everyFigureRefused(page, /chainage|left|right|doubt/)).toBe(10);
  await page.getByRole('button', { name: 'Measure it another way' }).click();
  await page.locator('label', { hasText: 'Sides and braces' }).click();
  await expect(page.locator('input[name="parts.0.braces.lines.0.length"]')).toHaveValue('bad 0');
});

test('a triangle that cannot be is told so, and which side is too long', async ({ page, app }) => {
  await show(page, app, `#/lawn/${crypto.randomUUID()}`);
  await page.getByRole('radio', { name: 'Triangle', exact: true }).check();
  await page.getByRole('textbox', { name: 'Side along the front' }).fill('20');
  await page.getByRole('textbox', { name: 'Right-hand side' }).fill('5');
  await page.getByRole('textbox', { name: 'Left-hand side' }).fill('6');
  await leave(page.getByRole('textbox', { name: 'Left-hand side' }));
  await leave(page.getByRole('textbox', { name: 'Side along the front' }));
  await page.getByRole('textbox', { name: 'Side along the front' }).focus();
  await page.getByRole('textbox', { name: 'Side along the front' }).blur();
  await expect(page.getByText('No such triangle')).toBeVisible();
});

test('a bed: its lengths and place say what is wrong with them', async ({ page, app }) => {
  await show(page, app, `#/lawn/${crypto.randomUUID()}`);
  await page.getByRole('textbox', { name: 'Width, along the front' }).fill('10');
  await page.getByRole('textbox', { name: 'Length, away from the front' }).fill('10');
  await page.getByRole('button', { name: 'Take out a bed or pond' }).click();
  await page.getByText('Where it lies').click();
  const bed = page.getByRole('region', { name: /Taken out/ });
  for (const field of await bed.locator('input[inputmode="decimal"]').all()) {
    await field.fill('garbage');
    await leave(field);
    await expect(await messageAt(page, field)).toHaveText(/\p{L}{3}/u);
  }
  await page.getByRole('button', { name: 'Keep this lawn' }).click();
  await expect(page.getByRole('alert')).toBeVisible();
  await expect(page.getByRole('heading', { name: 'Measure a lawn' })).toBeVisible();
});

test('a label: every figure of every part says what is wrong with it', async ({ page, app }) => {
  await show(page, app, `#/product/${crypto.randomUUID()}`);
  await page.getByRole('textbox', { name: 'Name on the label' }).fill('Half-copied label');
  await page.getByRole('radio', { name: 'Liquid' }).check();
  let nFields = 0;
  for (const [idx, group] of GROUPS.entries()) {
    if (group === 'contents') {
      await page.locator('[data-act="active"]').click();
      await page.getByRole('radio', { name: 'Of the weight' }).check();
    }
    if (group === 'dose') await page.locator('[data-act="target"]').click();
    if (group === 'after') await page.getByRole('radio', { name: 'It must stay dry' }).check();
    nFields += await everyFigureRefused(page, /margin|keep_off|rain_hours|analysis|mow_|young_turf/);
    if (idx < GROUPS.length - 1) await page.locator('button.main-act').click();
  }
  // Signed figures, such as temperatures, have a keypad of their own and are not among them.
  expect(nFields).toBe(24);
  await page.getByRole('button', { name: 'Keep this label' }).click();
  await expect(page.getByRole('alert')).toBeVisible();
  await stillThereAfterReload(page);
});

test('a new label is kept only after a second look at its dose, and a changed dose asks again', async ({
  page,
  app,
}) => {
  await show(page, app, `#/product/${crypto.randomUUID()}`);
  await page.getByRole('textbox', { name: 'Name on the label' }).fill('Demo Looked At (invented)');
  await page.getByRole('radio', { name: 'Fertiliser' }).check();
  await page.getByRole('radio', { name: 'Liquid' }).check();
  await toGroup(page, 'use');
  await page.getByRole('checkbox', { name: 'Feeding' }).check();
  await toGroup(page, 'dose');
  await page.getByRole('textbox', { name: 'Dose for this use' }).fill('12');
  const look = page.getByRole('checkbox', { name: 'I looked again: it stands so on the label' });
  // 12 mL on 100 m2 is a hundred times that on a hectare.
  await expect(page.getByText('1.20\u00a0L/ha').first()).toBeVisible();
  await look.check();
  await page.getByRole('textbox', { name: 'Dose for this use' }).fill('120');
  await expect(look).not.toBeChecked();
  await toGroup(page, 'after');
  await page.getByRole('radio', { name: 'Nothing', exact: true }).check();
  await toGroup(page, 'signed');
  await page.getByRole('textbox', { name: 'Version or date of the label' }).fill('1');
  await page.getByRole('textbox', { name: 'Copied from the label by' }).fill('Demo Operator');
  await page.getByRole('button', { name: 'Keep this label' }).click();
  await expect(page.getByRole('heading', { name: 'The dose' })).toBeVisible();
  await look.check();
  await toGroup(page, 'signed');
  await page.getByRole('button', { name: 'Keep this label' }).click();
  await expect(page.getByRole('link', { name: 'Demo Looked At (invented)' })).toBeVisible();
});

test('a kit: every figure says what is wrong with it', async ({ page, app }) => {
  await show(page, app, `#/kit/${crypto.randomUUID()}`);
  await page.getByRole('radio', { name: 'Its maker’s flow' }).check();
  await page.getByRole('radio', { name: 'Measured on dry paving' }).check();
  await page.locator('[data-act="add-paving"]').click();
  const nFields = await everyFigureRefused(page, /dead_volume|reach/);
  expect(nFields).toBe(12);
  await page.getByRole('button', { name: 'Keep this kit' }).click();
  await expect(page.getByRole('alert')).toBeVisible();
  await stillThereAfterReload(page);
});

async function firstKit(app: App): Promise<string> {
  const kits = await app.ask({ ask: 'kits' });
  if (kits.answer !== 'kits' || kits.value[0] === undefined) throw new Error('no kit');
  return kits.value[0].id;
}

test('a jug test and timed walk: every figure says what is wrong with it', async ({ page, app }) => {
  await show(page, app, `#/calibrate/${await firstKit(app)}`);
  await page.locator('summary', { hasText: 'Test plot' }).click();
  // Three catches of two figures, three walks of three, the pressure, and two of the plot.
  const nFields = await everyFigureRefused(page, /^$/);
  expect(nFields).toBe(18);
  await page.getByRole('button', { name: 'Keep this measurement' }).click();
  await expect(page.getByRole('alert')).toBeVisible();
  await stillThereAfterReload(page);
});

test('the watch hands over what it counted', async ({ page, app }) => {
  await show(page, app, `#/calibrate/${await firstKit(app)}`);
  const walk = page.getByRole('button', { name: 'Start the watch' }).nth(1);
  await walk.click();
  await page.getByRole('button', { name: /^Step: 0/ }).click();
  await page.getByRole('button', { name: /^Step: 1/ }).click();
  await page.getByRole('button', { name: 'Stop' }).click();
  await expect(page.locator('input[name="steps"]')).toHaveValue('2');
  await expect(page.locator('input[name="walk_time"]')).toHaveValue(/^\d+\.\d$/);
});

test('a whole firm can be typed in: lawn, label, kit and measurement are kept', async ({ page, emptyApp }) => {
  await show(page, emptyApp, '#/home');
  await page.getByRole('textbox', { name: 'Your name' }).fill('Demo Operator');
  await page.getByRole('textbox', { name: 'Certificate or licence number' }).fill('DEMO-CERT-0001');
  await page.getByRole('button', { name: 'Go on to the first lawn' }).click();

  await page.getByRole('button', { name: 'Measure the first lawn' }).click();
  await page.getByRole('textbox', { name: 'What you call this lawn' }).fill('Typed lawn');
  await page.getByRole('textbox', { name: 'Width, along the front' }).fill('10');
  await page.getByRole('textbox', { name: 'Length, away from the front' }).fill('12,5');
  await expect(page.getByText('125.0').first()).toBeVisible();
  await page.getByRole('combobox', { name: 'Client' }).selectOption('new');
  await page.getByRole('textbox', { name: 'Client’s name' }).fill('Invented Client');
  await page.getByRole('button', { name: 'Keep this lawn' }).click();
  await expect(page.getByRole('heading', { name: 'Typed lawn' })).toBeVisible();
  await expect(page.getByText('Invented Client')).toBeVisible();

  await page.getByRole('button', { name: 'Copy the first label' }).click();
  await page.getByRole('textbox', { name: 'Name on the label' }).fill('Demo Feed (invented)');
  await page.getByRole('radio', { name: 'Fertiliser' }).check();
  await page.getByRole('radio', { name: 'Liquid' }).check();
  await toGroup(page, 'use');
  await page.getByRole('checkbox', { name: 'Feeding' }).check();
  await toGroup(page, 'dose');
  await page.getByRole('textbox', { name: 'Dose for this use' }).fill('250');
  await expect(page.getByText('25.0\u00a0L/ha').first()).toBeVisible();
  await page.getByRole('checkbox', { name: 'I looked again: it stands so on the label' }).check();
  await toGroup(page, 'after');
  await page.getByRole('radio', { name: 'Nothing', exact: true }).check();
  await toGroup(page, 'signed');
  await page.getByRole('textbox', { name: 'Version or date of the label' }).fill('1');
  await page.getByRole('textbox', { name: 'Copied from the label by' }).fill('Demo Operator');
  await page.getByRole('button', { name: 'Keep this label' }).click();
  await expect(page.getByRole('link', { name: 'Demo Feed (invented)' })).toBeVisible();

  await page.getByRole('link', { name: 'Back' }).click();
  await page.getByRole('button', { name: 'Add your sprayer' }).click();
  await page.getByRole('textbox', { name: 'What you call it' }).fill('Blue knapsack');
  for (const [name, value] of Object.entries({
    'The tank holds': '15',
    'Weight when empty': '4.5',
    'Stays in pump, hose and lance': '0.25',
    Nozzle: 'Flat fan',
    Swath: '1',
    'Smallest step of your measuring jug': '10',
  })) {
    await page.getByRole('textbox', { name, exact: true }).fill(value);
  }
  await page.getByRole('radio', { name: 'Nothing, it is new' }).check();
  await page.getByRole('button', { name: 'Keep this kit' }).click();

  await expect(page.getByRole('heading', { name: 'Jug test and timed walk' })).toBeVisible();
  for (const one of ['jug_', 'more_catches.0.', 'more_catches.1.']) {
    await page.locator(`input[name="${one}volume"]`).fill('900');
    await page.locator(`input[name="${one}time"]`).fill('60');
  }
  for (const one of ['walk_', 'more_walks.0.', 'more_walks.1.']) {
    await page.locator(`input[name="${one}length"]`).fill('20');
    await page.locator(`input[name="${one}time"]`).fill('20');
  }
  await page.getByRole('checkbox', { name: 'The full sprayer was on my back' }).check();
  await expect(page.getByText('15.0').first()).toBeVisible();
  await page.getByRole('button', { name: 'Keep this measurement' }).click();
  await expect(page.getByText('Per pass:')).toBeVisible();
});

test('looking at a page without typing leaves no draft behind', async ({ page, app }) => {
  const home = await app.ask({ ask: 'home' });
  const products = await app.ask({ ask: 'products' });
  if (home.answer !== 'home' || products.answer !== 'products') throw new Error('no lists');
  for (const line of home.value.lawns) await show(page, app, `#/lawn/${line.lawn_id}`);
  await show(page, app, `#/lawn/${crypto.randomUUID()}`);
  await show(page, app, `#/product/${products.value[0]?.id}`);
  for (let part = 1; part < GROUPS.length; part += 1) await page.locator('button.main-act').click();
  await show(page, app, `#/kit/${await firstKit(app)}`);
  for (const place of ['calibrate', 'clean', 'ask']) await show(page, app, `#/${place}/${await firstKit(app)}`);
  await show(page, app, '#/me');
  await page.waitForTimeout(400);
  const after = await app.ask({ ask: 'home' });
  expect(after.answer === 'home' ? after.value.drafts : null).toEqual(['place']);
});
