// The small logic of the screens: keys, drafts, steps, scaling, places. None of it knows the trade.
import { describe, expect, it } from 'vitest';
import { restored, typedJson } from './draft.svelte';
import {
  besideMark,
  fillPattern,
  fit,
  isOnLawn,
  keepIn,
  ringsPath,
  scaleBarM,
  sidePlace,
  stripWidthPx,
} from './drawing';
import { Bounce, BOUNCE_MS, wishOf, type Press } from './keys';
import { GROUPS, groupOf } from './label';
import { address, keptHash, placeOf } from './route.svelte';
import { stepped } from './step';

const press = (key: string, change: Partial<Press> = {}): Press => ({
  key,
  isRepeat: false,
  hasModifier: false,
  focus: 'none',
  ...change,
});

describe('keys', () => {
  it.each([' ', 'Enter', 'PageDown', 'ArrowRight', 'ArrowDown'])('goes forward by "%s"', (key) => {
    expect(wishOf(press(key))).toBe('forward');
    expect(wishOf(press(key, { focus: 'main' }))).toBe('forward');
  });

  it.each(['PageUp', 'ArrowLeft', 'ArrowUp'])('takes back by "%s"', (key) => {
    expect(wishOf(press(key))).toBe('back');
  });

  it('leaves keys to a field, a held key and a shortcut alone', () => {
    expect(wishOf(press('Enter', { focus: 'typing' }))).toBeNull();
    expect(wishOf(press('ArrowLeft', { focus: 'typing' }))).toBeNull();
    expect(wishOf(press(' ', { isRepeat: true }))).toBeNull();
    expect(wishOf(press('ArrowLeft', { hasModifier: true }))).toBeNull();
    expect(wishOf(press('a'))).toBeNull();
  });

  it('lets Space and Enter press the button that has the focus, and arrows go on', () => {
    expect(wishOf(press('Enter', { focus: 'button' }))).toBeNull();
    expect(wishOf(press(' ', { focus: 'button' }))).toBeNull();
    expect(wishOf(press('PageDown', { focus: 'button' }))).toBe('forward');
  });

  it('counts a bounce once', () => {
    const bounce = new Bounce();
    expect(bounce.counts(0)).toBe(true);
    expect(bounce.counts(BOUNCE_MS - 1)).toBe(false);
    expect(bounce.counts(BOUNCE_MS)).toBe(true);
  });
});

describe('drafts', () => {
  const empty = { name: '', parts: [1] };

  it('lays what was typed over an empty form', () => {
    expect(restored(empty, '{"name":"Front"}')).toEqual({ name: 'Front', parts: [1] });
  });

  it('drops fields that the form does not have', () => {
    expect(restored(empty, '{"name":"Front","gone":1}')).toEqual({ name: 'Front', parts: [1] });
  });

  it('counts a unit that a field offers by itself as nothing typed', () => {
    const at = (text: string, unit: string) => typedJson({ name: '', width: { text, unit } });
    expect(at('', 'm')).toBe(at('', ''));
    expect(at('2', 'm')).not.toBe(at('2', 'ft'));
    expect(at('2', 'm')).not.toBe(at('', 'm'));
  });

  it.each([null, '', 'garbage', '[]', 'null', '3'])('has nothing to restore from %s', (body) => {
    expect(restored(empty, body)).toBeNull();
  });
});

describe('steps', () => {
  it('counts up and down, never below nothing', () => {
    expect(stepped('7.6', 0.5, 1)).toBe('8.1');
    expect(stepped('7,6', -0.5, 1)).toBe('7,1');
    expect(stepped('1\u202f007,6', 0.5, 1)).toBe('1008,1');
    expect(stepped('0.2', -0.5, 1)).toBe('0.0');
  });

  it('leaves alone what is no number', () => {
    expect(stepped('about seven', 0.5, 1)).toBe('about seven');
    expect(stepped('', 0.5, 1)).toBe('');
  });
});

describe('the drawing', () => {
  const by = fit([0, 0, 10, 20], 220, 420, 10);
  const lawn: [number, number][][] = [
    [
      [0, 0],
      [10, 0],
      [10, 20],
      [0, 20],
    ],
  ];

  it('keeps the scale in both directions and the front at the bottom', () => {
    expect(by.scale).toBe(20);
    expect(by.at([0, 0])).toEqual([10, 410]);
    expect(by.at([10, 20])).toEqual([210, 10]);
  });

  it('reads a finger back into the metres it means', () => {
    expect(by.from([10, 410])).toEqual([0, 0]);
    expect(by.from(by.at([3, 7]))).toEqual([3, 7]);
  });

  it('tells six tankfuls apart, then begins again', () => {
    expect([1, 2, 6, 7].map(fillPattern)).toEqual([0, 1, 5, 0]);
  });

  it('measures a strip square to the way it is walked', () => {
    const turned = [
      [
        [0, 0],
        [1, -1],
        [5, 3],
        [4, 4],
      ],
    ] as [number, number][][];
    expect(
      stripWidthPx(
        turned,
        [
          [0, 0],
          [4, 4],
        ],
        by,
      ),
    ).toBeCloseTo(20 * Math.SQRT2, 9);
    expect(stripWidthPx(turned, undefined, by)).toBe(0);
  });

  it('keeps a word inside the drawing', () => {
    expect(keepIn(3, 40, 300)).toBe(22);
    expect(keepIn(298, 40, 300)).toBe(278);
    expect(keepIn(150, 40, 300)).toBe(150);
  });

  it('writes rings as closed paths', () => {
    expect(
      ringsPath(
        [
          [
            [0, 0],
            [10, 0],
            [10, 20],
          ],
        ],
        by,
      ),
    ).toBe('M10 410L210 410L210 10Z');
  });

  it('finds a round length for the scale bar', () => {
    expect(scaleBarM(20, 70)).toBe(2);
    expect(scaleBarM(7, 70)).toBe(10);
    expect(scaleBarM(200, 70)).toBeCloseTo(0.2);
    expect(scaleBarM(0, 70)).toBe(0);
  });

  it('stands the words of a side outside, never upside down', () => {
    const right = sidePlace([10, 0], [10, 20], lawn, by, 20);
    expect(right.x).toBeCloseTo(230);
    expect(Math.abs(right.turnDeg)).toBeLessThanOrEqual(90.01);
    const back = sidePlace([10, 20], [0, 20], lawn, by, 20);
    expect(back.y).toBeCloseTo(-10);
    expect(back.turnDeg).toBeCloseTo(0);
  });

  it('stands the words of a side off the lawn in a bay, too', () => {
    const bay: [number, number][][] = [
      [
        [0, 0],
        [10, 0],
        [10, 20],
        [6, 20],
        [6, 10],
        [4, 10],
        [4, 20],
        [0, 20],
      ],
    ];
    const side = sidePlace([6, 20], [6, 10], bay, by, 10);
    expect(side.x).toBeCloseTo(by.at([6, 15])[0] - 10);
    expect(isOnLawn(by.at([8, 15]), bay, by)).toBe(true);
    expect(isOnLawn(by.at([5, 15]), bay, by)).toBe(false);
  });

  it('draws what lies beyond a side, and nothing for nothing', () => {
    for (const beside of ['hedge', 'open_water', 'neighbour', 'food_plants', 'paving', 'wall', 'drain']) {
      expect(besideMark(beside, [0, 0], [10, 0], lawn, by)).toMatch(/^M/);
    }
    expect(besideMark('nothing', [0, 0], [10, 0], lawn, by)).toBe('');
    expect(besideMark('hedge', [0, 0], [0, 0], lawn, by)).toBe('');
  });
});

describe('places', () => {
  it.each([{ page: 'home' }, { page: 'visit', id: 'a-b' }, { page: 'calibrate', id: 'c' }] as const)(
    'finds %o again by its address',
    (place) => {
      expect(placeOf(address(place))).toEqual(place);
    },
  );

  it('takes only an address for a kept place', () => {
    expect(keptHash('"#/visit/a-b"')).toBe('#/visit/a-b');
    for (const body of [null, '', '#/visit/a', '"https://example.invalid"', '{}']) expect(keptHash(body)).toBeNull();
  });

  it('opens the first page for an address it does not know', () => {
    expect(placeOf('#/nowhere/1')).toEqual({ page: 'home' });
    expect(placeOf('#/visit/')).toEqual({ page: 'home' });
    expect(placeOf('')).toEqual({ page: 'home' });
  });
});

describe('the label form', () => {
  it('leads from a field to its group', () => {
    expect(groupOf('name')).toBe(0);
    expect(GROUPS[groupOf('water_max')]).toBe('water');
    expect(GROUPS[groupOf('protective_mixing.0')]).toBe('protective');
    expect(groupOf('unheard_of')).toBe(0);
  });
});
