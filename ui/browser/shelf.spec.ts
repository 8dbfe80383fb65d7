// The shelf from end to end: a container is kept, a fill is taken off it, taking back gives it back, a count says how far the
// book was off, and what is past its day is refused. Where no container is kept, nothing is asked.
import type { Page } from '@playwright/test';
import { expect, test, type App } from './app';
import { show } from './screens';
import { Visitor } from './visitor';

const MOSS_IRON = '01900000-0000-7000-8000-000000000301';

/** Keeps a container of the moss killer, as the form would. */
async function keep(app: App, batch: string, change: { opened_on?: string; use_up_by?: string } = {}): Promise<string> {
  const container_id = crypto.randomUUID();
  const input = {
    product_id: MOSS_IRON,
    batch,
    size: { text: '5', unit: 'L' },
    opened_on: '2026-03-02',
    use_up_by: '',
    note: '',
    ...change,
  };
  await app.ask({ ask: 'save_container', container_id, input, draft_key: null });
  return container_id;
}

/** What is left in it, in litres. */
async function left(app: App, container_id: string): Promise<number> {
  const answer = await app.ask({ ask: 'container', container_id });
  if (answer.answer !== 'container' || answer.value.left === null) throw new Error('no container');
  expect(answer.value.left.unit).toBe('L');
  return answer.value.left.value;
}

/** A visit in front of its first fill, shown. */
async function mixing(page: Page, app: App): Promise<Visitor> {
  const visitor = new Visitor(app);
  await visitor.open('Front lawn');
  await visitor.until('mix');
  await show(page, app, `#/visit/${visitor.visitId}`);
  return visitor;
}

async function makeFill(page: Page): Promise<void> {
  for (let n = 0; n < 40 && (await page.getByRole('button', { name: 'The fill is made' }).count()) === 0; n += 1) {
    await page.locator('button.main-act').tap();
    await page.waitForTimeout(520);
  }
  await page.getByRole('button', { name: 'The fill is made' }).tap();
}

test('a container is kept by its form, and wrong figures and half-typed forms are not lost', async ({ page, app }) => {
  await show(page, app, '#/home');
  await page.getByRole('link', { name: 'Shelf', exact: true }).tap();
  await page.getByRole('button', { name: 'Add a container' }).tap();
  await page.getByRole('textbox', { name: 'It holds, when full' }).fill('five');
  await page.getByRole('button', { name: 'Keep this container' }).tap();
  for (const name of ['product_id', 'batch', 'size']) {
    await expect(page.locator(`[name="${name}"]`), name).toHaveAttribute('aria-invalid', 'true');
  }
  await page.locator('select[name="product_id"]').selectOption({ label: 'Demo Moss Iron (invented)' });
  await page.getByRole('textbox', { name: 'Batch' }).fill('DEMO-MI-1');
  await page.waitForTimeout(300);
  await page.reload();
  await expect(page.getByText('This carries on from what you typed before.')).toBeVisible();
  await expect(page.getByRole('textbox', { name: 'Batch' })).toHaveValue('DEMO-MI-1');
  await page.getByRole('textbox', { name: 'It holds, when full' }).fill('5');
  await page.getByRole('button', { name: 'Keep this container' }).tap();
  await expect(page.getByRole('heading', { level: 1, name: 'Shelf' })).toBeVisible();
  const product = page.locator('section', { hasText: 'Demo Moss Iron' });
  await expect(product.getByRole('link', { name: 'Batch DEMO-MI-1' })).toBeVisible();
  await expect(product.getByText('Closed')).toBeVisible();
});

test('what is low or past its day is said in words, on the shelf and on the first page', async ({ page, app }) => {
  await show(page, app, '#/shelf');
  const wetter = page.locator('section', { hasText: 'Demo Wetter' });
  await expect(wetter.getByText('Stop', { exact: true })).toBeVisible();
  await expect(wetter.getByText(/was to be used up by/)).toBeVisible();
  await expect(page.getByText(/less than a tenth of what it held/)).toBeVisible();
  await show(page, app, '#/home');
  await page.getByRole('link', { name: /Demo Wetter .* past its last day/ }).tap();
  await expect(page.getByRole('heading', { level: 1, name: 'Batch DEMO-WT-09' })).toBeVisible();
});

test('where no container is kept, mixing asks for none', async ({ page, app }) => {
  await mixing(page, app);
  await expect(page.getByText('From which container?')).toHaveCount(0);
});

test('a fill is taken off the container that stands open, without a touch, and taking back gives it back', async ({
  page,
  app,
}) => {
  const open = await keep(app, 'OPEN');
  await keep(app, 'CLOSED', { opened_on: '' });
  const visitor = await mixing(page, app);
  await expect(page.getByRole('radio', { name: /OPEN/ })).toBeChecked();
  const panel = visitor.view.panel;
  if (panel.panel !== 'mix') throw new Error('not mixing');
  await makeFill(page);
  await expect(page.getByRole('heading', { level: 1, name: 'Walk' })).toBeVisible();
  expect(await left(app, open)).toBeCloseTo(5 - panel.fill.product.value / 1000, 6);
  await visitor.look();
  await visitor.act({ act: 'undo' });
  expect(await left(app, open)).toBe(5);
  await show(page, app, `#/record/${visitor.visitId}`);
});

test('another container by one touch, and its batch stands in the record', async ({ page, app }) => {
  await keep(app, 'OPEN');
  const closed = await keep(app, 'CLOSED', { opened_on: '' });
  const visitor = await mixing(page, app);
  await page.locator('label', { hasText: 'Batch CLOSED' }).tap();
  await page.waitForTimeout(300);
  await page.reload();
  await page.locator('main[data-ready="true"]').waitFor();
  await expect(page.getByRole('radio', { name: /CLOSED/ })).toBeChecked();
  await makeFill(page);
  await expect(page.getByRole('heading', { level: 1, name: 'Walk' })).toBeVisible();
  expect(await left(app, closed)).toBeLessThan(5);
  await show(page, app, `#/container/${closed}`);
  await expect(page.getByRole('link', { name: /Front lawn/ })).toBeVisible();
  await visitor.look();
  await visitor.until('closed');
  await show(page, app, `#/record/${visitor.visitId}`);
  await expect(page.getByText(/^1 · Demo Moss Iron \(invented\) · CLOSED/)).toBeVisible();
});

test('amounts from two containers must add up, and are taken off both', async ({ page, app }) => {
  const one = await keep(app, 'ONE');
  const two = await keep(app, 'TWO', { use_up_by: '2034-01-01' });
  const visitor = await mixing(page, app);
  await page.locator('summary', { hasText: 'From more than one container' }).tap();
  await page.getByRole('textbox', { name: 'From batch ONE' }).fill('100');
  await page.getByRole('textbox', { name: 'From batch TWO' }).fill('1');
  await makeFill(page);
  await expect(page.getByText(/From the containers came/).first()).toBeVisible();
  const panel = visitor.view.panel;
  if (panel.panel !== 'mix') throw new Error('not mixing');
  await page.getByRole('textbox', { name: 'From batch TWO' }).fill(String(panel.fill.product.value - 100));
  await page.getByRole('button', { name: 'The fill is made' }).tap();
  await expect(page.getByRole('heading', { level: 1, name: 'Walk' })).toBeVisible();
  expect(await left(app, one)).toBeCloseTo(4.9, 6);
  expect(await left(app, two)).toBeCloseTo(5 - (panel.fill.product.value - 100) / 1000, 6);
});

test('what is past its own day is refused until a reason is given', async ({ page, app }) => {
  await keep(app, 'OLD', { use_up_by: '2026-10-31' });
  await mixing(page, app);
  await expect(page.getByRole('radio', { name: 'Not from these' })).toBeChecked();
  await page.locator('label', { hasText: 'Batch OLD' }).tap();
  await expect(page.getByText(/Batch OLD was to be used up by/)).toBeVisible();
  await makeFill(page);
  await expect(page.getByRole('alert')).toContainText('Batch OLD was to be used up by');
  await expect(page.getByRole('heading', { level: 1, name: /^Mix fill 1/ })).toBeVisible();
  const from = page.locator('section', { hasText: 'From which container?' });
  await from.locator('summary', { hasText: 'Go on with a reason' }).tap();
  await from.getByRole('textbox', { name: /Why/ }).fill('Invented: tried on a patch a week ago.');
  await from.getByRole('button', { name: 'Pass this with the reason' }).tap();
  await expect(from.getByText('Passed', { exact: true })).toBeVisible();
  await page.getByRole('button', { name: 'The fill is made' }).tap();
  await expect(page.getByRole('heading', { level: 1, name: 'Walk' })).toBeVisible();
});

test('a count shows the book only after the figure was typed, and keeps the difference', async ({ page, app }) => {
  const container = await keep(app, 'COUNTED');
  await show(page, app, `#/count/${container}`);
  await expect(page.getByText(/By the book/)).toHaveCount(0);
  const field = page.getByRole('textbox', { name: 'Left in it now' });
  await field.fill('4.75');
  await expect(page.getByText(/By the book/)).toHaveCount(0);
  await field.blur();
  await expect(page.getByText('By the book 5.000\u00a0L should be in it.')).toBeVisible();
  await field.fill('50');
  await page.getByRole('button', { name: 'Keep this count' }).tap();
  await expect(field).toHaveAttribute('aria-invalid', 'true');
  await field.fill('4.75');
  await page.getByRole('button', { name: 'Keep this count' }).tap();
  await expect(page.getByRole('heading', { level: 1, name: 'Batch COUNTED' })).toBeVisible();
  await expect(page.getByText(/a difference of \u22120\.250/)).toBeVisible();
  expect(await left(app, container)).toBe(4.75);
});

test('a container is taken off the shelf and put back', async ({ page, app }) => {
  const container = await keep(app, 'AWAY');
  await show(page, app, `#/container/${container}`);
  await page.getByRole('button', { name: 'Take it off the shelf' }).tap();
  await page.locator('summary', { hasText: 'Taken off the shelf' }).tap();
  await page.getByRole('link', { name: 'Batch AWAY' }).tap();
  await expect(page.getByText('It was taken off the shelf.')).toBeVisible();
  await page.getByRole('button', { name: 'Put it back' }).tap();
  await expect(page.getByRole('link', { name: 'Count what is left' })).toBeVisible();
});
