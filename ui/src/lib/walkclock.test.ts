// A pause is not walked.
import { expect, it } from 'vitest';
import { WalkClock } from './walkclock';

it('counts what is walked and leaves the pauses out', () => {
  const clock = new WalkClock();
  expect(clock.isBegun).toBe(false);
  expect(clock.walkedS(9_000)).toBe(0);
  clock.run(10_000);
  clock.run(12_000);
  expect(clock.walkedS(15_000)).toBe(5);
  clock.hold(16_000);
  expect(clock.walkedS(60_000)).toBe(6);
  expect(clock.isBegun).toBe(true);
  clock.run(60_000);
  expect(clock.walkedS(61_500)).toBe(7.5);
});
