// A trial on paving fills the calibration's own form, row by row: the watch hands over seconds, the jug what was poured back.
// Nothing is worked out here; flow, pace and how far they lie apart are the trade's.
import { emptyCatch, emptyWalk } from './forms';
import type { CalibrationInput } from './generated/CalibrationInput';
import type { Typed } from './generated/Typed';

/** The length that is marked when nothing else is said. */
export const MARKED = '10';

/** A catch of the form: what was poured back after a round, and the seconds that were sprayed in it. */
export interface Round {
  path: string;
  volume: Typed;
  time: Typed;
}

/** All rounds: the catches of the form. */
export const roundsOf = (form: CalibrationInput): Round[] => [
  { path: 'jug_volume', volume: form.jug_volume, time: form.jug_time },
  ...form.more_catches.map(({ volume, time }, idx) => ({ path: `more_catches.${idx}.volume`, volume, time })),
];

/** The round that is walked now: the first that nothing was poured back for. */
export function roundNow(form: CalibrationInput): number {
  const idx = roundsOf(form).findIndex((round) => round.volume.text.trim() === '');
  return idx === -1 ? form.more_catches.length + 1 : idx;
}

/** Writes a walked length into the form: one more walk, and its seconds to those of the round. */
export function walked(form: CalibrationInput, seconds: string): void {
  const time = { text: seconds, unit: 's' };
  const length = { ...form.walk_length };
  if (form.walk_time.text === '') form.walk_time = time;
  else {
    const free = form.more_walks.find((walk) => walk.time.text === '');
    if (free) Object.assign(free, { length, time });
    else form.more_walks.push({ ...emptyWalk(), length, time });
  }
  const idx = roundNow(form);
  if (idx > form.more_catches.length) {
    form.more_catches.push({ ...emptyCatch(), volume: { text: '', unit: form.jug_volume.unit } });
  }
  const before = roundsOf(form)[idx]?.time.text ?? '';
  const secondsBefore = Number(before.replace(',', '.'));
  // What is no number stays as it was typed: the form says what is wrong with it.
  const text = Number.isNaN(secondsBefore) ? before : (secondsBefore + Number(seconds)).toFixed(1);
  const sum = { text, unit: 's' };
  const more = form.more_catches[idx - 1];
  if (idx === 0) form.jug_time = sum;
  else if (more) more.time = sum;
}

/** Writes what was poured back after a round. */
export function pouredBack(form: CalibrationInput, idx: number, volume: Typed): void {
  const more = form.more_catches[idx - 1];
  if (idx === 0) form.jug_volume = volume;
  else if (more) more.volume = volume;
}

/** The steps of the last walk. */
export function lastSteps(form: CalibrationInput): { path: string; steps: Typed } {
  const idx = form.more_walks.findLastIndex((walk) => walk.time.text !== '');
  const more = form.more_walks[idx];
  return more ? { path: `more_walks.${idx}.steps`, steps: more.steps } : { path: 'steps', steps: form.steps };
}

/** Writes the steps of the last walk. */
export function counted(form: CalibrationInput, steps: Typed): void {
  const more = form.more_walks.findLast((walk) => walk.time.text !== '');
  if (more) more.steps = steps;
  else form.steps = steps;
}
