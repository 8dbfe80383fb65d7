// Lists of a lawn's form kept in order while corners, lines and sides come and go. Letters, places in lists and what was
// typed are all that is handled here: no length, area or angle is ever worked out.
import type { PointM } from './drawing';
import { emptyLawn, emptyPart, figure, LENGTHS, PACED_LENGTHS } from './forms';
import type { BracesInput } from './generated/BracesInput';
import type { LawnInput } from './generated/LawnInput';
import type { LineInput } from './generated/LineInput';
import type { PartInput } from './generated/PartInput';
import type { PartView } from './generated/PartView';
import type { SideInput } from './generated/SideInput';
import type { Typed } from './generated/Typed';

/** Fewest and most corners that a thumb is offered for sides and braces. */
export const LEAST_CORNERS = 3;
export const MOST_CORNERS = 26;

/** The letter of a corner: A for the first. */
export const cornerName = (idx: number): string => String.fromCharCode(65 + (idx % 26));

/** The letters of so many corners. */
export const cornerNames = (nCorners: number): string[] =>
  Array.from({ length: nCorners }, (_, idx) => cornerName(idx));

const joins = (line: LineInput, from: string, to: string): boolean =>
  (line.from === from && line.to === to) || (line.from === to && line.to === from);

/** Whether a line is a side of a ring of so many corners, and not a brace. */
export function isSide(line: LineInput, nCorners: number): boolean {
  const names = cornerNames(nCorners);
  return names.some((name, idx) => joins(line, name, names[(idx + 1) % nCorners] ?? name));
}

/** The lines of so many corners: every side in order, then the braces that still join two of them. */
export function linesFor(nCorners: number, known: LineInput[], unit = 'm'): LineInput[] {
  const names = cornerNames(nCorners);
  const sides = names.map((from, idx) => {
    const to = names[(idx + 1) % nCorners] ?? from;
    return known.find((line) => joins(line, from, to)) ?? { from, to, length: figure(unit) };
  });
  const braces = known.filter(
    (line) => names.includes(line.from) && names.includes(line.to) && !isSide(line, nCorners),
  );
  return [...sides, ...braces];
}

/** The same lines for another number of corners. A side that was never measured does not become a brace. */
export const withCorners = (braces: BracesInput, nCorners: number, unit = 'm'): BracesInput => ({
  n_corners: nCorners,
  lines: linesFor(
    nCorners,
    braces.lines.filter((line) => line.length.text !== '' || !isSide(line, braces.n_corners)),
    unit,
  ),
});

/** The units in which the lengths of a lawn's pieces are typed, the likeliest first. */
export const lengthsOf = (instrument: string): string[] => (instrument === 'paces' ? PACED_LENGTHS : LENGTHS);

/** A piece whose empty lengths wait for what is in the hand: paces or metres. What was typed keeps its unit. */
export function measuredWith(part: PartInput, instrument: string): PartInput {
  // A rectangle to begin drawing with is no measured one.
  const unit = lengthsOf(part.way === 'corners' ? '' : instrument)[0] ?? 'm';
  // Nothing is nothing in every unit.
  const isFree = (one: Typed): boolean => one.text === '' || one.text === '0';
  const waiting = (one: Typed): Typed =>
    isFree(one) && (one.unit === 'steps') !== (unit === 'steps') ? { ...one, unit } : one;
  const { width, length, a, b, c, diameter, radius } = part;
  const shape = { width, length, a, b, c, diameter, radius };
  // The places of a baseline have one unit for all of them.
  const areFree = part.offsets.every((row) => [row.chainage, row.left, row.right].every(isFree));
  return {
    ...part,
    ...(Object.fromEntries(Object.entries(shape).map(([name, one]) => [name, waiting(one)])) as typeof shape),
    braces: { ...part.braces, lines: part.braces.lines.map((line) => ({ ...line, length: waiting(line.length) })) },
    offsets: areFree
      ? part.offsets.map((row) => ({
          chainage: waiting(row.chainage),
          left: waiting(row.left),
          right: waiting(row.right),
        }))
      : part.offsets,
  };
}

/** The taped lines of a piece between the places of its corners: braces, and whichever line is likely misread. */
export const linesOf = (part: PartView): { from: PointM; to: PointM; isBlunder: boolean }[] =>
  part.lines.flatMap((line) => {
    const from = part.corners[part.corner_names.indexOf(line.from)];
    const to = part.corners[part.corner_names.indexOf(line.to)];
    const isBrace = !isSide({ ...line, length: figure('m') }, part.corners.length);
    return from && to && (isBrace || line.is_likely_blunder) ? [{ from, to, isBlunder: line.is_likely_blunder }] : [];
  });

/** Something was said about a side. */
export const isSpokenOf = (side: SideInput): boolean => side.beside !== 'unknown' || side.margin.text !== '';

const isOf = (side: SideInput, partIdx: number, sideIdx: number): boolean =>
  side.part_idx === partIdx && side.side_idx === sideIdx;

/**
 * A line for each side on the lawn's edge; a side nobody has spoken of is unknown, which is never taken for nothing. What
 * was said of a part whose figures do not make a shape just now is kept; a side that its shape does not have is dropped.
 */
export function everySide(known: SideInput[], parts: PartView[]): SideInput[] {
  const kept = known.filter((side) => {
    const sides = parts[side.part_idx]?.sides ?? [];
    return side.part_idx < parts.length && (sides.length === 0 || sides.some((one) => one.side_idx === side.side_idx));
  });
  const added = parts.flatMap((part, partIdx) =>
    part.sides
      .filter((side) => side.is_outer && !kept.some((one) => isOf(one, partIdx, side.side_idx)))
      .map((side) => ({ part_idx: partIdx, side_idx: side.side_idx, beside: 'unknown', margin: figure('m') })),
  );
  return [...kept, ...added];
}

/** What was said of the sides once a part was taken away. */
export const sidesWithoutPart = (sides: SideInput[], gone: number): SideInput[] =>
  sides
    .filter((side) => side.part_idx !== gone)
    .map((side) => (side.part_idx > gone ? { ...side, part_idx: side.part_idx - 1 } : side));

/**
 * What was said of the sides once a part has another ring and so many parts came in behind it: an answer for a side of the
 * old ring must not lie on some side of the new one.
 */
export const sidesWithNewRing = (sides: SideInput[], partIdx: number, nMore = 0): SideInput[] =>
  sides
    .filter((side) => side.part_idx !== partIdx)
    .map((side) => (side.part_idx > partIdx ? { ...side, part_idx: side.part_idx + nMore } : side));

/**
 * What was said of the sides of a part of named corners once there are more or fewer: every side between the same two
 * letters keeps it, and those at the end of the round are asked again.
 */
export const sidesForCorners = (sides: SideInput[], partIdx: number, before: number, after: number): SideInput[] =>
  before === after
    ? sides
    : sides.filter((side) => side.part_idx !== partIdx || side.side_idx < Math.min(before, after) - 1);

/** What was said of the sides of parts by offsets, asked again where a station more or fewer gave them another ring. */
export function sidesOfOffsets(
  sides: SideInput[],
  parts: PartInput[],
  nBefore: ReadonlyMap<number, number>,
  nNow: ReadonlyMap<number, number>,
): SideInput[] {
  return sides.filter(({ part_idx }) => {
    const [before, now] = [nBefore.get(part_idx), nNow.get(part_idx)];
    return parts[part_idx]?.way !== 'offsets' || before === undefined || now === undefined || before === now;
  });
}

/** A lawn with one more corner on a side of a part that was drawn; both halves of the side lie beside the same. */
export function withCornerOn(lawn: LawnInput, partIdx: number, sideIdx: number, at: PointM): LawnInput {
  const changed = structuredClone(lawn);
  changed.parts[partIdx]?.corners.splice(sideIdx + 1, 0, at);
  changed.sides = changed.sides.flatMap((side) => {
    if (side.part_idx !== partIdx || side.side_idx < sideIdx) return [side];
    const next = { ...structuredClone(side), side_idx: side.side_idx + 1 };
    return side.side_idx === sideIdx ? [side, next] : [next];
  });
  return changed;
}

/**
 * A lawn with one corner fewer: the two sides that met there are one edge now, which keeps what was said when it was the
 * same of both, and is asked again when it was not.
 */
export function withoutCorner(lawn: LawnInput, partIdx: number, cornerIdx: number): LawnInput {
  const changed = structuredClone(lawn);
  const nCorners = changed.parts[partIdx]?.corners.length ?? 0;
  changed.parts[partIdx]?.corners.splice(cornerIdx, 1);
  const gone = (cornerIdx + nCorners - 1) % nCorners;
  const saidOf = (sideIdx: number): string => {
    const side = changed.sides.find((one) => isOf(one, partIdx, sideIdx));
    return side === undefined ? 'unknown' : JSON.stringify([side.beside, side.margin]);
  };
  const isSame = saidOf(gone) === saidOf(cornerIdx);
  const placeOf = (sideIdx: number): number =>
    cornerIdx === 0 && sideIdx === 0 ? nCorners - 2 : sideIdx >= cornerIdx ? sideIdx - 1 : sideIdx;
  changed.sides = changed.sides
    .filter((side) => !isOf(side, partIdx, gone) && (isSame || !isOf(side, partIdx, cornerIdx)))
    .map((side) => (side.part_idx === partIdx ? { ...side, side_idx: placeOf(side.side_idx) } : side));
  return changed;
}

/** A form written by an older version, with what it lacks left empty. */
export const wholeLawn = (lawn: Partial<LawnInput>): LawnInput => {
  const whole = { ...emptyLawn(), ...lawn };
  return {
    ...whole,
    parts: whole.parts.map((part: Partial<PartInput>) => ({ ...emptyPart(null), ...part })),
    sides: whole.sides.map((side) => ({ ...side, part_idx: side.part_idx ?? 0 })),
  };
};
