// What was kept is read field by field: one that is wrong or from another version never spoils the others.
import { describe, expect, it } from 'vitest';
import { readSettings, settings } from './settings.svelte';

const first = readSettings(null);

describe('settings', () => {
  it.each([null, '', 'garbage', '[]', 'null', '3', '{}'])('are as at first when %s was kept', (text) => {
    expect(readSettings(text)).toEqual(first);
  });

  it('keep what is right and leave out what is not', () => {
    const kept = { theme: 'dusk', hand: 'third', volume: 9, stepsPerStroke: 2.5, isMuted: 'yes', gone: 1, beat: 'off' };
    expect(readSettings(JSON.stringify(kept))).toEqual({ ...first, theme: 'dusk', beat: 'off' });
  });

  it('read what the version before kept', () => {
    expect(readSettings('{"theme":"day","isMuted":true}')).toMatchObject({ theme: 'day', isMuted: true });
  });

  it('never guess the pump: nothing is pumped until the operator says so', () => {
    expect(first.stepsPerStroke).toBe(0);
    expect(first.withVoice).toBe(false);
  });

  it('are read by name and changed together, even where nothing can be kept', () => {
    settings.set({ volume: 1, firstFoot: 'right' });
    expect([settings.volume, settings.firstFoot, settings.theme]).toEqual([1, 'right', 'auto']);
    settings.set(first);
  });
});
