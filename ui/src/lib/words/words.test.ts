// The catalogue speaks for every code that a screen names, and says loudly when it does not.
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeEach, describe, expect, it } from 'vitest';
import { dayText, figureText, hasWord, missingCodes, numberText, said, speak, typed, word } from './index';

beforeEach(() => speak('en'));

function sources(folder: string): string[] {
  return readdirSync(folder, { withFileTypes: true }).flatMap((entry) => {
    const path = join(folder, entry.name);
    if (entry.isDirectory()) return entry.name === 'generated' ? [] : sources(path);
    return /\.(svelte|ts)$/.test(entry.name) && !entry.name.endsWith('.test.ts') ? [path] : [];
  });
}

describe('words', () => {
  it('has every code that a screen names', () => {
    const codes = sources('src').flatMap((path) =>
      [...readFileSync(path, 'utf8').matchAll(/word\(\s*'([^']+)'/g)].map((match) => match[1] ?? ''),
    );
    expect(codes.length).toBeGreaterThan(200);
    expect(codes.filter((code) => !hasWord(code))).toEqual([]);
  });

  it('shows a code it lacks, loudly', () => {
    expect(word('no-such-code')).toBe('⟦no-such-code⟧');
    expect(missingCodes()).toEqual(['no-such-code']);
  });

  it('shows a sentence whose argument is missing, loudly', () => {
    expect(word('part-remove')).toContain('⟦part-remove');
  });

  it('writes a figure with its decimals and unit', () => {
    expect(figureText({ value: 2.5, unit: 'mL/m2', decimals: 1 })).toBe('2.5\u00a0mL/m²');
    expect(figureText({ value: 12345.6, unit: 'm2', decimals: 0 })).toBe('12\u202f346\u00a0m²');
    expect(figureText({ value: 1, unit: 'day', decimals: 0 })).toBe('1\u00a0day');
    expect(figureText({ value: 28, unit: 'day', decimals: 0 })).toBe('28\u00a0days');
    expect(figureText({ value: 66, unit: 'deg', decimals: 0 })).toBe('66°');
    expect(numberText(-1.25, 2)).toBe('\u22121.25');
  });

  it('chooses the word by the number and writes it with its unit', () => {
    expect(word('plan-passes-at', { n: 1, pace: { value: 1, unit: 'm/s', decimals: 2 } })).toBe(
      'One pass at 1.00\u00a0m/s',
    );
    expect(word('plan-passes-at', { n: 3, pace: { value: 0.8, unit: 'm/s', decimals: 2 } })).toBe(
      '3 passes at 0.80\u00a0m/s',
    );
  });

  it('writes days as a person reads them', () => {
    expect(dayText('2026-11-24')).toBe('Tue, 24 Nov 2026');
    expect(dayText('some day')).toBe('some day');
  });

  it('sets what a person wrote apart from its own words in the pseudo-language', () => {
    speak('pseudo');
    expect(word('app-name')).toBe('[Événswárd]');
    expect(typed('Front lawn')).toBe('⟨Front lawn⟩');
    const sentence = said({ code: 'home-carry-on-with', args: { lawn: { kind: 'text', value: 'Front lawn' } } });
    expect(sentence).toBe('[Cárrý ón:] ⟨Front lawn⟩');
  });
});
