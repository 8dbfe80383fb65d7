// The beat on a clock made for the test: steps fall where they should however late the page wakes, and a beat that counts
// from its last tick, as a plain interval does, is told apart.
import { describe, expect, it } from 'vitest';
import { Ahead, AHEAD_S, Beat, WAKE_MS, type Rhythm, type Step } from './beat';

const rhythm = (change: Partial<Rhythm> = {}): Rhythm => ({
  stepsPerMin: 96,
  firstFoot: 'left',
  stepsPerStroke: 0,
  ...change,
});

/** A clock that is set by hand, and what was handed on by it. */
function walk(beat: Beat) {
  const clock = { nowS: beat.startS };
  const handed: (Step & { handedS: number; isTakenBack: boolean })[] = [];
  const ahead = new Ahead(
    beat,
    () => clock.nowS,
    (step) => {
      const one = { ...step, handedS: clock.nowS, isTakenBack: false };
      handed.push(one);
      return () => (one.isTakenBack = true);
    },
  );
  return { clock, handed, ahead };
}

/** Chance that is the same each time. */
function chance(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state * 1_664_525 + 1_013_904_223) % 4_294_967_296;
    return state / 4_294_967_296;
  };
}

describe('a beat', () => {
  it('counts every step from the first, so that ten minutes end where they should', () => {
    const beat = new Beat(5, rhythm({ stepsPerMin: 97.3 }));
    expect(beat.step(973).atS).toBeCloseTo(5 + 600, 9);
  });

  it('begins with the foot that was chosen, and changes feet', () => {
    const feet = (firstFoot: 'left' | 'right') => {
      const beat = new Beat(0, rhythm({ firstFoot }));
      return [0, 1, 2].map((n) => beat.step(n).foot);
    };
    expect(feet('left')).toEqual(['left', 'right', 'left']);
    expect(feet('right')).toEqual(['right', 'left', 'right']);
  });

  it('pumps once in so many steps, beginning with the first, or never', () => {
    const strokes = (stepsPerStroke: number) => {
      const beat = new Beat(0, rhythm({ stepsPerStroke }));
      return [0, 1, 2, 3, 4, 5, 6, 7].filter((n) => beat.step(n).isStroke);
    };
    expect(strokes(3)).toEqual([0, 3, 6]);
    expect(strokes(1)).toHaveLength(8);
    expect(strokes(0)).toEqual([]);
  });

  it('knows the step under way and how much of it is over', () => {
    const beat = new Beat(10, rhythm({ stepsPerMin: 60 }));
    expect(beat.at(9.99)).toBeNull();
    expect(beat.at(10)).toMatchObject({ step: { n: 0 }, share: 0 });
    expect(beat.at(12.25)).toMatchObject({ step: { n: 2, foot: 'left' }, share: 0.25 });
  });

  it.each([0, -1, Number.NaN])('is not made of %s steps a minute', (stepsPerMin) => {
    expect(() => new Beat(0, rhythm({ stepsPerMin }))).toThrow(RangeError);
  });

  it('goes on in another rhythm from the next step, with the other foot', () => {
    const slower = new Beat(0, rhythm({ stepsPerMin: 60 })).changed(rhythm({ stepsPerMin: 30 }), 2.5);
    expect(slower.step(3)).toMatchObject({ atS: 3, foot: 'right' });
    expect(slower.step(4)).toMatchObject({ atS: 5, foot: 'left' });
  });
});

describe('steps handed on ahead', () => {
  it('stand to the microsecond for ten minutes while the page wakes late by up to two seconds', () => {
    const beat = new Beat(1, rhythm({ stepsPerMin: 103.7 }));
    const { clock, handed, ahead } = walk(beat);
    const late = chance(7);
    while (clock.nowS < 601) {
      ahead.wake();
      clock.nowS += WAKE_MS / 1000 + late() * 2;
    }
    expect(handed.map(({ n }) => n)).toEqual(handed.map((_, idx) => idx));
    expect(handed.length).toBeGreaterThan(1037);
    for (const [idx, { atS, handedS }] of handed.entries()) {
      expect(Math.abs(atS - (1 + (idx * 60) / 103.7))).toBeLessThan(1e-6);
      expect(handedS).toBeLessThanOrEqual(atS);
    }
  });

  it('leave out what fell while the page slept longer than that, and are on the beat again afterwards', () => {
    const { clock, handed, ahead } = walk(new Beat(0, rhythm({ stepsPerMin: 60 })));
    ahead.wake();
    clock.nowS = 20.5;
    ahead.wake();
    expect(handed.map(({ n }) => n)).toEqual([0, 1, 2, 3, 21, 22, 23]);
    expect(AHEAD_S).toBe(3);
  });

  it('are taken back at a stop, but not those that fell', () => {
    const { clock, handed, ahead } = walk(new Beat(0, rhythm({ stepsPerMin: 60 })));
    ahead.wake();
    clock.nowS = 1.5;
    ahead.stop();
    expect(handed.map(({ isTakenBack }) => isTakenBack)).toEqual([false, false, true, true]);
  });

  it('are taken back and handed on anew when the pace changes, and no step falls twice', () => {
    const { clock, handed, ahead } = walk(new Beat(0, rhythm({ stepsPerMin: 60 })));
    ahead.wake();
    clock.nowS = 1.5;
    ahead.change(rhythm({ stepsPerMin: 90 }));
    const left = handed.filter(({ isTakenBack }) => !isTakenBack);
    expect(left.map(({ n }) => n)).toEqual([0, 1, 2, 3, 4, 5]);
    expect(left[2]?.atS).toBe(2);
    expect(left[3]?.atS).toBeCloseTo(2 + 60 / 90, 9);
  });
});
