// Scales and turns a lawn drawing for the screen: metres to pixels, the front edge at the bottom. Every length and
// place on it was worked out by the trade; nothing here measures anything.
import type { Drawing } from './generated/Drawing';
/** A point: x and y in metres. */
export type PointM = [number, number];

export interface Fit {
  /** Pixels for a metre. */
  scale: number;
  /** A point in pixels. */
  at: (point: PointM) => [number, number];
  /** The point in metres that a finger means. */
  from: (px: [number, number]) => PointM;
}

/** Fits bounds in metres into a box in pixels, with room around. */
export function fit(
  bounds: [number, number, number, number],
  widthPx: number,
  heightPx: number,
  roomPx: number,
  roomAbovePx = roomPx,
): Fit {
  const [minX, minY, maxX, maxY] = bounds;
  const acrossM = Math.max(maxX - minX, Number.EPSILON);
  const deepM = Math.max(maxY - minY, Number.EPSILON);
  const scale = Math.max(0, Math.min((widthPx - 2 * roomPx) / acrossM, (heightPx - roomPx - roomAbovePx) / deepM));
  const left = (widthPx - acrossM * scale) / 2;
  const top = roomAbovePx + (heightPx - roomPx - roomAbovePx - deepM * scale) / 2;
  return {
    scale,
    at: ([x, y]) => [left + (x - minX) * scale, top + (maxY - y) * scale],
    from: ([x, y]) => (scale > 0 ? [(x - left) / scale + minX, maxY - (y - top) / scale] : [minX, minY]),
  };
}

const round = (value: number): number => Math.round(value * 10) / 10;

/** Closed rings as one path. */
export function ringsPath(rings: PointM[][], to: Fit): string {
  return rings.map((ring) => `M${ring.map((point) => to.at(point).map(round).join(' ')).join('L')}Z`).join('');
}

/** A straight line as a path. */
export function linePath(from: PointM, to: PointM, by: Fit): string {
  return `M${by.at(from).map(round).join(' ')}L${by.at(to).map(round).join(' ')}`;
}

/** The kinds of pattern that tell one tankful from another; further tankfuls begin again. */
export const N_FILL_PATTERNS = 6;

/** Which pattern a tankful wears. */
export const fillPattern = (fill: number): number => (Math.max(1, Math.round(fill)) - 1) % N_FILL_PATTERNS;

/** How many pixels wide a strip is drawn, square to the way it is walked: for how thick its line may be. */
export function stripWidthPx(rings: PointM[][], line: [PointM, PointM] | undefined, by: Fit): number {
  const points = rings.flat().map(by.at);
  if (points.length === 0 || line === undefined) return 0;
  const [[x1, y1], [x2, y2]] = [by.at(line[0]), by.at(line[1])];
  const lengthPx = Math.hypot(x2 - x1, y2 - y1);
  if (lengthPx === 0) return 0;
  const across = points.map(([x, y]) => ((x - x1) * (y2 - y1) - (y - y1) * (x2 - x1)) / lengthPx);
  return Math.max(...across) - Math.min(...across);
}

/** Moves a word so that all of it stands in the drawing. */
export function keepIn(xPx: number, textPx: number, widthPx: number): number {
  return Math.max(textPx / 2 + 2, Math.min(xPx, widthPx - textPx / 2 - 2));
}

/** The longest of 1, 2, 5, 10, … metres that takes no more than this many pixels. */
export function scaleBarM(scale: number, mostPx: number): number {
  if (!(scale > 0)) return 0;
  const most = mostPx / scale;
  const power = 10 ** Math.floor(Math.log10(most));
  return [5, 2, 1].map((step) => step * power).find((length) => length <= most) ?? power;
}

/** Where a side's words stand: beside its middle, turned along it, never upside down. */
export interface SidePlace {
  x: number;
  y: number;
  turnDeg: number;
  lengthPx: number;
}

/** Whether a point in pixels lies on the lawn, by the rings it is drawn with. */
export function isOnLawn([x, y]: [number, number], rings: PointM[][], by: Fit): boolean {
  let isInside = false;
  for (const ring of rings) {
    const points = ring.map(by.at);
    points.forEach(([x1, y1], idx) => {
      const [x2, y2] = points[(idx + 1) % points.length] ?? [x1, y1];
      if (y1 > y !== y2 > y && x < ((x2 - x1) * (y - y1)) / (y2 - y1) + x1) isInside = !isInside;
    });
  }
  return isInside;
}

interface Line {
  start: [number, number];
  lengthPx: number;
  along: [number, number];
  /** Square to it, away from the grass. */
  away: [number, number];
}

/** A side in pixels, and which way is off the lawn. */
function outwards(from: PointM, to: PointM, rings: PointM[][], by: Fit): Line {
  const start = by.at(from);
  const [x2, y2] = by.at(to);
  const lengthPx = Math.hypot(x2 - start[0], y2 - start[1]);
  const along: [number, number] = lengthPx > 0 ? [(x2 - start[0]) / lengthPx, (y2 - start[1]) / lengthPx] : [1, 0];
  const away: [number, number] = [-along[1], along[0]];
  const beside: [number, number] = [(start[0] + x2) / 2 + away[0] * 2, (start[1] + y2) / 2 + away[1] * 2];
  return { start, lengthPx, along, away: isOnLawn(beside, rings, by) ? [-away[0], -away[1]] : away };
}

/** Places the words of a side off the lawn. */
export function sidePlace(from: PointM, to: PointM, rings: PointM[][], by: Fit, awayPx: number): SidePlace {
  const { start, lengthPx, along, away } = outwards(from, to, rings, by);
  let turnDeg = (Math.atan2(along[1], along[0]) * 180) / Math.PI;
  if (turnDeg > 90.01) turnDeg -= 180;
  if (turnDeg < -89.99) turnDeg += 180;
  return {
    x: start[0] + (along[0] * lengthPx) / 2 + away[0] * awayPx,
    y: start[1] + (along[1] * lengthPx) / 2 + away[1] * awayPx,
    turnDeg,
    lengthPx,
  };
}

/** The mark drawn along a side for what lies beyond it: a path in pixels, beside the line and on its outer side. */
export function besideMark(beside: string, from: PointM, to: PointM, rings: PointM[][], by: Fit): string {
  const { start, lengthPx, along, away } = outwards(from, to, rings, by);
  if (lengthPx === 0) return '';
  const [x1, y1] = start;
  const point = (s: number, out: number): string =>
    `${round(x1 + along[0] * s + away[0] * out)} ${round(y1 + along[1] * s + away[1] * out)}`;
  const nSteps = (stepPx: number): number => Math.max(1, Math.round(lengthPx / stepPx));
  const steps = (stepPx: number): [number, number][] => {
    const n = nSteps(stepPx);
    return Array.from({ length: n }, (_, idx) => [(idx * lengthPx) / n, ((idx + 1) * lengthPx) / n]);
  };
  switch (beside) {
    case 'hedge':
      return `M${point(0, 3)}${steps(10)
        .map(([a, b]) => `Q${point((a + b) / 2, 13)} ${point(b, 3)}`)
        .join('')}`;
    case 'open_water':
      return [4, 9]
        .map(
          (out) =>
            `M${point(0, out)}${steps(14)
              .map(
                ([a, b]) =>
                  `Q${point(a + (b - a) / 4, out + 4)} ${point((a + b) / 2, out)}Q${point(b - (b - a) / 4, out - 4)} ${point(b, out)}`,
              )
              .join('')}`,
        )
        .join('');
    case 'neighbour':
      return steps(16)
        .map(
          ([a, b]) =>
            `M${point(a, 5)}L${point(a + (b - a) * 0.55, 5)}M${point(a + (b - a) * 0.75, 5)}L${point(a + (b - a) * 0.8, 5)}`,
        )
        .join('');
    case 'food_plants':
      return steps(16)
        .map(
          ([a, b]) =>
            `M${point((a + b) / 2, 3)}L${point((a + b) / 2 - 4, 10)}M${point((a + b) / 2, 3)}L${point((a + b) / 2 + 4, 10)}`,
        )
        .join('');
    case 'paving':
      return `M${point(0, 9)}L${point(lengthPx, 9)}${steps(14)
        .map(([a]) => `M${point(a, 2)}L${point(a, 9)}`)
        .join('')}`;
    case 'wall':
      return `M${point(0, 4)}L${point(lengthPx, 4)}M${point(0, 8)}L${point(lengthPx, 8)}`;
    case 'drain':
      return steps(12)
        .map(([a, b]) => `M${point(a + 2, 4)}L${point(b - 2, 4)}L${point(b - 2, 9)}L${point(a + 2, 9)}Z`)
        .join('');
    default:
      return '';
  }
}

/** Corners by themselves, where nothing else can be drawn: an outline that crosses itself is taken hold of on it. */
export function bareDrawing(corners: PointM[]): Drawing {
  const xs = corners.map(([x]) => x);
  const ys = corners.map(([, y]) => y);
  return {
    bounds: [Math.min(...xs), Math.min(...ys), Math.max(...xs), Math.max(...ys)],
    outline: [corners],
    dry: [],
    sides: [],
    strips: [],
    markers: [],
    start: null,
    missed: [],
    overshot: [],
    entry: null,
    tap: null,
    refills: [],
    corners: [],
    away_bearing_deg: null,
  };
}
