// Takes a picture of every screen in every size and theme. Long screens are pictured whole, too.
import { mkdirSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { test } from '@playwright/test';
import { SIZES, THEMES, type SizeName, type ThemeName } from './device';
import { everyScreen } from './screens';

const out = process.env['EVENSWARD_SHOTS'] ?? resolve(import.meta.dirname, '..', '..', 'target', 'shots');

for (const size of Object.keys(SIZES) as SizeName[]) {
  for (const theme of Object.keys(THEMES) as ThemeName[]) {
    const { width, height } = SIZES[size].viewport;
    test.describe(`${width}x${height} by ${theme}`, () => {
      test.use({ ...SIZES[size], colorScheme: THEMES[theme] });

      test('pictures of every screen', async ({ page }) => {
        const folder = join(out, `${width}x${height}-${theme}`);
        mkdirSync(folder, { recursive: true });
        let n = 0;
        await everyScreen(page, '', async (name) => {
          n += 1;
          const file = join(folder, `${String(n).padStart(2, '0')}-${name}.png`);
          await page.screenshot({ path: file, animations: 'disabled' });
          const hidden = await page.evaluate(() => {
            const main = document.querySelector('dialog[open] .body') ?? document.querySelector('main');
            return main === null ? 0 : main.scrollHeight - main.clientHeight;
          });
          if (hidden <= 8) return;
          await page.setViewportSize({ width, height: height + hidden });
          await page.screenshot({ path: file.replace('.png', '-whole.png'), animations: 'disabled' });
          await page.setViewportSize({ width, height });
        });
      });
    });
  }
}
