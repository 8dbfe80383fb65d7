// A kit from its nozzle to its answers: what is drawn of it, three catches and three walks, the season's plot, the signed
// cleaning that lifts a Stop, and the questions from the other end.
import type { Page } from '@playwright/test';
import { expect, test, type App } from './app';
import { show } from './screens';

async function kitCalled(app: App, part: string): Promise<string> {
  const kits = await app.ask({ ask: 'kits' });
  const kit = kits.answer === 'kits' ? kits.value.find(({ entry }) => entry.input.name.includes(part)) : undefined;
  if (kit === undefined) throw new Error(`no kit called ${part}`);
  return kit.id;
}

async function fill(page: Page, fields: Record<string, string>): Promise<void> {
  for (const [name, value] of Object.entries(fields)) await page.locator(`input[name="${name}"]`).fill(value);
}

/** Three catches and three walks that agree within a few in a hundred. */
const THREE_OF_EACH = {
  jug_volume: '900',
  jug_time: '60',
  'more_catches.0.volume': '905',
  'more_catches.0.time': '60',
  'more_catches.1.volume': '895',
  'more_catches.1.time': '60',
  walk_length: '20',
  walk_time: '20',
  'more_walks.0.length': '20',
  'more_walks.0.time': '20.2',
  'more_walks.1.length': '20',
  'more_walks.1.time': '19.8',
};

test('the fan over the grass is drawn with its height, its width and the swath that counts', async ({ page, app }) => {
  await show(page, app, `#/kit/${await kitCalled(app, 'wide fan')}`);
  await fill(page, { height: '50', fan_angle: '90' });
  await page.getByRole('combobox', { name: 'Unit of Nozzle above the grass' }).selectOption('cm');
  // A fan of 90 degrees is twice as wide as it hangs high: 2 x 50 cm x tan 45.
  await expect(page.getByRole('img', { name: /Height: 50\scm\. Width on the ground: 1\.00?\sm/ })).toBeVisible();
});

test('one catch is not a jug test, and three that agree are', async ({ page, app }) => {
  const id = await kitCalled(app, 'wide fan');
  await show(page, app, `#/calibrate/${id}`);
  await fill(page, { jug_volume: '900', jug_time: '60', walk_length: '20', walk_time: '20' });
  await page.getByRole('button', { name: 'Keep this measurement' }).click();
  await expect(page.getByRole('alert')).toBeVisible();
  await fill(page, THREE_OF_EACH);
  await page.getByRole('checkbox', { name: 'The full sprayer was on my back' }).check();
  // (900 + 905 + 895) / 3 = 900 mL in a minute.
  await expect(page.getByText('0.900', { exact: false }).first()).toBeVisible();
  await page.getByRole('button', { name: 'Keep this measurement' }).click();
  await expect(page.getByRole('heading', { name: 'Kits' })).toBeVisible();
});

test('catches that lie far apart are refused, and the fourth can be added', async ({ page, app }) => {
  await show(page, app, `#/calibrate/${await kitCalled(app, 'wide fan')}`);
  await fill(page, { ...THREE_OF_EACH, 'more_catches.1.volume': '600' });
  await page.getByRole('checkbox', { name: 'The full sprayer was on my back' }).check();
  await page.getByRole('button', { name: 'Keep this measurement' }).click();
  await expect(page.getByRole('alert')).toBeVisible();
  await page.getByRole('button', { name: 'One more catch' }).click();
  await expect(page.locator('input[name="more_catches.2.volume"]')).toBeVisible();
  await page.getByRole('button', { name: /Take out/ }).click();
  await expect(page.locator('input[name="more_catches.2.volume"]')).toHaveCount(0);
  await expect(page.locator('input[name="more_catches.1.volume"]')).toHaveValue('600');
});

test('the season is drawn, and told as a list', async ({ page, app }) => {
  const id = await kitCalled(app, 'wide fan');
  await show(page, app, `#/ask/${id}`);
  await expect(page.getByRole('img', { name: /jug test/ })).toBeVisible();
  await page.locator('summary', { hasText: 'jug test' }).click();
  await expect(page.getByText('In force')).toBeVisible();
});

test('a sprayer that held something that kills grass is stopped until its cleaning is signed', async ({
  page,
  app,
}) => {
  const id = await kitCalled(app, 'Path sprayer');
  await show(page, app, '#/kits');
  await expect(page.getByText('Stop', { exact: true })).toBeVisible();
  await show(page, app, `#/clean/${id}`);
  await expect(page.getByRole('heading', { name: 'How to clean it' })).toBeVisible();
  await page.locator('input[name="by"]').fill('');
  await page.getByRole('button', { name: 'Sign the cleaning' }).click();
  await expect(page.getByRole('alert')).toBeVisible();
  await expect(page.locator('input[name="by"]')).toHaveAttribute('aria-invalid', 'true');
  await fill(page, { by: 'Demo Operator', n_rinses: '3' });
  await page.getByRole('checkbox', { name: 'A cleaning agent was used' }).check();
  await page.getByRole('button', { name: 'Sign the cleaning' }).click();
  await expect(page.getByRole('heading', { name: 'Kits' })).toBeVisible();
  await expect(page.getByText('Stop', { exact: true })).toHaveCount(0);
});

test('a kit answers from the other end', async ({ page, app }) => {
  await show(page, app, `#/ask/${await kitCalled(app, 'wide fan')}`);
  await fill(page, { wanted: '30' });
  await expect(page.getByText('Walk at')).toBeVisible();
  await expect(page.getByText('2 passes at', { exact: false })).toBeVisible();
  await expect(page.getByRole('heading', { name: 'Nozzles for it' })).toBeVisible();
  await fill(page, { wanted: 'much' });
  await page.locator('input[name="wanted"]').blur();
  await expect(page.locator('input[name="wanted"]')).toHaveAttribute('aria-invalid', 'true');
});
