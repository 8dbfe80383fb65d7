// The versions of a label: listed with who copied each and what it changed, read whole, never typed into, and reached and
// left with the keyboard alone.
import { expect, test, type App } from './app';
import { show } from './screens';

async function productCalled(app: App, name: string): Promise<string> {
  const products = await app.ask({ ask: 'products' });
  if (products.answer !== 'products') throw new Error('no products');
  const found = products.value.find((one) => one.entry.input.name.includes(name));
  if (found === undefined) throw new Error(`no product called ${name}`);
  return found.id;
}

test('from the label to its versions, and to an older one, by the keyboard alone', async ({ page, app }) => {
  await show(page, app, `#/product/${await productCalled(app, 'Broadleaf')}`);
  await page.getByRole('link', { name: 'Versions of this label' }).focus();
  await page.keyboard.press('Enter');
  await expect(page.getByRole('heading', { level: 1, name: 'Versions of this label' })).toBeVisible();
  const versions = page.locator('ol.ruled > li');
  await expect(versions).toHaveCount(2);
  const [newest, oldest] = [versions.nth(0), versions.nth(1)];
  await expect(newest).toContainText('Holds now');
  await expect(newest).toContainText('Copied by Demo Operator on Mon, 2 Mar 2026');
  await expect(newest).toContainText('Least days between two treatments');
  await expect(newest).toContainText('Before: 28');
  await expect(newest).toContainText('Before: not stated');
  await expect(oldest).not.toContainText('Before:');
  await oldest.getByRole('link', { name: 'Version 1' }).focus();
  await page.keyboard.press('Enter');
  await expect(page.getByRole('heading', { level: 1, name: 'Version 1' })).toBeVisible();
  await expect(page.getByText('An older version, to be read.')).toBeVisible();
  await expect(page.getByText('3.5\u00a0L/ha')).toBeVisible();
  await expect(page.locator('main input, main textarea, main select')).toHaveCount(0);
  await page.getByRole('link', { name: 'Back' }).focus();
  await page.keyboard.press('Enter');
  await expect(page.getByRole('heading', { level: 1, name: 'Versions of this label' })).toBeVisible();
});

test('a changed label is a new version, and the old one still stands as it was', async ({ page, app }) => {
  const id = await productCalled(app, 'Wetter');
  const before = await app.ask({ ask: 'product', product_id: id });
  if (before.answer !== 'product') throw new Error('no label');
  const input = { ...before.value.input, label_version: 'Invented label, version 5', hand_held: '' };
  await app.ask({
    ask: 'save_product',
    product_id: id,
    label_id: crypto.randomUUID(),
    input,
    draft_key: null,
  });
  await show(page, app, `#/label-versions/${id}`);
  const newest = page.locator('ol.ruled > li').first();
  await expect(newest).toContainText('2 things changed');
  await expect(newest).toContainText('Hand-held sprayers');
  await expect(newest).toContainText('Before: Allowed');
  await expect(newest).toContainText('Before: Invented label, version 4');
  await page.getByRole('button', { name: 'Open the label' }).click();
  await expect(page.getByRole('textbox', { name: 'Name on the label' })).toHaveValue('Demo Wetter (invented)');
});
