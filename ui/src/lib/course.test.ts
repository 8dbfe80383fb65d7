// The tally between two taps is read at a moment of the course that the core worked out, and at no other.
import { expect, test } from 'vitest';
import { courseAt, isRefillSoon } from './course';
import type { CourseView } from './generated/CourseView';
import type { MomentView } from './generated/MomentView';

const moment = (at_s: number, inTankL: number, toDoL: number, minutes: number): MomentView => ({
  at_s,
  in_tank: { value: inTankL, unit: 'L', decimals: 1, beside: { value: inTankL * 2, unit: 'pt', decimals: 1 } },
  to_do: { value: toDoL, unit: 'L', decimals: 1 },
  minutes: { value: minutes, unit: 'min', decimals: 0 },
});

const course: CourseView = {
  passed_s: 0,
  is_running: true,
  moments: [moment(0, 10, 20, 10), moment(5, 10, 20, 9.9), moment(25, 6, 16, 9.5)],
  warn_at_s: 15,
  warning: null,
};

test('the tank stands still while nothing is sprayed and empties straight while something is', () => {
  expect(courseAt(course, 0)?.in_tank.value).toBe(10);
  expect(courseAt(course, 3)?.in_tank.value).toBe(10);
  expect(courseAt(course, 15)?.in_tank.value).toBe(8);
  expect(courseAt(course, 15)?.in_tank.beside?.value).toBe(16);
  expect(courseAt(course, 15)?.to_do.value).toBe(18);
  expect(courseAt(course, 15)?.to_do.beside).toBeUndefined();
  expect(courseAt(course, 25)?.minutes.value).toBe(9.5);
});

test('after the last point it waits for the tap, however late it comes', () => {
  expect(courseAt(course, 1_000)).toEqual(course.moments[2]);
  expect(courseAt({ ...course, moments: [] }, 3)).toBeNull();
});

test('the refill is said from its moment on, and never where none comes', () => {
  expect([14.9, 15, 100].map((seconds) => isRefillSoon(course, seconds))).toEqual([false, true, true]);
  expect(isRefillSoon({ ...course, warn_at_s: null }, 100)).toBe(false);
});
