// The whole walk with a Bluetooth clicker, which is a keyboard of two or four keys: mixing, walking, refilling, what is
// left, putting right, using up, washing. A key held down never counts twice.
import { expect, test } from './app';
import { show } from './screens';
import { Visitor } from './visitor';

for (const key of ['PageDown', ' ', 'Enter', 'ArrowRight', 'ArrowDown']) {
  test(`from mixing to the signature by the key "${key}" alone`, async ({ page, app }) => {
    const visitor = new Visitor(app);
    await visitor.open('Front lawn');
    await visitor.until('ready');
    await visitor.until('mix');
    await show(page, app, `#/visit/${visitor.visitId}`);
    const title = page.getByRole('heading', { level: 1 });
    for (let n = 0; n < 200 && (await title.textContent()) !== 'Sign the record'; n += 1) {
      const before = visitor.view.seq;
      await page.keyboard.press(key);
      await expect.poll(async () => (await visitor.look()).seq, { message: `press ${n}` }).toBeGreaterThan(before);
      expect(visitor.view.seq, 'one press, one act').toBeLessThanOrEqual(before + 2);
      await page.waitForTimeout(510);
    }
    await expect(title).toHaveText('Sign the record');
  });
}

test('a key held down counts once, and the backward key takes it back', async ({ page, app }) => {
  const visitor = new Visitor(app);
  await visitor.open('Front lawn');
  await visitor.until('walk');
  await show(page, app, `#/visit/${visitor.visitId}`);
  const before = visitor.view.seq;
  for (let n = 0; n < 8; n += 1) await page.keyboard.down('PageDown');
  await page.keyboard.up('PageDown');
  await expect(page.getByRole('button', { name: 'Pass 2 done' })).toBeVisible();
  // One act: the pass is done, and the tank holds what the plan says.
  expect((await visitor.look()).seq).toBe(before + 2);
  await page.waitForTimeout(510);
  await page.keyboard.press('PageUp');
  await expect(page.getByRole('button', { name: 'Pass 1 done' })).toBeVisible();
});

test('a box ticked by a finger leaves the next key to the clicker', async ({ page, app }) => {
  const visitor = new Visitor(app);
  await visitor.open('Front lawn');
  await visitor.until('mix');
  await show(page, app, `#/visit/${visitor.visitId}`);
  const box = page.getByRole('checkbox', { name: 'Close the lid' });
  for (const key of [' ', 'PageDown']) {
    const before = (await visitor.look()).seq;
    await box.click();
    await expect.poll(async () => (await visitor.look()).seq).toBe(before + 1);
    const wasTicked = await box.isChecked();
    await page.keyboard.press(key);
    await expect.poll(async () => (await visitor.look()).seq).toBe(before + 2);
    expect(await box.isChecked(), 'the key did what comes next').toBe(wasTicked);
    await page.waitForTimeout(510);
  }
});

test('a box that keys have come to keeps its keys', async ({ page, app }) => {
  const visitor = new Visitor(app);
  await visitor.open('Front lawn');
  await visitor.until('mix');
  await show(page, app, `#/visit/${visitor.visitId}`);
  const box = page.getByRole('checkbox', { name: 'Close the lid' });
  const before = (await visitor.look()).seq;
  for (let n = 0; n < 40 && !(await box.evaluate((e) => e === document.activeElement)); n += 1) {
    await page.keyboard.press('Shift+Tab');
  }
  await page.keyboard.press('PageDown');
  await page.keyboard.press(' ');
  await expect(box).toBeChecked();
  expect((await visitor.look()).seq).toBe(before + 1);
  await expect(box).toBeFocused();
});

test('keys typed into a field stay in the field', async ({ page, app }) => {
  const visitor = new Visitor(app);
  await visitor.open('Front lawn');
  await visitor.until('pass_end');
  await show(page, app, `#/visit/${visitor.visitId}`);
  const before = visitor.view.seq;
  const left = page.getByRole('textbox', { name: 'Left in the tank' });
  await left.focus();
  await page.keyboard.press('ArrowLeft');
  await page.keyboard.press(' ');
  await page.keyboard.press('Enter');
  expect((await visitor.look()).seq).toBe(before);
});
