// A lawn measured in every way, by touch: braces with a misread line, a baseline, a file, a walk round, corners by hand,
// margins, places. What is expected was worked out on paper; the sums stand beside the lawns.
import type { Page } from '@playwright/test';
import { expect, test } from './app';
import {
  baselinePart,
  bentLawn,
  bracedPart,
  dragByTouch,
  gpx,
  keepLawn,
  lawnOf,
  PENTAGON_LINES,
  part,
  tapUntil,
  walkRound,
} from './lawns';
import { show } from './screens';

/** The area that is shown, once it is. */
async function shownArea(page: Page): Promise<number> {
  const area = /To treat:\s*([\d.\s]+)\sm²/;
  await expect(page.locator('.area')).toHaveText(area);
  const text = (await page.locator('.area').textContent()) ?? '';
  return Number(area.exec(text)?.[1]?.replaceAll(/\s/g, ''));
}

test('sides and braces: a misread line is pointed at, and put right', async ({ page, app }) => {
  await show(page, app, `#/lawn/${crypto.randomUUID()}`);
  await page.locator('label', { hasText: 'Sides and braces' }).tap();
  await page.getByRole('group', { name: 'Corners', exact: true }).getByRole('button', { name: 'More' }).tap();
  for (const { from, to, length } of PENTAGON_LINES) {
    const side = page.getByRole('textbox', { name: `Side ${from} to ${to}` });
    const brace = page.getByRole('textbox', { name: `Brace ${from} to ${to}` });
    if ((await side.count()) === 0) {
      await page.getByRole('combobox', { name: 'From corner' }).selectOption(from);
      await page.getByRole('combobox', { name: 'To corner' }).selectOption(to);
      await page.getByRole('button', { name: 'Add this brace' }).tap();
    }
    const misread = from + to === 'AC' ? (Number(length.text) + 1).toFixed(2) : length.text;
    await side.or(brace).fill(misread);
  }
  await expect(page.getByText(/Measure (A to C|C to A) again/)).toBeVisible();
  await page.getByRole('textbox', { name: 'Brace A to C' }).fill(PENTAGON_LINES[5]?.length.text ?? '');
  await expect(page.getByText(/Measure .* again/)).toHaveCount(0);
  await expect(page.locator('.area')).toHaveText(/149\.0\sm²/);
  await expect(page.locator('.area')).toContainText('±');
  await page.locator('summary', { hasText: 'How the lines fit together' }).tap();
  await expect(page.getByRole('row')).toHaveCount(PENTAGON_LINES.length + 1);
});

test('sides alone can fold: the answer names the brace that is missing, one touch adds it', async ({ page, app }) => {
  await show(page, app, `#/lawn/${crypto.randomUUID()}`);
  await page.locator('label', { hasText: 'Sides and braces' }).tap();
  for (const [name, text] of Object.entries({ 'A to B': '12', 'B to C': '9', 'C to D': '12', 'D to A': '9' })) {
    await page.getByRole('textbox', { name: `Side ${name}` }).fill(text);
  }
  const add = page.getByRole('button', { name: /brace (A to C|B to D): it is still missing/ });
  await add.tap();
  await page.getByRole('textbox', { name: /^Brace/ }).fill('15');
  await expect(page.locator('.area')).toHaveText(/108\.0\sm²/);
  await expect(add).toHaveCount(0);
});

test('a baseline: the picture grows row by row, both rules stand side by side', async ({ page, app }) => {
  await show(page, app, `#/lawn/${crypto.randomUUID()}`);
  await page.locator('label', { hasText: 'Along a baseline' }).tap();
  const rows = baselinePart().offsets;
  for (const [idx, row] of rows.entries()) {
    const place = page.getByRole('group', { name: `Place ${idx + 1}` });
    await place.getByRole('textbox', { name: 'Along' }).fill(row.chainage.text);
    await place.getByRole('textbox', { name: 'Left' }).fill(row.left.text);
    await place.getByRole('textbox', { name: 'Right' }).fill(row.right.text);
  }
  // Widths 4, 6 and 4 m, 5 m apart: 5/2 × (4 + 6) × 2 = 50 m² straight, 5/3 × (4 + 4 × 6 + 4) = 53.3 m² by Simpson.
  await expect(page.getByText(/Straight between the places: 50\.0\sm²/)).toBeVisible();
  await expect(page.getByText(/53\.3\sm²/)).toBeVisible();
  await page.getByRole('button', { name: 'Add a place' }).tap();
  await expect(page.getByRole('group', { name: 'Place 4' })).toBeVisible();
  const last = page.getByRole('group', { name: 'Place 4' });
  await last.getByRole('textbox', { name: 'Along' }).fill('15');
  await last.getByRole('textbox', { name: 'Left' }).fill('1');
  await last.getByRole('textbox', { name: 'Right' }).fill('1');
  // One more trapezium: 5/2 × (4 + 2) = 15 m².
  await expect(page.getByText(/Straight between the places: 65\.0\sm²/)).toBeVisible();
});

test('a GPX file brings in a walk round', async ({ page, app }) => {
  await show(page, app, `#/lawn/${crypto.randomUUID()}`);
  await page.locator('label', { hasText: 'Walk round it' }).tap();
  await page
    .getByLabel('Bring a GPX file')
    .setInputFiles({ name: 'round.gpx', mimeType: 'application/gpx+xml', buffer: Buffer.from(gpx()) });
  await expect(page.getByText(/fixes used/)).toBeVisible();
  // 60 m by 40 m is 2400 m²; smoothing may take a little off the corners.
  expect(await shownArea(page)).toBeGreaterThan(2300);
  expect(await shownArea(page)).toBeLessThan(2420);
});

test('a track too unsure for a small lawn says so at once, and is kept', async ({ page, app }) => {
  await show(page, app, `#/lawn/${crypto.randomUUID()}`);
  await page.locator('label', { hasText: 'Walk round it' }).tap();
  const small = gpx(24, 16);
  await page
    .getByLabel('Bring a GPX file')
    .setInputFiles({ name: 'small.gpx', mimeType: 'application/gpx+xml', buffer: Buffer.from(small) });
  await expect(page.getByText(/fixes used|Tape it instead|more than \d+.%/).first()).toBeVisible();
  await expect(page.locator('main [role="alert"]').first()).toHaveText(/\p{L}{3}/u);
});

test('a file that holds no outline is refused in plain words, and the form stays', async ({ page, app }) => {
  await show(page, app, `#/lawn/${crypto.randomUUID()}`);
  await page.getByRole('textbox', { name: 'Width, along the front' }).fill('11');
  await page.locator('label', { hasText: 'Draw it, or a file' }).tap();
  await page.getByLabel('Bring a GeoJSON or GPX file').setInputFiles({
    name: 'lawn.geojson',
    mimeType: 'application/geo+json',
    buffer: Buffer.from('{"type":"Nonsense"'),
  });
  await expect(page.locator('.file p').first()).toHaveText(/\p{L}{3}/u);
  await expect(page.locator('.file')).not.toContainText('⟦');
  await expect(page.getByRole('textbox', { name: 'About how wide' })).toHaveValue('11');
});

test('walked round with the device’s position', async ({ page, app, context }) => {
  const [first, ...rest] = walkRound();
  await context.grantPermissions(['geolocation']);
  await context.setGeolocation({ latitude: first!.lat, longitude: first!.lon, accuracy: 1 });
  await show(page, app, `#/lawn/${crypto.randomUUID()}`);
  await page.locator('label', { hasText: 'Walk round it' }).tap();
  await page.getByRole('button', { name: 'Start walking round' }).tap();
  await expect(page.getByText('One fix')).toBeVisible();
  await expect(page.getByText(/This one is good to 1\sm/)).toBeVisible();
  for (const { lat, lon } of rest) {
    await context.setGeolocation({ latitude: lat, longitude: lon, accuracy: 1 });
    await page.waitForTimeout(30);
  }
  // While it runs, the act in reach of the thumb ends the walk.
  await expect(page.getByRole('button', { name: 'Keep this lawn' })).toHaveCount(0);
  await page.locator('footer').getByRole('button', { name: 'Stop: I am round' }).tap();
  await expect(page.getByText(/fixes used/)).toBeVisible();
  expect(await shownArea(page)).toBeGreaterThan(340);
  // What was walked is kept through a reload, like everything typed.
  await page.waitForTimeout(400);
  await page.reload();
  await page.locator('main[data-ready="true"]').waitFor();
  await expect(page.getByText(/fixes used/)).toBeVisible();
  await page.getByRole('button', { name: 'Go on with this round' }).tap();
  await expect(page.getByText(new RegExp(`^${walkRound().length + 1}\\sfixes$`))).toBeVisible();
});

test('without leave to see the position it says so, and nothing hangs', async ({ page, app }) => {
  await show(page, app, `#/lawn/${crypto.randomUUID()}`);
  await page.locator('label', { hasText: 'Walk round it' }).tap();
  await page.getByRole('button', { name: 'Start walking round' }).tap();
  await expect(page.getByRole('alert').first()).toHaveText(/\p{L}{3}/u);
  await expect(page.getByRole('button', { name: 'Start walking round' })).toBeVisible();
});

test('a rectangle is drawn, a corner dragged by touch with its lengths live, and undone', async ({ page, app }) => {
  await show(page, app, `#/lawn/${crypto.randomUUID()}`);
  await page.locator('label', { hasText: 'Draw it, or a file' }).tap();
  await page.getByRole('textbox', { name: 'About how wide' }).fill('12');
  await page.getByRole('textbox', { name: 'About how long' }).fill('10');
  await page.getByRole('button', { name: 'Draw this rectangle' }).tap();
  const corner = page.getByRole('button', { name: 'Corner C' });
  const lengths = page.locator('.lengths');
  await expect(corner).toBeVisible();
  await dragByTouch(page, corner, { x: -60, y: 40 }, async () => {
    await expect(lengths).toContainText(/B to C/);
    await expect(lengths).toContainText(/C to D/);
    await expect(lengths).not.toContainText('12.00');
  });
  await tapUntil(page.getByRole('button', { name: 'Undo (1)' }), page.getByRole('button', { name: 'Nothing to undo' }));
  await expect(page.getByText(/120\.0\sm²/).first()).toBeVisible();

  // Snapped, a small pull comes back to square; the arrow keys move it where a finger cannot.
  await page.getByText('Snap to square').tap();
  await dragByTouch(page, corner, { x: 5, y: -5 });
  await expect(page.getByText(/12\d\.\d\sm²|120\.0\sm²/).first()).toBeVisible();
  await page.getByText('Snap to square').tap();
  await corner.focus();
  await page.keyboard.press('Shift+ArrowRight');
  await expect(page.getByRole('button', { name: /Undo \(\d\)/ })).toBeVisible();

  await page.getByRole('button', { name: 'Add a corner' }).tap();
  await page.getByRole('button', { name: 'Add a corner on the side A to B' }).tap();
  await expect(page.getByRole('button', { name: 'Corner E' })).toBeVisible();
  await page.getByRole('button', { name: 'Remove corner' }).tap();
  await expect(page.getByRole('button', { name: 'Corner E' })).toHaveCount(0);
  await page.getByRole('button', { name: 'Done' }).tap();
  await expect(page.getByRole('button', { name: 'Drag the 4 corners' })).toBeVisible();
});

test('a lawn is typed in paces', async ({ page, app }) => {
  await show(page, app, `#/lawn/${crypto.randomUUID()}`);
  await page.locator('label', { hasText: 'Paces' }).tap();
  await page.getByRole('textbox', { name: 'One pace' }).fill('0.8');
  const width = page.getByRole('combobox', { name: /Unit.*Width/ });
  await expect(width).toHaveValue('steps');
  await page.getByRole('textbox', { name: 'Width, along the front' }).fill('25');
  await page.getByRole('textbox', { name: /^Length/ }).fill('20');
  // 25 × 0.8 m by 20 × 0.8 m: 20 m by 16 m.
  await expect(page.locator('.area')).toHaveText(/320(\.0)?\sm²/);
});

test('a lawn that does not stand stays drawn, pale, and what is wrong is said and shown', async ({ page, app }) => {
  const id = await keepLawn(
    app,
    lawnOf('Refused lawn', [part({ width: { text: '12', unit: 'm' }, length: { text: '10', unit: 'm' } })]),
  );
  await show(page, app, `#/lawn/${id}`);
  await expect(page.locator('[data-stale="false"] .drawing svg')).toBeVisible();
  await page.getByRole('button', { name: 'Take out a bed or pond' }).tap();
  await expect(page.locator('[data-stale="true"] .drawing svg')).toBeVisible();
  await page.getByRole('button', { name: 'Show me' }).tap();
  await expect(page.locator('[aria-invalid="true"]').first()).toBeFocused();
  await page.getByRole('button', { name: 'Remove 2' }).tap();
  await expect(page.locator('.area')).toHaveText(/120\.0\sm²/);

  await page.getByRole('combobox', { name: 'What lies beyond: Back' }).selectOption('hedge');
  await page.getByRole('textbox', { name: 'Margin kept dry: Back' }).fill('50');
  const said = page.locator('.left [data-problem]');
  await expect(said).toHaveText(/Nothing is left/);
  await page.getByRole('button', { name: 'Keep this lawn' }).tap();
  await expect(said).toBeFocused();
  await expect(said).toBeInViewport();
});

test('an outline dragged over itself keeps its corners', async ({ page, app }) => {
  const id = await keepLawn(app, bentLawn('Six-cornered lawn'));
  await show(page, app, `#/lawn/${id}`);
  await page.getByRole('button', { name: 'Drag the 6 corners' }).tap();
  const corner = page.getByRole('button', { name: 'Corner B' });
  await dragByTouch(page, corner, { x: -150, y: -240 });
  await expect(page.getByText(/crosses itself/)).toBeVisible();
  await expect(corner).toBeVisible();
});

test('a margin to open water is drawn, on any piece’s side', async ({ page, app }) => {
  const id = await keepLawn(
    app,
    lawnOf('Margin lawn', [part({ width: { text: '12', unit: 'm' }, length: { text: '10', unit: 'm' } })]),
  );
  await show(page, app, `#/lawn/${id}`);
  await page.getByRole('combobox', { name: 'What lies beyond: Back' }).selectOption('open_water');
  await page.getByRole('textbox', { name: 'Margin kept dry: Back' }).fill('2');
  await expect(page.locator('path.dry.margin')).toBeVisible();
  await expect(page.locator('path.beside.open_water')).toBeVisible();
  // 12 m by 10 m less 12 m by 2 m.
  await expect(page.locator('.area')).toHaveText(/96\.0\sm²/);
});

test('the way in and the tap are touched on the drawing, and kept', async ({ page, app }) => {
  const id = await keepLawn(app, bentLawn('Six-cornered lawn'));
  await show(page, app, `#/lawn/${id}`);
  await page.getByRole('button', { name: 'Mark them on the drawing' }).tap();
  const before = await page.getByRole('button', { name: 'Way in' }).boundingBox();
  await dragByTouch(page, page.getByRole('button', { name: 'Way in' }), { x: 60, y: -30 });
  const after = await page.getByRole('button', { name: 'Way in' }).boundingBox();
  expect(after!.x - before!.x).toBeGreaterThan(40);
  const keep = page.getByRole('button', { name: 'Keep this lawn' });
  await tapUntil(page.getByRole('button', { name: 'Done' }), keep);
  await keep.tap();
  await expect(page.getByRole('heading', { name: 'Six-cornered lawn' })).toBeVisible();
  const kept = await app.ask({ ask: 'lawn', lawn_id: id });
  expect(kept.answer === 'lawn' ? kept.value.input.entry?.[0] : 0).toBeGreaterThan(2);
});

test('a lawn is given out as GeoJSON and brought in again', async ({ page, app }) => {
  const id = await keepLawn(
    app,
    lawnOf('Given lawn', [bracedPart()], { origin: [52, 1], away_bearing: { text: '0', unit: 'deg' } }),
  );
  await show(page, app, `#/lawn/${id}`);
  await page.getByRole('button', { name: 'Make the file' }).tap();
  const download = page.waitForEvent('download');
  await page.getByRole('link', { name: /^Save / }).tap();
  const path = await (await download).path();
  await show(page, app, `#/lawn/${crypto.randomUUID()}`);
  await page.locator('label', { hasText: 'Draw it, or a file' }).tap();
  await page.getByLabel('Bring a GeoJSON or GPX file').setInputFiles(path);
  await expect(page.getByRole('button', { name: 'Drag the 5 corners' })).toBeVisible();
  await expect(page.locator('.area')).toHaveText(/149\.0\sm²/);
});

test('one answer stands for all sides of a walked lawn, and one side may differ', async ({ page, app }) => {
  await show(page, app, '#/lawn/01900000-0000-7000-8000-000000000206');
  await page.getByRole('combobox', { name: /^Beyond all \d+ sides$/ }).selectOption('hedge');
  await page.getByRole('textbox', { name: 'Margin kept dry along all of them' }).fill('0.5');
  await page.getByRole('button', { name: /^Keep it along all/ }).tap();
  await page.locator('summary', { hasText: 'One side after the other' }).tap();
  const single = page.getByRole('combobox', { name: /^What lies beyond/ });
  for (const one of await single.all()) await expect(one).toHaveValue('hedge');
  for (const one of await page.getByRole('textbox', { name: /^Margin kept dry:/ }).all())
    await expect(one).toHaveValue('0.5');
  await single.first().selectOption('open_water');
  await expect(page.getByRole('combobox', { name: /^Beyond all/ })).toHaveValue('');
  await expect(single.nth(1)).toHaveValue('hedge');
});
