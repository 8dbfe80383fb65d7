// The plan: directions side by side, a side of the lawn walked along, each pass drawn with its tankful, and one printed page.
import { expect, test } from './app';
import { bentLawn, keepLawn } from './lawns';
import { show } from './screens';
import { Visitor } from './visitor';

async function openPlan(page: import('@playwright/test').Page, app: import('./app').App): Promise<Visitor> {
  await keepLawn(app, bentLawn('Six-cornered lawn'));
  const visitor = new Visitor(app);
  await visitor.open('Six-cornered lawn');
  await visitor.until('plan');
  await show(page, app, `#/visit/${visitor.visitId}`);
  return visitor;
}

test('directions stand side by side with their figures, and one is chosen', async ({ page, app }) => {
  const visitor = await openPlan(page, app);
  const directions = page.getByRole('group', { name: 'Which way to walk' });
  expect(await directions.getByRole('radio').count()).toBeGreaterThan(1);
  await expect(directions.getByText('Advised')).toHaveCount(1);
  await expect(directions.getByText(/turn/).first()).toBeVisible();
  const other = directions.locator('.item:not(.chosen) label').first();
  const name = (await other.textContent())?.trim() ?? '';
  await other.tap();
  await expect(directions.locator('.item.chosen')).toContainText(name);
  await page.locator('button.main-act').tap();
  await expect(page.getByRole('heading', { name: 'Ready list' })).toBeVisible();
  expect((await visitor.look()).panel.panel).toBe('ready');
});

test('a side touched on the drawing is walked along', async ({ page, app }) => {
  await openPlan(page, app);
  const sides = page.getByRole('combobox', { name: 'Or walk along a side' });
  await sides.selectOption({ index: 2 });
  await expect(page.locator('path.chosen')).toHaveCount(1);
  const chosen = await sides.inputValue().catch(() => '');
  await page.locator('path.touch').first().dispatchEvent('click');
  await expect(page.locator('path.chosen')).toHaveCount(1);
  expect(chosen).not.toBe('');
});

test('each pass is drawn with its tankful, and the signs are named', async ({ page, app }) => {
  await openPlan(page, app);
  const passes = page.getByRole('group', { name: /Drawn: pass/ });
  const last = (await passes.getByRole('radio').count()) - 1;
  expect(last).toBeGreaterThan(0);
  await passes.getByRole('radio').nth(last).check({ force: true });
  await expect(page.getByRole('list', { name: 'Signs on the drawing' })).toContainText(/Fill \d/);
  await expect(page.getByRole('list', { name: 'Signs on the drawing' })).toContainText('Stays dry');
});

test('the plan prints on one page, with drawing, figures, signs and caution', async ({ page, app }) => {
  await openPlan(page, app);
  await expect(page.getByRole('button', { name: 'Print the plan' })).toBeVisible();
  const pdf = (await page.pdf({ preferCSSPageSize: true, printBackground: true })).toString('latin1');
  expect(pdf.match(/\/Type\s*\/Page(?!s)/g)).toHaveLength(1);
  await page.emulateMedia({ media: 'print' });
  await expect(page.locator('svg[role="img"]').first()).toBeVisible();
  await expect(page.getByText('Clean water', { exact: true })).toBeVisible();
  await expect(page.locator('.print-only').filter({ hasText: /Product: / })).toBeVisible();
  await expect(page.getByRole('list', { name: 'Signs on the drawing' })).toBeVisible();
  await expect(page.getByText('Evensward advises.').last()).toBeVisible();
  await expect(page.getByRole('button', { name: 'Agree to this plan' })).toBeHidden();
});
