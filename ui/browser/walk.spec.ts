// The walk for hands, eyes and ears: strip by strip by touch, by clicker, by keyboard and by the planned time; the lock; the
// back gesture; what the phone says from the pouch; large text, the left hand, and pictures that stand still.
import type { Page } from '@playwright/test';
import { expect, test, type App } from './app';
import { cutOff, tooSmallForTheWalk } from './judge';
import { show } from './screens';
import { Visitor } from './visitor';

const LAWN = 'Front lawn';
const surface = (page: Page) => page.locator('button.main-act');
const button = (page: Page, name: string | RegExp) => page.getByRole('button', { name });

/** Opens a visit at the walk, with these settings. */
async function walking(
  page: Page,
  app: App,
  guide: 'pass' | 'strip',
  settings: Record<string, unknown> = {},
): Promise<Visitor> {
  const visitor = new Visitor(app);
  visitor.change = { guide };
  await visitor.open(LAWN);
  await visitor.until('walk');
  await page.addInitScript((kept) => {
    localStorage.setItem('evensward-settings', kept);
    const felt: number[][] = [];
    Object.assign(window, { felt });
    navigator.vibrate = (pattern) => felt.push([pattern].flat() as number[]) > 0;
  }, JSON.stringify(settings));
  await show(page, app, `#/visit/${visitor.visitId}`);
  return visitor;
}

const felt = (page: Page): Promise<string[]> =>
  page.evaluate(() => (window as unknown as { felt: number[][] }).felt.map((pattern) => pattern.join(' ')));

/** Waits until the server has moved on by so many events from here. */
async function movesOn(visitor: Visitor, from: number): Promise<void> {
  await expect.poll(async () => (await visitor.look()).seq).toBeGreaterThan(from);
}

test('a strip begins and ends by touch anywhere on its surface, and a slip is taken back', async ({ page, app }) => {
  const visitor = await walking(page, app, 'strip');
  const before = visitor.view.seq;
  await expect(surface(page)).toContainText('Start strip 1');
  await expect(surface(page)).toContainText('To the right');
  await expect(surface(page)).toContainText('move the marker');
  const box = (await surface(page).boundingBox())!;
  // The corner farthest from the words.
  await page.touchscreen.tap(box.x + 8, box.y + 8);
  await expect(surface(page)).toContainText('Strip 1 done');
  await expect(page.locator('svg.sign'), 'the first strip beats').toBeVisible();
  expect((await visitor.look()).seq, 'the beginning is no event').toBe(before);
  await button(page, 'Take back').tap();
  await expect(surface(page)).toContainText('Start strip 1');
  await expect(page.locator('svg.sign')).toHaveCount(0);
  await page.waitForTimeout(510);
  await surface(page).tap();
  await expect(surface(page)).toContainText('Strip 1 done');
  await page.waitForTimeout(510);
  await page.touchscreen.tap(box.x + box.width - 8, box.y + box.height - 8);
  await expect(surface(page)).toContainText('Start strip 2');
  await expect(page.locator('svg.sign'), 'only the first strip beats').toHaveCount(0);
  expect((await visitor.look()).seq).toBeGreaterThan(before);
  await button(page, 'Take back').tap();
  await expect(surface(page), 'it was counted too early: it goes on').toContainText('Strip 1 done');
});

for (const key of ['PageDown', ' ', 'ArrowRight']) {
  test(`a whole pass strip by strip by the key "${key}" alone`, async ({ page, app }) => {
    const visitor = await walking(page, app, 'strip');
    for (let n = 0; n < 120 && visitor.view.panel.panel === 'walk'; n += 1) {
      const { seq } = visitor.view;
      await expect(surface(page)).toContainText('Start strip');
      await page.keyboard.press(key);
      await expect(surface(page)).toContainText('done');
      await page.waitForTimeout(510);
      await page.keyboard.press(key);
      await movesOn(visitor, seq);
      await page.waitForTimeout(510);
    }
    expect(visitor.view.panel.panel).not.toBe('walk');
  });
}

test('by keyboard alone: beat, lock, unlock, pause, carry on, strip', async ({ page, app }) => {
  const visitor = await walking(page, app, 'strip');
  const { seq } = visitor.view;
  const reach = async (name: string | RegExp): Promise<void> => {
    const wanted = button(page, name);
    for (let n = 0; n < 40; n += 1) {
      if (await wanted.evaluate((element) => element === document.activeElement)) return;
      await page.keyboard.press('Tab');
    }
    throw new Error(`the keyboard never came to ${name}`);
  };
  await reach(/^Beat/);
  await page.keyboard.press('Enter');
  await expect(page.locator('svg.sign')).toBeVisible();
  await reach('Stop the beat');
  await page.keyboard.press(' ');
  await reach('Lock');
  await page.keyboard.press('Enter');
  for (const number of [1, 2, 3]) {
    await reach(`Unlock: press ${number}`);
    await page.keyboard.press('Enter');
  }
  await expect(page.getByText('Locked against touches')).toHaveCount(0);
  await reach('Pause');
  await page.keyboard.press('Enter');
  await expect(page.getByRole('heading', { level: 1, name: 'Paused' })).toBeVisible();
  // What may have changed is looked at again, one after the other, before it goes on.
  for (let n = 0; n < 10 && (await page.getByRole('heading', { level: 1 }).textContent()) === 'Paused'; n += 1) {
    await page.waitForTimeout(510);
    await page.keyboard.press('Enter');
  }
  await expect(surface(page)).toContainText('Start strip 1');
  await page.waitForTimeout(510);
  await page.keyboard.press('Enter');
  await expect(surface(page)).toContainText('Strip 1 done');
  await page.waitForTimeout(510);
  await page.keyboard.press('Enter');
  await expect(surface(page)).toContainText('Start strip 2');
  await movesOn(visitor, seq + 2);
});

test('a strip counts itself after its planned time, once, and goes on when taken back', async ({ page, app }) => {
  const visitor = await walking(page, app, 'strip', { stripCount: 'time' });
  const panel = visitor.view.panel;
  if (panel.panel !== 'walk') throw new Error('not on the walk');
  const plannedMs = panel.strip.seconds.value * 1000;
  const { seq } = visitor.view;
  await surface(page).tap();
  await expect(surface(page)).toContainText('Counts itself after');
  await page.waitForTimeout(plannedMs * 0.5);
  expect((await visitor.look()).seq, 'not before its time').toBe(seq);
  await expect(surface(page)).toContainText('Start strip 2');
  expect(await felt(page), 'heard and felt as counted').toContain('40 80 40');
  await button(page, 'Take back').tap();
  await expect(surface(page)).toContainText('Strip 1 done');
  const taken = (await visitor.look()).seq;
  await page.waitForTimeout(plannedMs + 1500);
  expect((await visitor.look()).seq, 'it never counts itself twice').toBe(taken);
  await surface(page).tap();
  await expect(surface(page)).toContainText('Start strip 2');
});

test('the lock takes every touch, lets the clicker through, and opens by a slide or by numbers', async ({
  page,
  app,
}) => {
  const visitor = await walking(page, app, 'pass');
  const main = (await surface(page).boundingBox())!;
  const { seq } = visitor.view;
  await button(page, 'Lock').tap();
  await expect(page.getByText('Locked against touches')).toBeVisible();
  for (let y = 120; y < 900; y += 45) await page.touchscreen.tap(200, y);
  await page.touchscreen.tap(main.x + main.width / 2, main.y + 10);
  expect((await visitor.look()).seq, 'no touch counts').toBe(seq);
  await page.keyboard.press('PageDown');
  await movesOn(visitor, seq);
  await expect(page.getByText('Locked against touches')).toBeVisible();

  const number = (n: number) => button(page, `Unlock: press ${n}`);
  for (const n of [3, 2, 1, 1, 3]) await number(n).tap();
  await expect(page.getByText('Locked against touches'), 'not in another order').toBeVisible();
  for (const n of [1, 2, 3]) await number(n).tap();
  await expect(page.getByText('Locked against touches')).toHaveCount(0);

  await button(page, 'Lock').tap();
  const thumb = (await page.locator('.thumb').boundingBox())!;
  const track = (await page.locator('.track').boundingBox())!;
  const slide = async (share: number): Promise<void> => {
    await page.mouse.move(thumb.x + 20, thumb.y + 20);
    await page.mouse.down();
    await page.mouse.move(thumb.x + 20 + (track.width - thumb.width) * share, thumb.y + 24, { steps: 6 });
    await page.mouse.up();
  };
  await slide(0.5);
  await expect(page.getByText('Locked against touches'), 'half a slide').toBeVisible();
  await slide(1);
  await expect(page.getByText('Locked against touches')).toHaveCount(0);
});

test('the emergency page is one touch away under the lock', async ({ page, app }) => {
  await walking(page, app, 'pass');
  await button(page, 'Lock').tap();
  await button(page, 'Emergency').tap();
  await expect(page.getByRole('heading', { level: 1, name: 'Emergency' })).toBeVisible();
});

test('the back gesture asks in a line first, and bars nothing', async ({ page, app }) => {
  const visitor = await walking(page, app, 'pass');
  const line = page.getByText('Still on the walk. Leave it?');
  const back = () => page.evaluate(() => history.back());
  await back();
  await expect(line).toBeVisible();
  await button(page, 'Stay').tap();
  await expect(line).toHaveCount(0);
  await back();
  await expect(line, 'asked each time').toBeVisible();
  const { seq } = visitor.view;
  await surface(page).tap();
  await movesOn(visitor, seq);
  await expect(line, 'walking on is an answer').toHaveCount(0);
  await back();
  await expect(line).toBeVisible();
  await button(page, 'Leave').tap();
  await expect(page.getByRole('heading', { level: 1, name: 'Lawns' })).toBeVisible();
});

test('what is felt differs for a tap, a refusal, a pause, and before the end of the pass', async ({ page, app }) => {
  const visitor = await walking(page, app, 'strip', { stripCount: 'one', beat: 'off' });
  const panel = visitor.view.panel;
  if (panel.panel !== 'walk') throw new Error('not on the walk');
  const goOn = async (): Promise<void> => {
    const now = (await visitor.look()).panel;
    if (now.panel !== 'walk') throw new Error('not on the walk');
    await visitor.act({ act: 'resume', seen: now.again.map(({ item }) => item) });
    await show(page, app, `#/visit/${visitor.visitId}`);
  };
  // Somebody else pauses meanwhile: what this screen sends is refused.
  await visitor.act({ act: 'pause', reason: 'phone', note: '' });
  await surface(page).tap();
  await expect.poll(() => felt(page), 'a refusal').toEqual(['60 60 60 60 60']);
  await goOn();
  await button(page, 'Pause').tap();
  await expect.poll(() => felt(page), 'a pause').toEqual(['800']);
  await goOn();
  for (let strip = 1; strip < panel.strip.n_strips; strip += 1) {
    await expect(surface(page)).toContainText(`Strip ${strip} done`);
    await page.waitForTimeout(510);
    await surface(page).tap();
  }
  await expect.poll(() => felt(page), 'a tap').toContain('40');
  await expect.poll(() => felt(page), 'the last strip').toContain('350 120 250 120 120');
});

test('by pass the phone speaks up by the planned time since it was begun', async ({ page, app }) => {
  const visitor = await walking(page, app, 'pass', { beat: 'off' });
  const panel = visitor.view.panel;
  if (panel.panel !== 'walk') throw new Error('not on the walk');
  await page.clock.install();
  await show(page, app, `#/visit/${visitor.visitId}`);
  await page.clock.runFor(panel.until_last_strip.value * 1000 + 5000);
  expect(await felt(page), 'nothing was begun').toEqual([]);
  await button(page, 'I begin now').tap();
  await page.clock.runFor(panel.until_last_strip.value * 1000 - 1000);
  expect(await felt(page)).toEqual([]);
  await page.clock.runFor(2000);
  expect(await felt(page)).toEqual([
    panel.refill_before_strip === null ? '350 120 250 120 120' : '150 100 350 250 150 100 350',
  ]);
});

test.describe('large text on a small phone', () => {
  test.use({ viewport: { width: 360, height: 740 } });
  for (const guide of ['pass', 'strip'] as const) {
    test(`loses nothing at 200 % by ${guide}`, async ({ page, app }) => {
      const visitor = await walking(page, app, guide);
      const large = async (): Promise<string[]> => {
        await page.evaluate(() => (document.documentElement.style.fontSize = '200%'));
        return [...(await cutOff(page)), ...(await tooSmallForTheWalk(page))];
      };
      expect(await large()).toEqual([]);
      await button(page, /^(Beat|Begin with the beat)/).tap();
      await expect(page.locator('svg.sign')).toBeVisible();
      expect(await large(), 'with the beat').toEqual([]);
      await button(page, 'Stop the beat').tap();
      await page.evaluate(() => history.back());
      await expect(page.getByText('Still on the walk')).toBeVisible();
      expect(await large(), 'when asked whether to leave').toEqual([]);
      await button(page, 'Stay').tap();
      await button(page, 'Lock').tap();
      for (const n of [1, 2, 3]) await button(page, `Unlock: press ${n}`).tap();
      await button(page, 'More').tap();
      expect(await large(), 'more').toEqual([]);
      await button(page, 'Back to the walk').tap();
      await visitor.act({ act: 'pause', reason: 'wind', note: '' });
      await show(page, app, `#/visit/${visitor.visitId}`);
      expect(await large(), 'paused').toEqual([]);
    });
  }
});

test('the left hand has its small acts mirrored', async ({ page, app }) => {
  const places = async (hand: string): Promise<number[]> => {
    await page.evaluate((held) => localStorage.setItem('evensward-settings', JSON.stringify({ hand: held })), hand);
    await page.reload();
    await page.locator('main[data-ready="true"]').waitFor();
    const boxes = [button(page, 'Take back'), button(page, 'More'), button(page, 'Lock')].map((one) =>
      one.boundingBox(),
    );
    return (await Promise.all(boxes)).map((box) => box!.x + box!.width / 2);
  };
  const visitor = new Visitor(app);
  await visitor.open(LAWN);
  await visitor.until('walk');
  await show(page, app, `#/visit/${visitor.visitId}`);
  const width = page.viewportSize()!.width;
  const right = await places('right');
  const left = await places('left');
  for (const [idx, x] of right.entries()) expect(Math.abs(x + left[idx]! - width)).toBeLessThan(6);
});

test('with less motion the sign changes feet and nothing moves', async ({ page, app }) => {
  await page.emulateMedia({ reducedMotion: 'reduce' });
  await walking(page, app, 'pass', { beat: 'throughout' });
  await button(page, /^Begin with the beat/).tap();
  const seen = await page.evaluate(async () => {
    const places = new Set<string>();
    const down = new Set<number>();
    for (const end = performance.now() + 3000; performance.now() < end;) {
      const soles = [...document.querySelectorAll('path.sole')];
      places.add(soles.map((sole) => sole.getAttribute('transform')).join());
      down.add(soles.findIndex((sole) => sole.classList.contains('down')));
      await new Promise(requestAnimationFrame);
    }
    return { places: places.size, down: [...down].sort() };
  });
  expect(seen.places).toBe(1);
  expect(seen.down).toEqual(expect.arrayContaining([0, 1]));
});

test('what is chosen on the settings page holds on the walk and after the app was closed', async ({ page, app }) => {
  await show(page, app, '#/me');
  await page.getByRole('link', { name: 'How it looks, sounds and beats' }).tap();
  await page.getByRole('group', { name: 'Light' }).locator('label', { hasText: 'Dusk' }).tap();
  await page.getByRole('group', { name: 'When it beats' }).locator('label', { hasText: 'Never' }).tap();
  await page.getByRole('group', { name: 'Strokes of the lever' }).getByRole('button', { name: 'More' }).tap();
  await expect(page.getByText('a stroke with every step')).toBeVisible();
  await page.reload();
  await expect(page.getByText('a stroke with every step')).toBeVisible();
  await expect(page.locator('html')).toHaveAttribute('data-theme', 'dusk');
  const visitor = new Visitor(app);
  await visitor.open(LAWN);
  await visitor.until('walk');
  await show(page, app, `#/visit/${visitor.visitId}`);
  await expect(button(page, 'I begin now')).toBeVisible();
});
