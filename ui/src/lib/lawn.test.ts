// Corners, lines and sides in their lists, and a drag that asks the trade: nothing typed is lost or said of the wrong side.
import { describe, expect, it } from 'vitest';
import { emptyLawn, emptyPart, figure } from './forms';
import type { LawnInput } from './generated/LawnInput';
import type { PartView } from './generated/PartView';
import {
  cornerNames,
  everySide,
  isSide,
  linesFor,
  measuredWith,
  sidesForCorners,
  sidesOfOffsets,
  sidesWithNewRing,
  sidesWithoutPart,
  wholeLawn,
  withCornerOn,
  withCorners,
  withoutCorner,
} from './lawn';
import { Moving } from './moving';

const line = (from: string, to: string, text = '') => ({ from, to, length: { text, unit: 'm' } });
const side = (side_idx: number, beside = 'unknown', part_idx = 0) => ({
  part_idx,
  side_idx,
  beside,
  margin: figure('m'),
});
const named = (n: number, outer = (_idx: number) => true) => ({
  sides: Array.from({ length: n }, (_, idx) => ({
    side_idx: idx,
    name: { code: 'x', args: {} },
    length: { value: 1, unit: 'm', decimals: 1 },
    is_outer: outer(idx),
  })),
});

describe('sides and braces', () => {
  it('lists every side in order, then the braces', () => {
    const lines = linesFor(4, [line('C', 'A', '9'), line('B', 'A', '3')]);
    expect(lines.map(({ from, to }) => from + to)).toEqual(['BA', 'BC', 'CD', 'DA', 'CA']);
    expect(lines[0]?.length.text).toBe('3');
    expect(lines.map((one) => isSide(one, 4))).toEqual([true, true, true, true, false]);
  });

  it('drops the braces of a corner that is gone, and keeps what still joins two', () => {
    const lines = linesFor(4, [line('A', 'D', '5'), line('B', 'D', '7'), line('A', 'C', '6'), line('C', 'E', '2')]);
    expect(lines.map(({ from, to }) => from + to)).toEqual(['AB', 'BC', 'CD', 'AD', 'BD', 'AC']);
    expect(cornerNames(3)).toEqual(['A', 'B', 'C']);
  });
});

describe('another number of corners', () => {
  it('makes no brace of a side that was never measured, and one of a side that was', () => {
    const four = withCorners({ n_corners: 0, lines: [] }, 4);
    expect(withCorners(four, 5).lines.map(({ from, to }) => from + to)).toEqual(['AB', 'BC', 'CD', 'DE', 'EA']);
    const measured = { ...four, lines: four.lines.map((one) => ({ ...one, length: { text: '8', unit: 'm' } })) };
    expect(withCorners(measured, 5).lines.map(({ from, to }) => from + to)).toContain('DA');
  });
});

describe('sides of the lawn', () => {
  it('has a line for each side on the edge, unknown until somebody spoke of it', () => {
    const parts = [named(3, (idx) => idx !== 1), named(1)] as unknown as PartView[];
    const sides = everySide([side(2, 'hedge')], parts);
    expect(sides.map((one) => `${one.part_idx}.${one.side_idx} ${one.beside}`)).toEqual([
      '0.2 hedge',
      '0.0 unknown',
      '1.0 unknown',
    ]);
  });

  it('drops what was said of a side that the shape does not have, and keeps it while there is no shape', () => {
    const known = [side(3, 'hedge')];
    expect(everySide(known, [named(3)] as unknown as PartView[]).some((one) => one.beside === 'hedge')).toBe(false);
    expect(everySide(known, [named(0)] as unknown as PartView[])).toEqual(known);
  });

  it('stays between the same two letters when there are more corners or fewer', () => {
    const spoken = [side(0, 'hedge'), side(2, 'wall'), side(3, 'open_water'), side(3, 'drain', 1)];
    const kept = [side(0, 'hedge'), side(2, 'wall'), side(3, 'drain', 1)];
    expect(sidesForCorners(spoken, 0, 4, 5)).toEqual(kept);
    expect(sidesForCorners(spoken, 0, 4, 4)).toEqual(spoken);
    // D is gone: what lay from C to D lies from C to A now, which is another edge.
    expect(sidesForCorners(spoken, 0, 4, 3)).toEqual([side(0, 'hedge'), side(3, 'drain', 1)]);
  });

  it('is asked again of offsets when a station more or fewer made another ring', () => {
    const parts = [emptyPart(null), { ...emptyPart(null), way: 'offsets' as const }];
    const spoken = [side(1, 'hedge', 0), side(2, 'open_water', 1)];
    const six = new Map([[1, 6]]);
    expect(sidesOfOffsets(spoken, parts, six, new Map([[1, 8]]))).toEqual([side(1, 'hedge', 0)]);
    expect(sidesOfOffsets(spoken, parts, six, six)).toEqual(spoken);
    expect(sidesOfOffsets(spoken, parts, new Map(), six)).toEqual(spoken);
  });

  it('moves with its part when one before it is taken away', () => {
    const spoken = [side(2, 'open_water', 0), side(0, 'hedge', 1), side(1, 'wall', 2)];
    expect(sidesWithNewRing(spoken, 1, 2)).toEqual([side(2, 'open_water', 0), side(1, 'wall', 4)]);
    expect(sidesWithNewRing(spoken, 0)).toEqual([side(0, 'hedge', 1), side(1, 'wall', 2)]);
    expect(sidesWithoutPart([side(0, 'hedge', 0), side(0, 'wall', 1), side(1, 'drain', 2)], 1)).toEqual([
      side(0, 'hedge', 0),
      side(1, 'drain', 1),
    ]);
  });
});

describe('corners by hand', () => {
  const drawn = (): LawnInput => ({
    ...emptyLawn(),
    parts: [
      {
        ...emptyPart(null),
        way: 'corners',
        corners: [
          [0, 0],
          [9, 0],
          [9, 9],
          [0, 9],
        ],
      },
    ],
    sides: ['front', 'right', 'back', 'left'].map((beside, idx) => side(idx, beside)),
  });
  const said = (lawn: LawnInput): string[] =>
    lawn.sides.toSorted((a, b) => a.side_idx - b.side_idx).map((one) => `${one.side_idx} ${one.beside}`);

  it('gives both halves of a side what lies beyond it', () => {
    const lawn = withCornerOn(drawn(), 0, 1, [9, 4]);
    expect(lawn.parts[0]?.corners[2]).toEqual([9, 4]);
    expect(said(lawn)).toEqual(['0 front', '1 right', '2 right', '3 back', '4 left']);
  });

  it('takes away a corner and asks again about the edge that is left there, unless both sides were the same', () => {
    expect(said(withoutCorner(drawn(), 0, 2))).toEqual(['0 front', '2 left']);
    // Without the first corner the second is the first: every side moves up, and the front one comes last.
    expect(said(withoutCorner(drawn(), 0, 0))).toEqual(['0 right', '1 back']);
    expect(said(withoutCorner(drawn(), 0, 3))).toEqual(['0 front', '1 right']);
    // Both sides that met there lie beside the same, and so does the one that is left of them.
    const same = drawn();
    same.sides.forEach((one) => (one.beside = one.side_idx === 2 ? 'wall' : 'open_water'));
    expect(said(withoutCorner(same, 0, 0))).toEqual(['0 open_water', '1 wall', '2 open_water']);
  });

  it('leaves the form it was given alone', () => {
    const lawn = drawn();
    withoutCorner(lawn, 0, 1);
    withCornerOn(lawn, 0, 1, [1, 1]);
    expect(lawn).toEqual(drawn());
  });
});

describe('older forms', () => {
  it('gets what it lacks left empty', () => {
    const { way: _way, braces: _braces, ...oldPart } = emptyPart(null);
    const { part_idx: _part, ...oldSide } = side(2, 'hedge');
    const whole = wholeLawn({ name: 'Old', parts: [oldPart], sides: [oldSide] } as unknown as LawnInput);
    expect(whole.parts[0]?.way).toBe('shape');
    expect(whole.sides[0]).toEqual(side(2, 'hedge'));
    expect(whole.slope.by).toBe('');
  });
});

describe('something dragged', () => {
  it('asks once a frame and ends where the finger ended', async () => {
    const frames: (() => void)[] = [];
    const asked: number[] = [];
    const took: number[] = [];
    const answers: ((value: number) => void)[] = [];
    const moving = new Moving<number, number>(
      (to) => {
        asked.push(to);
        return new Promise((answer) => answers.push(answer));
      },
      (at) => took.push(at),
      () => undefined,
      (go) => frames.push(go),
    );
    moving.to(1);
    moving.to(2);
    frames.shift()?.();
    expect(asked).toEqual([2]);
    moving.to(3);
    moving.to(4);
    expect(frames).toHaveLength(0);
    answers.shift()?.(2);
    await Promise.resolve();
    await Promise.resolve();
    frames.shift()?.();
    expect(asked).toEqual([2, 4]);
    answers.shift()?.(4);
    await Promise.resolve();
    await Promise.resolve();
    expect(took).toEqual([2, 4]);
    expect(moving.isBusy).toBe(false);
  });
});

describe('a lawn that is paced', () => {
  it('lets empty lengths wait for paces, and keeps the unit of what was typed', () => {
    const part = {
      ...emptyPart(null),
      width: { text: '12', unit: 'm' },
      braces: withCorners({ n_corners: 0, lines: [] }, 3),
    };
    const paced = measuredWith(part, 'paces');
    expect([paced.width.unit, paced.length.unit, paced.angle.unit, paced.at_x.unit]).toEqual([
      'm',
      'steps',
      'deg',
      'm',
    ]);
    expect(paced.braces.lines.map((one) => one.length.unit)).toEqual(['steps', 'steps', 'steps']);
    expect(measuredWith(paced, 'tape')).toEqual(part);
  });

  it('changes the one unit of a baseline only while nothing is typed in it', () => {
    const row = (chainage: string, left: string) => ({
      chainage: { text: chainage, unit: 'm' },
      left: { text: left, unit: 'm' },
      right: figure('m'),
    });
    const unitsOf = (rows: ReturnType<typeof row>[]) =>
      measuredWith({ ...emptyPart(null), offsets: rows }, 'paces').offsets.map((one) => [
        one.chainage.unit,
        one.left.unit,
      ]);
    expect(unitsOf([row('0', ''), row('', '')])).toEqual([
      ['steps', 'steps'],
      ['steps', 'steps'],
    ]);
    expect(unitsOf([row('0', ''), row('', '4')])).toEqual([
      ['m', 'm'],
      ['m', 'm'],
    ]);
  });
});
