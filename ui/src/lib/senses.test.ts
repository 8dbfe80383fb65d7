// In a pouch nothing is seen: each thing the phone says must differ from every other by what is heard and by what is felt.
import { describe, expect, it } from 'vitest';
import { SAID, SIGNALS } from './senses';
import { stepNotes } from './sound';
import { TIMBRES } from './settings.svelte';

describe('what the phone says', () => {
  it('differs for the ear and for the skin, each from every other', () => {
    const heard = SIGNALS.map((what) => JSON.stringify(SAID[what].notes));
    const felt = SIGNALS.map((what) => SAID[what].buzzes.join());
    expect(new Set(heard).size).toBe(SIGNALS.length);
    expect(new Set(felt).size).toBe(SIGNALS.length);
  });

  it('is a row of buzzes with pauses between them, none too short to be felt', () => {
    for (const what of SIGNALS) {
      expect(SAID[what].buzzes.length % 2, what).toBe(1);
      expect(Math.min(...SAID[what].buzzes), what).toBeGreaterThanOrEqual(40);
    }
  });

  it('tells the feet and the stroke apart in every timbre', () => {
    const step = { n: 0, atS: 0, foot: 'left', isStroke: false } as const;
    const heard = TIMBRES.flatMap((timbre) => [
      stepNotes(step, timbre),
      stepNotes({ ...step, foot: 'right' }, timbre),
      stepNotes({ ...step, isStroke: true }, timbre),
    ]);
    expect(new Set(heard.map((notes) => JSON.stringify(notes))).size).toBe(heard.length);
  });
});
