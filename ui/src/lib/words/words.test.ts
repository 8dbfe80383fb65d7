// The catalogue speaks for every code that a screen names, and says loudly when it does not.
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { Typed } from '../generated/Typed';
import {
  besideText,
  dayText,
  figureText,
  hasWord,
  instantText,
  metricText,
  missingCodes,
  numberText,
  said,
  speak,
  typed,
  word,
} from './index';
import { LANGUAGES, deviceLanguage, spoken } from './spoken.svelte';
import { handedOver } from './typing';

beforeEach(() => speak('en'));

function sources(folder: string): string[] {
  return readdirSync(folder, { withFileTypes: true }).flatMap((entry) => {
    const path = join(folder, entry.name);
    if (entry.isDirectory()) return entry.name === 'generated' ? [] : sources(path);
    return /\.(svelte|ts)$/.test(entry.name) && !entry.name.endsWith('.test.ts') ? [path] : [];
  });
}

describe('words', () => {
  it.each(LANGUAGES)('has every code that a screen names, in %s', (language) => {
    speak(language);
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

describe('German', () => {
  beforeEach(() => speak('de'));

  it('writes numbers with a comma, thousands set apart by a thin space', () => {
    expect(figureText({ value: 2.5, unit: 'mL/m2', decimals: 1 })).toBe('2,5\u00a0mL/m²');
    expect(figureText({ value: 12345.6, unit: 'm2', decimals: 1 })).toBe('12\u202f345,6\u00a0m²');
    expect(numberText(-1.25, 2)).toBe('\u22121,25');
    expect(word('failure-refused', { count: 1200 })).toBe('1\u202f200 Dinge sind erst richtigzustellen.');
  });

  it('has plurals of its own', () => {
    expect(figureText({ value: 1, unit: 'day', decimals: 0 })).toBe('1\u00a0Tag');
    expect(figureText({ value: 28, unit: 'day', decimals: 0 })).toBe('28\u00a0Tage');
    expect(word('ready-not-yet', { n: 0 })).toBe('Noch nicht bereit');
    expect(word('ready-not-yet', { n: 1 })).toBe('Eines steht noch aus');
    expect(word('ready-not-yet', { n: 5 })).toBe('5 Dinge stehen noch aus');
  });

  it('writes days and times as they are written in German', () => {
    expect(dayText('2026-11-24')).toBe('Di., 24. Nov. 2026');
    expect(instantText(Date.UTC(2026, 10, 24, 13, 5), 60)).toBe('24. Nov. 2026, 14:05');
  });

  it('speaks at once after another language was chosen, and back', () => {
    expect(word('walk-heading')).toBe('Gehen');
    speak('en');
    expect(word('walk-heading')).toBe('Walk');
  });

  it('hands no figure over that the trade would read as a thousandth of it', () => {
    const figure = (text: string): Typed => ({ text, unit: 'm2' });
    const asked = { parts: [{ width: figure('1.200'), name: '1.200' }], area: figure(' 12.345 ') };
    const handed = handedOver(asked);
    expect(handed.parts[0]).toEqual({ width: figure('1,200'), name: '1.200' });
    expect(handed.area.text).toBe(' 12,345 ');
    expect(asked.parts[0]?.width.text).toBe('1.200');
    for (const text of ['1,5', '1.5', '0.125', '1200', '1.20', '1.2000', '1200.125', 'etwa 1.200', '1 200,5', '']) {
      expect(handedOver(figure(text)).text).toBe(text);
    }
    speak('en');
    expect(handedOver(asked)).toBe(asked);
  });
});

describe('customary units', () => {
  const shown = { value: 15, unit: 'L', decimals: 1, beside: { value: 26.396, unit: 'pt_imp', decimals: 1 } };
  const untouched = { alsoCustomary: false, isPeeking: false };
  beforeEach(() => void Object.assign(spoken, untouched));
  afterEach(() => void Object.assign(spoken, untouched));

  it('stand beside a figure only where they were asked for', () => {
    expect(figureText(shown)).toBe('15.0\u00a0L');
    expect(besideText(shown)).toBe('');
    spoken.isPeeking = true;
    expect(figureText(shown)).toBe('15.0\u00a0L (26.4\u00a0imp pt)');
    spoken.isPeeking = false;
    spoken.alsoCustomary = true;
    expect(besideText(shown)).toBe('26.4\u00a0imp pt');
    expect(word('plan-fill-water', { water: shown })).toBe('15.0\u00a0L (26.4\u00a0imp pt) of clean water.');
    expect(metricText(shown)).toBe('15.0\u00a0L');
    expect(figureText({ value: 3, unit: 'passes', decimals: 0 })).toBe('3\u00a0passes');
  });

  it('are written in the language that is spoken', () => {
    spoken.alsoCustomary = true;
    speak('de');
    expect(figureText(shown)).toBe('15,0\u00a0L (26,4\u00a0imp pt)');
  });
});

describe('the language of the device', () => {
  it('is the first that the screens can speak, and English when there is none', () => {
    expect(deviceLanguage(['de-AT', 'en'])).toBe('de');
    expect(deviceLanguage(['fr-FR', 'DE', 'en-GB'])).toBe('de');
    expect(deviceLanguage(['en-US', 'de'])).toBe('en');
    expect(deviceLanguage(['fr', 'nl-BE'])).toBe('en');
    expect(deviceLanguage([])).toBe('en');
    expect(deviceLanguage(['den'])).toBe('en');
  });
});
