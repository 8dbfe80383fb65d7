// Invented lawns measured in every way, as forms that a test may save; and a finger that drags.
import { expect, type Locator, type Page } from '@playwright/test';
import type { LawnInput } from '../src/lib/generated/LawnInput';
import type { PartInput } from '../src/lib/generated/PartInput';
import type { App } from './app';

const m = (text: string) => ({ text, unit: 'm' });
const metres = (value: number) => m(value.toFixed(2));

const NO_PART: PartInput = {
  way: 'shape',
  shape: 'rectangle',
  taken_out: null,
  width: m(''),
  length: m(''),
  a: m(''),
  b: m(''),
  c: m(''),
  diameter: m(''),
  radius: m(''),
  angle: { text: '', unit: 'deg' },
  at_x: m(''),
  at_y: m(''),
  braces: { n_corners: 0, lines: [] },
  offsets: [],
  walked: { rounds: [], from: '' },
  corners: [],
  corners_from: '',
  corners_sd_m2: null,
};

export const part = (change: Partial<PartInput>): PartInput => ({ ...NO_PART, ...change });

export const lawnOf = (name: string, parts: PartInput[], change: Partial<LawnInput> = {}): LawnInput => ({
  client_id: null,
  name,
  parts,
  sides: [],
  doubt: { text: '', unit: 'percent' },
  instrument: 'tape',
  pace_length: m(''),
  slope: { by: '', gradient: { text: '', unit: 'percent' }, ground: m(''), rise: m(''), uphill: '' },
  origin: null,
  away_bearing: { text: '', unit: 'deg' },
  entry: null,
  tap: null,
  ...change,
});

/** Five corners whose coordinates are whole metres: by the surveyor's formula they hold exactly 149 m². */
const PENTAGON: Record<string, [number, number]> = { A: [0, 0], B: [12, 0], C: [14, 8], D: [6, 13], E: [-2, 7] };

/** The sides of the pentagon, and all its diagonals as braces. */
export const PENTAGON_LINES = ['AB', 'BC', 'CD', 'DE', 'EA', 'AC', 'AD', 'BD', 'BE', 'CE'].map((pair) => {
  const [from, to] = [pair[0] ?? '', pair[1] ?? ''];
  const one = PENTAGON[from] ?? [0, 0];
  const other = PENTAGON[to] ?? [0, 0];
  return { from, to, length: metres(Math.hypot(other[0] - one[0], other[1] - one[1])) };
});

export const bracedPart = (misread: string | null = null): PartInput =>
  part({
    way: 'braces',
    braces: {
      n_corners: 5,
      lines: PENTAGON_LINES.map((line) =>
        line.from + line.to === misread ? { ...line, length: metres(Number(line.length.text) + 1) } : line,
      ),
    },
  });

export const baselinePart = (): PartInput =>
  part({
    way: 'offsets',
    offsets: [
      ['0', '2', '2'],
      ['5', '3', '3'],
      ['10', '2', '2'],
    ].map(([chainage = '', left = '', right = '']) => ({
      chainage: m(chainage),
      left: m(left),
      right: m(right),
    })),
  });

/** A bent lawn drawn by hand, with a tree ring in it. */
export const bentLawn = (name: string): LawnInput =>
  lawnOf(
    name,
    [
      part({
        way: 'corners',
        corners_from: 'drawn',
        corners: [
          [0, 0],
          [18, 0],
          [21, 9],
          [12, 11],
          [10, 20],
          [-2, 18],
        ],
      }),
      part({ shape: 'circle', taken_out: 'tree_ring', diameter: m('2.4'), at_x: m('4'), at_y: m('6') }),
    ],
    {
      away_bearing: { text: '30', unit: 'deg' },
      entry: [1, 0],
      tap: [18, 1],
      sides: ['nothing', 'hedge', 'neighbour', 'paving', 'open_water', 'wall'].map((beside, side_idx) => ({
        part_idx: 0,
        side_idx,
        beside,
        margin: m(beside === 'open_water' ? '2' : ''),
      })),
    },
  );

/** A walk round a rectangle, a fix a metre, about an invented place at 52 degrees north. */
export function walkRound(acrossM = 24, deepM = 16): { lat: number; lon: number }[] {
  const corners: [number, number][] = [
    [0, 0],
    [acrossM, 0],
    [acrossM, deepM],
    [0, deepM],
    [0, 0],
  ];
  const along = corners.slice(1).flatMap(([x, y], idx) => {
    const [fromX, fromY] = corners[idx] ?? [0, 0];
    const nSteps = Math.hypot(x - fromX, y - fromY);
    return Array.from({ length: nSteps }, (_, step): [number, number] => [
      fromX + ((x - fromX) * step) / nSteps,
      fromY + ((y - fromY) * step) / nSteps,
    ]);
  });
  // Metres to degrees at 52 degrees north on WGS 84: 111 267 m and 68 678 m to the degree.
  return along.map(([x, y]) => ({ lat: 52 + y / 111_267, lon: 1 + x / 68_678 }));
}

/** The track of a walk round: a file tells no accuracy, so that a small lawn comes out too unsure. */
export const gpx = (acrossM = 60, deepM = 40): string =>
  `<?xml version="1.0"?><gpx version="1.1" creator="invented" xmlns="http://www.topografix.com/GPX/1/1"><trk><trkseg>${walkRound(
    acrossM,
    deepM,
  )
    .map(({ lat, lon }) => `<trkpt lat="${lat}" lon="${lon}"/>`)
    .join('')}</trkseg></trk></gpx>`;

/** Keeps a lawn and answers with its id. */
export async function keepLawn(app: App, input: LawnInput): Promise<string> {
  const lawn_id = crypto.randomUUID();
  await app.ask({ ask: 'save_lawn', lawn_id, input, draft_key: null });
  return lawn_id;
}

/** Taps until what comes of it shows: a touch that meets the end of a drag does nothing, and a person taps again. */
export async function tapUntil(button: Locator, sign: Locator): Promise<void> {
  await expect(async () => {
    if (!(await sign.isVisible())) await button.tap({ timeout: 2_000 });
    await expect(sign).toBeVisible({ timeout: 2_000 });
  }).toPass({ timeout: 20_000 });
}

/** A finger takes hold of something and drags it; `midway` looks while it is held. */
export async function dragByTouch(
  page: Page,
  what: Locator,
  byPx: { x: number; y: number },
  midway: () => Promise<void> = () => Promise.resolve(),
): Promise<void> {
  const box = await what.boundingBox();
  if (box === null) throw new Error('nothing to take hold of');
  const from = { x: box.x + box.width / 2, y: box.y + box.height / 2 };
  const finger = await page.context().newCDPSession(page);
  const touch = (type: 'touchStart' | 'touchMove' | 'touchEnd', share: number) =>
    finger.send('Input.dispatchTouchEvent', {
      type,
      touchPoints: type === 'touchEnd' ? [] : [{ x: from.x + byPx.x * share, y: from.y + byPx.y * share }],
    });
  await touch('touchStart', 0);
  for (let step = 1; step <= 10; step += 1) await touch('touchMove', step / 10);
  await midway();
  await touch('touchEnd', 1);
}
