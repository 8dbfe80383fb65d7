// When the file or the way to it fails: a plain message, a way on, and nothing lost.
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, startApp, test } from './app';
import { show } from './screens';
import { Visitor } from './visitor';

test('a damaged notebook is told, put aside, never deleted, and a new one is begun', async ({ page }) => {
  const garbage = 'This was a notebook once. '.repeat(400);
  const app = await startApp(true, (folder) => writeFileSync(join(folder, 'evensward.sqlite3'), garbage));
  try {
    await page.goto(app.url);
    await expect(page.getByRole('heading', { name: 'The notebook does not open' })).toBeVisible();
    await expect(page.getByRole('alert')).toContainText('damaged');
    expect(readFileSync(join(app.folder, 'evensward.sqlite3'), 'utf8')).toBe(garbage);
    await page.getByRole('button', { name: 'Put it aside and begin anew' }).click();
    await expect(page.getByRole('heading', { name: 'Who sprays and signs?' })).toBeVisible();
    const kept = readdirSync(app.folder, { recursive: true, withFileTypes: true })
      .filter((entry) => entry.isFile())
      .map((entry) => join(entry.parentPath, entry.name))
      .filter((path) => readFileSync(path).includes(garbage));
    expect(kept).toHaveLength(1);
    expect(kept[0]).not.toBe(join(app.folder, 'evensward.sqlite3'));
  } finally {
    app.end();
  }
});

test('a tap that finds no answer says so and can be tried again', async ({ page, app }) => {
  const visitor = new Visitor(app);
  await visitor.open('Front lawn');
  await visitor.until('walk');
  await show(page, app, `#/visit/${visitor.visitId}`);
  const before = visitor.view.seq;
  await page.route('**/api/ask', (route) => route.abort());
  await page.locator('button.main-act').click();
  await expect(page.getByRole('alert')).toContainText('Nothing was lost');
  await page.unroute('**/api/ask');
  await page.getByRole('button', { name: 'Try again' }).click();
  await expect(page.getByRole('button', { name: 'Pass 2 done' })).toBeVisible();
  expect((await visitor.look()).seq).toBe(before + 2);
});

test('an answer lost on its way does not make the tap count twice', async ({ page, app }) => {
  const visitor = new Visitor(app);
  await visitor.open('Front lawn');
  await visitor.until('walk');
  await show(page, app, `#/visit/${visitor.visitId}`);
  const before = visitor.view.seq;
  await page.route('**/api/ask', async (route) => {
    await route.fetch();
    await route.abort();
  });
  await page.locator('button.main-act').click();
  await expect(page.getByRole('alert')).toContainText('Nothing was lost');
  await page.unroute('**/api/ask');
  await page.getByRole('button', { name: 'Try again' }).click();
  await expect(page.getByRole('button', { name: 'Pass 2 done' })).toBeVisible();
  expect((await visitor.look()).seq).toBe(before + 2);
});

test('day and dusk can be chosen, and stay chosen', async ({ page, app }) => {
  await show(page, app, '#/settings');
  const ground = () => page.evaluate(() => getComputedStyle(document.documentElement).backgroundColor);
  const before = await ground();
  await page.getByRole('radio', { name: 'Dusk' }).check();
  const dusk = await ground();
  expect(dusk).not.toBe(before);
  await page.reload();
  await page.locator('main[data-ready="true"]').waitFor();
  expect(await ground()).toBe(dusk);
});
