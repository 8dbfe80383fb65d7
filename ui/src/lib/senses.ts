// What can be heard and felt beside what is seen. A phone in a pouch has a handful of things to say, each with a row of
// notes and a row of buzzes that no other one has. Devices without sound or vibration stay silent: sight always says it
// too.
import { settings } from './settings.svelte';
import { sound, type Note } from './sound';

/** What the phone says from the pouch. */
export const SIGNALS = ['accepted', 'counted', 'refused', 'refill', 'pass', 'paused'] as const;
export type Signal = (typeof SIGNALS)[number];

const note = (hertz: number, afterS: number, forS: number): Note => ({ hertz, afterS, forS, form: 'triangle' });

interface Said {
  notes: readonly Note[];
  /** Buzz, pause, buzz and so on, in milliseconds. */
  buzzes: readonly number[];
}

/** How each is said. The words on the settings screen describe exactly this. */
export const SAID: Record<Signal, Said> = {
  accepted: { notes: [note(1200, 0, 0.08)], buzzes: [40] },
  counted: { notes: [note(1200, 0, 0.08), note(1600, 0.14, 0.14)], buzzes: [40, 80, 40] },
  refused: { notes: [note(300, 0, 0.3)], buzzes: [60, 60, 60, 60, 60] },
  refill: {
    notes: [note(700, 0, 0.14), note(1050, 0.18, 0.2), note(700, 0.6, 0.14), note(1050, 0.78, 0.2)],
    buzzes: [150, 100, 350, 250, 150, 100, 350],
  },
  pass: {
    notes: [note(1200, 0, 0.18), note(950, 0.24, 0.18), note(700, 0.48, 0.4)],
    buzzes: [350, 120, 250, 120, 120],
  },
  paused: { notes: [note(500, 0, 0.4), note(375, 0.45, 0.7)], buzzes: [800] },
};

/** Until when a signal is felt: a step in between would cut it off. */
let signalUntilMs = 0;

function buzz(pattern: readonly number[]): void {
  if (settings.isMuted || !settings.withVibration || !canBuzz()) return;
  navigator.vibrate([...pattern]);
}

/** Lets a step be felt, unless a signal is under way. */
export function buzzStep(pattern: readonly number[]): void {
  if (performance.now() >= signalUntilMs) buzz(pattern);
}

/** Whether this device can buzz. */
export const canBuzz = (): boolean => 'navigator' in globalThis && 'vibrate' in navigator;

/** Says one thing by sound and vibration. */
export function signal(what: Signal): void {
  signalUntilMs = performance.now() + SAID[what].buzzes.reduce((sum, ms) => sum + ms, 0);
  buzz(SAID[what].buzzes);
  sound(SAID[what].notes);
}
/** Keeps the screen on; answers with how to let it go. Where the device cannot, nothing happens. */
export function stayAwake(): () => void {
  let lock: WakeLockSentinel | undefined;
  let isOver = false;
  const hold = (): void => {
    if (isOver || document.visibilityState !== 'visible' || !('wakeLock' in navigator)) return;
    navigator.wakeLock.request('screen').then(
      (given) => {
        if (isOver) void given.release();
        else lock = given;
      },
      // A device low on power refuses; the walk goes on all the same.
      () => undefined,
    );
  };
  hold();
  document.addEventListener('visibilitychange', hold);
  return () => {
    isOver = true;
    document.removeEventListener('visibilitychange', hold);
    void lock?.release();
  };
}
