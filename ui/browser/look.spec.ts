// What holds for every screen: nothing for axe to find in either theme, nothing clipped or cut off at any size, the main
// act in sight, and no word that the catalogue did not say.
import { expect, test } from './app';
import { axeFinds, bareWords, cutOff, tooSmallForTheWalk } from './judge';
import { SIZES, THEMES, type SizeName, type ThemeName } from './device';
import { everyScreen } from './screens';

test.setTimeout(300_000);

for (const theme of Object.keys(THEMES) as ThemeName[]) {
  test.describe(`by ${theme}`, () => {
    test.use({ ...SIZES.phone, colorScheme: THEMES[theme] });

    test('axe finds nothing on any screen, contrast at 7:1 included', async ({ page }) => {
      const found: string[] = [];
      await everyScreen(page, '', async (name) => {
        for (const what of await axeFinds(page)) found.push(`${name}: ${what}`);
      });
      expect(found).toEqual([]);
    });
  });
}

for (const size of Object.keys(SIZES) as SizeName[]) {
  test.describe(`at the size ${size}`, () => {
    test.use({ ...SIZES[size] });

    test('nothing is cut off and the main act is in sight on every screen', async ({ page }) => {
      const found: string[] = [];
      await everyScreen(page, '', async (name) => {
        for (const what of await cutOff(page)) found.push(`${name}: ${what}`);
        if (name.startsWith('visit-walk')) {
          for (const what of await tooSmallForTheWalk(page)) found.push(`${name}: too small: ${what}`);
        }
      });
      expect(found).toEqual([]);
    });
  });
}

test('every word comes from the catalogue, and the catalogue has every word', async ({ page }) => {
  const found: string[] = [];
  await everyScreen(page, '?lang=pseudo', async (name) => {
    await page.evaluate(() => document.querySelectorAll('details').forEach((details) => (details.open = true)));
    for (const what of await bareWords(page)) found.push(`${name}: ${what}`);
  });
  expect([...new Set(found)]).toEqual([]);
});
