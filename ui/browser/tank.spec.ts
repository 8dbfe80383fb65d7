// Products that share a tank: added on the plan, tried in a jar, measured one by one in their order, each in the record.
import { expect, test } from './app';
import { show } from './screens';
import { Visitor } from './visitor';

test('two products share a tank: amounts, jar test, steps and record name both', async ({ page, app }) => {
  const visitor = new Visitor(app);
  await visitor.open('Front lawn');
  await visitor.until('plan');
  await show(page, app, `#/visit/${visitor.visitId}`);
  await page.locator('summary', { hasText: 'Add a product to the same tank' }).tap();
  await page.locator('label', { hasText: 'Demo Spring Feed' }).tap();
  await page.getByRole('button', { name: /^Add Demo Spring Feed/ }).tap();
  const partners = page.getByRole('region', { name: 'Products in this tank' });
  await expect(partners.getByText('Order of adding')).toBeVisible();
  await expect(partners.locator('ol li')).toHaveCount(2);
  await expect(page.getByText(/ of Demo Spring Feed/).first()).toBeVisible();
  await page.getByRole('button', { name: 'Agree to this plan' }).tap();

  await expect(page.getByRole('heading', { level: 1, name: 'Ready list' })).toBeVisible();
  const jar = page.getByRole('region', { name: 'Try it in a jar first' });
  await expect(jar.getByText('Let it stand for 15 minutes.')).toBeVisible();
  await jar.locator('label', { hasText: 'Clumps or grit' }).tap();
  await jar.getByRole('button', { name: 'Write down the jar test' }).tap();
  await expect(page.getByText('The jar shows clumps or grit').first()).toBeVisible();
  await jar.locator('label', { hasText: 'It stayed even' }).tap();
  await jar.getByRole('button', { name: 'Write down the jar test' }).tap();
  await expect(page.getByText('The jar shows clumps or grit')).toHaveCount(0);

  await visitor.look();
  await visitor.until('mix');
  await show(page, app, `#/visit/${visitor.visitId}`);
  await expect(page.getByText(/ of Demo Spring Feed/).first()).toBeVisible();
  await page.locator('summary', { hasText: 'Something else was measured' }).tap();
  await page.getByRole('textbox', { name: /Demo Spring Feed .*measured/ }).fill('a handful');
  await page.waitForTimeout(300);
  for (let n = 0; n < 40 && (await page.getByRole('button', { name: 'The fill is made' }).count()) === 0; n += 1) {
    await page.locator('button.main-act').tap();
    await page.waitForTimeout(520);
  }
  await page.getByRole('button', { name: 'The fill is made' }).tap();
  const wrong = page.getByRole('textbox', { name: /Demo Spring Feed .*measured/ });
  await expect(wrong).toHaveAttribute('aria-invalid', 'true');
  await expect(wrong).toHaveValue('a handful');

  await visitor.look();
  await visitor.until('closed');
  await show(page, app, `#/record/${visitor.visitId}`);
  await expect(page.getByText('Demo Spring Feed').first()).toBeVisible();
});

test('a product is left out of the tank again', async ({ page, app }) => {
  const visitor = new Visitor(app);
  await visitor.open('Front lawn');
  await visitor.until('plan');
  const { panel } = visitor.view;
  if (panel.panel !== 'plan') throw new Error('no plan');
  const other = panel.partners.can_add.find((one) => one.verdict !== 'stop');
  if (other === undefined) throw new Error('no product that may share the tank');
  await visitor.act({ act: 'add_partner', product_id: other.product_id, dose: { text: '', unit: '' } });
  await show(page, app, `#/visit/${visitor.visitId}`);
  await page.getByRole('button', { name: /^Leave out/ }).tap();
  await expect(page.getByText('Order of adding')).toHaveCount(0);
});
