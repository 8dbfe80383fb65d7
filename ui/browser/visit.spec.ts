// A whole visit by touch alone, from the first page to the signed record; what is asked, what bars, what is taken back,
// and that the page shows the same after it was loaded anew.
import type { Page } from '@playwright/test';
import { expect, test } from './app';
import { show } from './screens';
import { Visitor } from './visitor';

const heading = (page: Page, name: string | RegExp) => page.getByRole('heading', { level: 1, name });
const main = (page: Page) => page.locator('button.main-act');

async function choose(page: Page, question: string, answer: string): Promise<void> {
  await page.getByRole('group', { name: question }).locator('label', { hasText: answer }).first().tap();
}

/** Ticks whole groups first, as far as a group can be ticked at one touch. */
async function tickGroups(page: Page): Promise<void> {
  const all = page.getByRole('button', { name: /^Tick all/ });
  for (let nAll = await all.count(); nAll > 0; nAll = await all.count()) {
    await all.first().tap();
    await expect(all).toHaveCount(nAll - 1);
  }
}

async function writeWater(page: Page): Promise<void> {
  const water = page.getByRole('region', { name: 'The water to mix with' });
  await water.getByRole('textbox', { name: 'Where does it come from?' }).fill('Invented: the water butt');
  await water.getByRole('textbox', { name: 'How warm it is' }).fill('12');
  await water.getByRole('textbox', { name: 'pH' }).fill('6.5');
  await water.getByRole('textbox', { name: 'Hardness' }).fill('80');
  await water.getByRole('button', { name: 'Write down the water' }).tap();
  await expect(water.getByText('The water is written down.')).toBeVisible();
}

/** Taps every box that is not ticked yet, one after the other. */
async function tickAll(page: Page): Promise<void> {
  const open = page.locator('label.tick:not(.on)');
  for (let nOpen = await open.count(); nOpen > 0; nOpen = await open.count()) {
    await open.first().tap();
    await expect(open).toHaveCount(nOpen - 1);
  }
}

test('a whole visit by touch', async ({ page, app }) => {
  await show(page, app, '#/home');
  await page.getByRole('button', { name: 'Begin a visit Front lawn' }).tap();

  await expect(heading(page, 'Is a treatment right?')).toBeVisible();
  await choose(page, 'What is there, or what is wanted?', 'Moss');
  await choose(page, 'How much of it?', 'Here and there');
  await choose(page, 'Was anything put on this lawn this year?', 'Nothing');
  await choose(page, 'What kind of turf is it?', 'A lawn');
  await main(page).tap();

  await expect(heading(page, 'Which product?')).toBeVisible();
  await page.locator('label', { hasText: 'Demo Moss Iron' }).tap();
  await main(page).tap();
  await expect(heading(page, 'Which kit?')).toBeVisible();
  await page.locator('label', { hasText: '15 L knapsack' }).tap();
  await main(page).tap();

  await expect(heading(page, 'The plan')).toBeVisible();
  await expect(page.getByText('Clean water').first()).toBeVisible();
  await main(page).tap();

  await expect(heading(page, 'Ready list')).toBeVisible();
  await tickGroups(page);
  await tickAll(page);
  await writeWater(page);
  await choose(page, 'The wind by', 'What it moves');
  await choose(page, 'What does the wind move?', 'Light breeze');
  await choose(page, 'Which way does it blow?', 'To the front');
  await choose(page, 'Gusts?', 'No');
  await choose(page, 'Rain now?', 'No');
  await page.getByRole('textbox', { name: 'How long does the forecast stay dry?' }).fill('12');
  await page.getByRole('textbox', { name: 'Air temperature' }).fill('14');
  await choose(page, 'The grass', 'Dry');
  await choose(page, 'The sky', 'Cloudy');
  await choose(page, 'The ground', 'Open');
  await choose(page, 'Drought', 'No sign of it');
  await page.locator('summary', { hasText: 'More: compass, gusts measured, humidity' }).tap();
  await page.getByRole('textbox', { name: 'Relative humidity' }).fill('65');
  await page.getByRole('button', { name: 'Write down the weather' }).tap();
  await expect(page.getByText('Drying difference')).toBeVisible();
  await expect(page.getByRole('button', { name: 'Begin mixing' })).toBeVisible();
  await page.reload();
  await expect(page.getByRole('button', { name: 'Begin mixing' })).toBeVisible();
  await main(page).tap();

  let nWalks = 0;
  for (let n = 0; n < 200; n += 1) {
    const title = await page.getByRole('heading', { level: 1 }).textContent();
    if (title === 'Sign the record') break;
    if (title === 'Walk') nWalks += 1;
    await main(page).tap();
    await expect(main(page)).toHaveAttribute('aria-busy', 'false');
    // The second of two quick taps is a bounce, so a person, too, waits a moment.
    await page.waitForTimeout(520);
  }
  expect(nWalks).toBeGreaterThan(1);

  await expect(heading(page, 'Sign the record')).toBeVisible();
  await page.getByRole('textbox', { name: 'Worth knowing next time' }).fill('Invented: the gate sticks.');
  await main(page).tap();
  await expect(heading(page, 'The record')).toBeVisible();
  await expect(page.getByText('Closed and signed.')).toBeVisible();
  await expect(page.getByText('DEMO-CERT-0001').first()).toBeVisible();
  await expect(page.getByText('DEMO-00001').first()).toBeVisible();
  const json = page.getByRole('textbox', { name: 'The record as JSON' });
  await page.locator('summary', { hasText: 'The record as JSON' }).tap();
  expect(JSON.parse(await json.inputValue())).toBeTruthy();
  await main(page).tap();
  await expect(page.getByText('Look back on').first()).toBeVisible();
});

test('the app opens where it was after it was killed', async ({ page, app }) => {
  const visitor = new Visitor(app);
  await visitor.open('Front lawn');
  await visitor.until('ready');
  await show(page, app, `#/visit/${visitor.visitId}`);
  await expect
    .poll(async () => JSON.stringify(await app.ask({ ask: 'draft', key: 'place' })))
    .toContain(visitor.visitId);
  await page.goto('about:blank');
  await page.goto(app.url);
  await expect(heading(page, 'Ready list')).toBeVisible();
});

test('a screen that saw an older state draws the newer one and says so', async ({ page, app }) => {
  const visitor = new Visitor(app);
  await visitor.open('Front lawn');
  await visitor.until('mix');
  await show(page, app, `#/visit/${visitor.visitId}`);
  await visitor.until('walk');
  await main(page).tap();
  await expect(heading(page, 'Walk')).toBeVisible();
  await expect(page.getByText('This had moved on')).toBeVisible();
});

test('a step is taken back, and another, as a list', async ({ page, app }) => {
  const visitor = new Visitor(app);
  await visitor.open('Front lawn');
  await visitor.until('plan');
  await show(page, app, `#/visit/${visitor.visitId}`);
  await page.locator('summary', { hasText: 'Take back' }).tap();
  await page.getByRole('button', { name: 'Take back', exact: true }).tap();
  await expect(heading(page, 'Which kit?')).toBeVisible();
  await page.locator('summary', { hasText: 'Take back' }).tap();
  await page.getByRole('button', { name: 'Take back', exact: true }).tap();
  await expect(heading(page, 'Which product?')).toBeVisible();
});

test('begin mixing cannot be tapped before everything is ready, and what waits is named', async ({ page, app }) => {
  const visitor = new Visitor(app);
  await visitor.open('Front lawn');
  await visitor.until('ready');
  await show(page, app, `#/visit/${visitor.visitId}`);
  await expect(page.getByRole('button', { name: 'Begin mixing' })).toHaveCount(0);
  await page.getByRole('button', { name: /still wait/ }).tap();
  await expect(page.getByRole('heading', { name: 'Still waiting' })).toBeInViewport();
  await expect(page.getByText('Write down the weather.')).toBeVisible();
});

test('wrong weather is answered at the field', async ({ page, app }) => {
  const visitor = new Visitor(app);
  await visitor.open('Front lawn');
  await visitor.until('ready');
  await show(page, app, `#/visit/${visitor.visitId}`);
  await choose(page, 'The wind by', 'A meter');
  await page.getByRole('textbox', { name: 'Wind speed' }).fill('strong');
  await page.getByRole('textbox', { name: 'Held this high above the ground' }).fill('-1');
  await page.getByRole('textbox', { name: 'How long does the forecast stay dry?' }).fill('soon');
  await page.getByRole('textbox', { name: 'Air temperature' }).fill('900');
  await page.getByRole('button', { name: 'Write down the weather' }).tap();
  const weather = page.getByRole('region', { name: 'The weather, as you see it' });
  for (const name of ['wind_speed', 'wind_height', 'dry_hours', 'temperature']) {
    await expect(weather.locator(`input[name="${name}"]`), name).toHaveAttribute('aria-invalid', 'true');
  }
  await page.waitForTimeout(300);
  await page.reload();
  await expect(page.getByRole('textbox', { name: 'Wind speed' })).toHaveValue('strong');
  await expect(page.getByRole('textbox', { name: 'Air temperature' })).toHaveValue('900');
});

test('what is left in the tank cannot be more than there was, nor garbage', async ({ page, app }) => {
  const visitor = new Visitor(app);
  await visitor.open('Front lawn');
  await visitor.until('pass_end');
  await show(page, app, `#/visit/${visitor.visitId}`);
  const left = page.getByRole('textbox', { name: 'Left in the tank' });
  for (const bad of ['half', '-2', '500']) {
    await left.fill(bad);
    await main(page).tap();
    await expect(left, bad).toHaveAttribute('aria-invalid', 'true');
    await expect(left).toHaveValue(bad);
    await page.waitForTimeout(520);
  }
});

test('something else measured when mixing is checked at the field', async ({ page, app }) => {
  const visitor = new Visitor(app);
  await visitor.open('Front lawn');
  await visitor.until('mix');
  await show(page, app, `#/visit/${visitor.visitId}`);
  await page.locator('summary', { hasText: 'Something else was measured' }).tap();
  await page.getByRole('textbox', { name: 'Product measured' }).fill('a cup');
  await page.getByRole('textbox', { name: 'In the tank now' }).fill('400');
  await page.waitForTimeout(300);
  await tickAll(page);
  await page.getByRole('button', { name: 'The fill is made' }).tap();
  await expect(page.locator('input[name="product"]')).toHaveAttribute('aria-invalid', 'true');
  await expect(page.getByRole('textbox', { name: 'Product measured' })).toHaveValue('a cup');
  await page.reload();
  await expect(page.getByRole('textbox', { name: 'Product measured' })).toHaveValue('a cup');
});

test('help is one touch away from the walk', async ({ page, app }) => {
  const visitor = new Visitor(app);
  await visitor.open('Front lawn');
  await visitor.until('walk');
  await show(page, app, `#/visit/${visitor.visitId}`);
  await page.getByRole('button', { name: 'Emergency' }).tap();
  await expect(page.getByRole('heading', { name: 'Swallowed' })).toBeVisible();
  await expect(page.getByText('Invented words: rinse the mouth').first()).toBeVisible();
  await page.getByRole('button', { name: 'Close' }).tap();
  await expect(heading(page, 'Walk')).toBeVisible();
});
