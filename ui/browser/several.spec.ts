// Several lawns in one visit: added and put in order on the plan, walked one after another over the border, each in the record.
import { expect, test } from './app';
import { show } from './screens';
import { further, Visitor } from './visitor';

test('three lawns from one mixture: plan, border and record', async ({ page, app }) => {
  const visitor = new Visitor(app);
  await visitor.open('Number 4, front');
  await visitor.until('plan');
  await show(page, app, `#/visit/${visitor.visitId}`);
  const several = page.getByRole('region', { name: 'More lawns in this visit' });
  await several.locator('summary', { hasText: 'Add a lawn' }).tap();
  await several.getByRole('button', { name: /^Add Number 4, verge/ }).tap();
  await several.getByRole('button', { name: /^Add Number 4, back/ }).tap();
  await expect(several.getByText('Then 2: Number 4, verge')).toBeVisible();
  await several.getByRole('button', { name: 'Earlier Number 4, back' }).tap();
  await expect(several.getByText('Then 2: Number 4, back')).toBeVisible();
  await expect(several.getByText('All lawns together')).toBeVisible();
  for (const group of await several.locator('fieldset', { hasText: 'Was anything put on' }).all())
    await group.locator('label', { hasText: 'Nothing' }).tap();
  await expect(several.getByRole('alert')).toHaveCount(0);
  await page.getByRole('button', { name: 'Agree to this plan' }).tap();

  await expect(page.getByRole('heading', { level: 1, name: 'Ready list' })).toBeVisible();
  await expect(page.getByText('Lawn 1 of 3: Number 4, front')).toBeVisible();
  await visitor.look();
  await visitor.until('next_lawn');
  await show(page, app, `#/visit/${visitor.visitId}`);
  await expect(page.getByRole('heading', { level: 1, name: 'Next: Number 4, back' })).toBeVisible();
  await expect(page.getByText('Number 4, front is done.')).toBeVisible();
  await expect(page.getByText('Look at the weather beside this lawn: its edges are other ones.')).toBeVisible();
  await visitor.look();
  await visitor.until('closed');
  await show(page, app, `#/record/${visitor.visitId}`);
  await expect(page.getByRole('heading', { name: 'One lawn of the visit' })).toHaveCount(3);
  await expect(page.getByText('Number 4, verge').first()).toBeVisible();
});

test('a lawn is left out at the border, and that is taken back', async ({ page, app }) => {
  const visitor = new Visitor(app);
  await visitor.open('Number 4, front');
  await visitor.until('plan');
  const { panel } = visitor.view;
  if (panel.panel !== 'plan') throw new Error('no plan');
  const verge = panel.lawns.find((lawn) => lawn.name === 'Number 4, verge');
  if (verge === undefined) throw new Error('no verge');
  const choice = { ...panel.choice, later: [further(verge.lawn_id)] };
  await visitor.act({ act: 'agree_plan', choice });
  await visitor.until('next_lawn');
  await show(page, app, `#/visit/${visitor.visitId}`);
  await page.getByRole('button', { name: 'Leave this lawn out' }).tap();
  await expect(page.getByRole('heading', { level: 1, name: 'Use up what is left' })).toBeVisible();
  await visitor.look();
  await visitor.act({ act: 'undo' });
  await page.reload();
  await expect(page.getByRole('heading', { level: 1, name: 'Next: Number 4, verge' })).toBeVisible();
});
