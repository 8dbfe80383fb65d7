// Reads the course of the walk at a moment: straight from one point that the trade gave to the next, standing still after
// the last. Nothing of the trade is worked out here; the points hold all of it.
import type { CourseView } from './generated/CourseView';
import type { MomentView } from './generated/MomentView';
import type { Shown } from './generated/Shown';

/** A figure on its way from one point to the next, and its customary counterpart with it. */
function between(from: Shown, to: Shown, share: number): Shown {
  const at = (begin: number, end: number): number => begin + (end - begin) * share;
  const beside = from.beside && to.beside && { ...from.beside, value: at(from.beside.value, to.beside.value) };
  return { ...from, value: at(from.value, to.value), ...(beside ? { beside } : {}) };
}

/** The figures of the course so many seconds after the strip was begun. */
export function courseAt(course: CourseView, seconds: number): MomentView | null {
  const later = course.moments.find((moment) => moment.at_s >= seconds);
  const before = course.moments.filter((moment) => moment.at_s < seconds).at(-1);
  if (later === undefined || before === undefined) return later ?? before ?? null;
  const share = (seconds - before.at_s) / (later.at_s - before.at_s);
  return {
    at_s: seconds,
    in_tank: between(before.in_tank, later.in_tank, share),
    to_do: between(before.to_do, later.to_do, share),
    minutes: between(before.minutes, later.minutes, share),
  };
}

/** Whether the refill is to be said by then. */
export const isRefillSoon = (course: CourseView, seconds: number): boolean =>
  course.warn_at_s !== null && seconds >= course.warn_at_s;
