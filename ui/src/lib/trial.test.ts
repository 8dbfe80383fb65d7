// A clean-water trial fills the same form as any calibration: its rounds, steps and pours are only put into their fields.
import { expect, test } from 'vitest';
import { emptyCalibration } from './forms';
import { counted, lastSteps, pouredBack, roundNow, roundsOf, walked } from './trial';

const begun = () => ({ ...emptyCalibration('2026-12-01'), walk_length: { text: '10', unit: 'm' } });

test('every length is a walk of its own, and its seconds belong to the round until something is poured back', () => {
  const form = begun();
  for (const seconds of ['10.0', '10.4', '9.8', '10.1']) walked(form, seconds);
  expect([form.walk_time.text, ...form.more_walks.map((walk) => walk.time.text)]).toEqual([
    '10.0',
    '10.4',
    '9.8',
    '10.1',
  ]);
  expect(form.more_walks.map((walk) => walk.length.text)).toEqual(['10', '10', '10']);
  expect(form.jug_time.text).toBe('40.3');
  expect(roundNow(form)).toBe(0);
  pouredBack(form, 0, { text: '600', unit: 'mL' });
  expect(roundNow(form)).toBe(1);
  walked(form, '10.0');
  expect(form.more_catches[0]?.time.text).toBe('10.0');
});

test('more rounds than the form began with get rows of their own', () => {
  const form = begun();
  for (let round = 0; round < 5; round += 1) {
    walked(form, '10.0');
    pouredBack(form, round, { text: '150', unit: 'mL' });
  }
  expect(roundsOf(form).map((round) => round.volume.text)).toEqual(['150', '150', '150', '150', '150']);
  expect(roundNow(form)).toBe(5);
});

test('steps go to the walk that was walked last', () => {
  const form = begun();
  walked(form, '10.0');
  expect(lastSteps(form).path).toBe('steps');
  counted(form, { text: '16', unit: 'steps' });
  walked(form, '10.2');
  expect(lastSteps(form).path).toBe('more_walks.0.steps');
  counted(form, { text: '17', unit: 'steps' });
  expect([form.steps.text, form.more_walks[0]?.steps.text]).toEqual(['16', '17']);
});

test('seconds corrected by hand are added to in either decimal sign, and what is no number stays as typed', () => {
  const form = begun();
  form.jug_time = { text: '9,5', unit: 's' };
  walked(form, '10.0');
  expect(form.jug_time.text).toBe('19.5');
  form.jug_time = { text: 'about ten', unit: 's' };
  walked(form, '10.0');
  expect(form.jug_time.text).toBe('about ten');
});
