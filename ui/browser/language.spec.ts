// The second language: chosen by the device or by a setting, at once and without losing anything; every screen of it fits
// and is read well; a whole visit is done in it by role and name; and what is recorded is in no language at all.
import type { Page } from '@playwright/test';
import { expect, test } from './app';
import { SIZES, THEMES, type ThemeName } from './device';
import { axeFinds, cutOff, tooSmallForTheWalk } from './judge';
import { everyScreen, show } from './screens';

const heading = (page: Page, name: string) => page.getByRole('heading', { level: 1, name, exact: true });
const main = (page: Page) => page.locator('button.main-act');

async function choose(page: Page, question: string, answer: string): Promise<void> {
  await page.getByRole('group', { name: question }).locator('label', { hasText: answer }).first().tap();
}

async function fill(page: Page, field: string, text: string): Promise<void> {
  await page.getByRole('textbox', { name: field }).fill(text);
}

/** Ticks whole groups first, then what is left one by one. */
async function tickAll(page: Page): Promise<void> {
  for (const open of [page.getByRole('button', { name: /abhaken$/ }), page.locator('label.tick:not(.on)')]) {
    for (let nOpen = await open.count(); nOpen > 0; nOpen = await open.count()) {
      await open.first().tap();
      await expect(open).toHaveCount(nOpen - 1);
    }
  }
}

test('a setting changes the language at once, and what was typed stays', async ({ page, app }) => {
  await show(page, app, '#/me');
  await expect(page.locator('html')).toHaveAttribute('lang', 'en');
  await page.getByRole('textbox', { name: 'Your name' }).fill('Half a na');
  await page.getByRole('link', { name: 'How it looks, sounds and beats' }).tap();
  await choose(page, 'Language', 'Deutsch');
  await expect(heading(page, 'Wie es aussieht und klingt')).toBeVisible();
  await expect(page.locator('html')).toHaveAttribute('lang', 'de');
  await expect(page).toHaveTitle('Wie es aussieht und klingt · Evensward');
  await page.reload();
  await expect(heading(page, 'Wie es aussieht und klingt')).toBeVisible();
  await page.getByRole('link', { name: 'Zurück' }).tap();
  await expect(page.getByRole('textbox', { name: 'Ihr Name' })).toHaveValue('Half a na');
  await show(page, app, '#/settings');
  await choose(page, 'Sprache', 'Wie das Gerät');
  await expect(heading(page, 'How it looks and sounds')).toBeVisible();
  await expect(page.locator('html')).toHaveAttribute('lang', 'en');
});

test('customary units stand beside the metric ones by a setting, and for one page by one touch', async ({
  page,
  app,
}) => {
  const kits = await app.ask({ ask: 'kits' });
  if (kits.answer !== 'kits' || kits.value[0] === undefined) throw new Error('no kit');
  const hash = `#/calibrate/${kits.value[0].id}`;
  await show(page, app, hash);
  for (const [name, text] of Object.entries({
    jug_volume: '900',
    jug_time: '60',
    walk_length: '20',
    walk_time: '20',
  })) {
    await page.locator(`input[name="${name}"]`).fill(text);
  }
  const flow = page.locator('.figure', { hasText: 'The nozzle gives' });
  await expect(flow).toContainText('0.900');
  await expect(flow).not.toContainText('imp');
  await page.getByRole('button', { name: 'Also in mph, pints and yards' }).tap();
  await expect(flow).toContainText('1.584\u00a0imp pt/min');
  await page.getByRole('button', { name: 'Metric alone' }).tap();
  await expect(flow).not.toContainText('imp');

  await show(page, app, '#/settings');
  await page.locator('label.tick', { hasText: 'Also in miles an hour, pints and yards' }).tap();
  await show(page, app, hash);
  await expect(flow).toContainText('1.584\u00a0imp pt/min');
  await expect(page.getByRole('button', { name: 'Also in mph, pints and yards' })).toHaveCount(0);
});

test.describe('on a device that speaks German', () => {
  test.use({ locale: 'de-AT' });

  test('a whole visit by touch, by role and name', async ({ page, app }) => {
    test.setTimeout(300_000);
    await show(page, app, '#/home');
    await expect(page.locator('html')).toHaveAttribute('lang', 'de');
    await page.getByRole('button', { name: 'Einsatz beginnen Front lawn' }).tap();

    await expect(heading(page, 'Ist eine Behandlung richtig?')).toBeVisible();
    await choose(page, 'Was ist da, oder was ist gewünscht?', 'Moos');
    await choose(page, 'Wie viel davon?', 'Hier und da');
    await choose(page, 'Kam dieses Jahr etwas auf diesen Rasen?', 'Nichts');
    await choose(page, 'Welche Art Rasen ist es?', 'Ein Rasen');
    await main(page).tap();
    await expect(heading(page, 'Welches Mittel?')).toBeVisible();
    await page.locator('label', { hasText: 'Demo Moss Iron' }).tap();
    await main(page).tap();
    await expect(heading(page, 'Welche Spritze?')).toBeVisible();
    await page.locator('label', { hasText: '15 L knapsack' }).tap();
    await main(page).tap();
    await expect(heading(page, 'Der Plan')).toBeVisible();
    await expect(page.getByText('Klares Wasser').first()).toBeVisible();
    await main(page).tap();

    await expect(heading(page, 'Prüfliste')).toBeVisible();
    await tickAll(page);
    const water = page.getByRole('region', { name: 'Das Wasser zum Ansetzen' });
    await fill(page, 'Woher kommt es?', 'Erfunden: die Regentonne');
    await fill(page, 'Wie warm es ist', '12,5');
    await fill(page, 'pH', '6,5');
    await fill(page, 'Härte', '1.200');
    await water.getByRole('button', { name: 'Wasser festhalten' }).tap();
    // A point before three digits is twelve hundred to the one who types it: it is asked for again, never read as 1.2.
    await expect(water.getByText('Das lässt sich auf zwei Arten lesen.')).toBeVisible();
    await expect(water.getByRole('textbox', { name: 'Härte' })).toHaveValue('1.200');
    await fill(page, 'Härte', '80');
    await water.getByRole('button', { name: 'Wasser festhalten' }).tap();
    await expect(water.getByText('Das Wasser ist festgehalten.')).toBeVisible();
    await choose(page, 'Der Wind nach', 'dem, was er bewegt');
    await choose(page, 'Was bewegt der Wind?', 'Leichte Brise');
    await choose(page, 'Wohin weht er?', 'Nach vorn');
    await choose(page, 'Böen?', 'Nein');
    await choose(page, 'Regnet es?', 'Nein');
    await fill(page, 'Wie lange bleibt es laut Vorhersage trocken?', '12');
    await fill(page, 'Lufttemperatur', '14,5');
    await choose(page, 'Das Gras', 'Trocken');
    await choose(page, 'Der Himmel', 'Bewölkt');
    await choose(page, 'Der Boden', 'Offen');
    await choose(page, 'Trockenheit', 'Kein Zeichen davon');
    await page.locator('summary', { hasText: 'Mehr: Himmelsrichtung, Böen, Luftfeuchte' }).tap();
    await fill(page, 'Relative Luftfeuchte', '65');
    await page.getByRole('button', { name: 'Wetter festhalten' }).tap();
    await expect(page.getByText('Trocknungsdifferenz')).toBeVisible();
    await expect(page.getByRole('button', { name: 'Ansetzen beginnen' })).toBeVisible();
    await main(page).tap();

    let nWalks = 0;
    for (let n = 0; n < 200; n += 1) {
      const title = await page.getByRole('heading', { level: 1 }).textContent();
      if (title === 'Aufzeichnung unterschreiben') break;
      if (title === 'Gehen') nWalks += 1;
      await main(page).tap();
      await expect(main(page)).toHaveAttribute('aria-busy', 'false');
      // The second of two quick taps is a bounce, so a person, too, waits a moment.
      await page.waitForTimeout(520);
    }
    expect(nWalks).toBeGreaterThan(1);

    await expect(heading(page, 'Aufzeichnung unterschreiben')).toBeVisible();
    await main(page).tap();
    await expect(heading(page, 'Die Aufzeichnung')).toBeVisible();
    await expect(page.getByText('Abgeschlossen und unterschrieben.')).toBeVisible();
    await page.locator('summary', { hasText: 'Die Aufzeichnung als JSON' }).tap();
    const json = await page.getByRole('textbox', { name: 'Die Aufzeichnung als JSON' }).inputValue();
    const record = JSON.parse(json) as { checks: { verdict: string }[] };
    expect(record.checks.length).toBeGreaterThan(5);
    for (const { verdict } of record.checks) expect(['go', 'caution', 'stop']).toContain(verdict);
    const own = json.replace('Erfunden: die Regentonne', '');
    expect(own).not.toMatch(/[äöüÄÖÜß]|Vorsicht|Durchgang|Moos|Rasen|Spritze/u);
    await main(page).tap();
    await expect(page.getByText('Nachschau').first()).toBeVisible();
  });

  for (const theme of Object.keys(THEMES) as ThemeName[]) {
    test.describe(`by ${theme}`, () => {
      test.use({ ...SIZES.small, colorScheme: THEMES[theme] });
      test.setTimeout(420_000);

      test('every screen fits the smallest phone, has all its words, and axe finds nothing', async ({ page }) => {
        const found: string[] = [];
        await everyScreen(page, '', async (name) => {
          for (const what of await cutOff(page)) found.push(`${name}: ${what}`);
          if (name.startsWith('visit-walk')) {
            for (const what of await tooSmallForTheWalk(page)) found.push(`${name}: too small: ${what}`);
          }
          if ((await page.locator('body').innerText()).includes('⟦')) found.push(`${name}: a word is lacking`);
          if (!SEEN_BY_AXE.test(name)) return;
          for (const what of await axeFinds(page)) found.push(`${name}: ${what}`);
        });
        expect(found).toEqual([]);
      });
    });
  }
});

/** The main screens; English has axe look at all of them, and German differs in its words alone. */
const SEEN_BY_AXE = /^(lawns|me|lawn|label-4|kit|calibrate|visit-(assess|plan|ready|mix|walk|use-up)|record|emergency)/;
