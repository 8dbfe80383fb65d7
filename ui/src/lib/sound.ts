// What can be heard: short notes, put on the audio clock for the moment at which they are to sound. One context for the
// whole app, behind one volume. Devices without sound stay silent: sight always says it too.
import { LOUDEST, settings, type Values } from './settings.svelte';
import type { Step, TakeBack } from './beat';

/** A note: how high, when after the beginning, how long, how loud against the others. */
export interface Note {
  hertz: number;
  afterS: number;
  forS: number;
  loud?: number;
  form?: OscillatorType;
}

let context: AudioContext | undefined;
let master: GainNode | undefined;

/** Each step of the volume doubles the loudness; the loudest is what the device gives. */
function gain(): number {
  return settings.isMuted ? 0 : 0.9 / 2 ** (LOUDEST - settings.volume);
}

/** The way to the loudspeaker, or nothing where there is none. */
function way(): { context: AudioContext; master: GainNode } | null {
  if (!('AudioContext' in globalThis)) return null;
  if (context === undefined || master === undefined) {
    context = new AudioContext({ latencyHint: 'interactive' });
    master = context.createGain();
    master.connect(context.destination);
  }
  master.gain.value = gain();
  return { context, master };
}

/** Puts notes on the clock; what has not sounded yet can be taken back. */
function play(notes: readonly Note[], atS: number, on: { context: AudioContext; master: GainNode }): TakeBack {
  const tones = notes.map(({ hertz, afterS, forS, loud = 1, form = 'sine' }) => {
    const tone = on.context.createOscillator();
    const loudness = on.context.createGain();
    const fromS = atS + afterS;
    tone.type = form;
    tone.frequency.value = hertz;
    // A note begins at once and fades: a slow beginning would blur the moment.
    loudness.gain.setValueAtTime(0, fromS);
    loudness.gain.linearRampToValueAtTime(0.5 * loud, fromS + 0.002);
    loudness.gain.exponentialRampToValueAtTime(0.0005, fromS + forS);
    tone.connect(loudness).connect(on.master);
    tone.start(fromS);
    tone.stop(fromS + forS);
    tone.onended = () => loudness.disconnect();
    return { tone, loudness };
  });
  return () => {
    for (const { tone, loudness } of tones) {
      tone.stop();
      loudness.disconnect();
    }
  };
}

/** Sounds notes now. */
export function sound(notes: readonly Note[]): void {
  if (settings.isMuted) return;
  const on = way();
  if (on === null) return;
  void on.context.resume();
  play(notes, on.context.currentTime, on);
}

/** The volume was changed: what is on its way follows. */
export function followVolume(): void {
  if (master !== undefined) master.gain.value = gain();
}

/** Timbres of a step: high enough for the small loudspeaker of a phone. */
const TIMBRES: Record<Values['timbre'], readonly Note[]> = {
  wood: [
    { hertz: 1100, afterS: 0, forS: 0.05, form: 'triangle' },
    { hertz: 2750, afterS: 0, forS: 0.025, loud: 0.5 },
  ],
  bell: [
    { hertz: 1320, afterS: 0, forS: 0.22 },
    { hertz: 3564, afterS: 0, forS: 0.12, loud: 0.35 },
  ],
  drum: [
    { hertz: 260, afterS: 0, forS: 0.12, form: 'triangle' },
    { hertz: 520, afterS: 0, forS: 0.04, form: 'square', loud: 0.25 },
  ],
};

/** The right foot sounds a fourth above the left. */
const RIGHT = 4 / 3;

/** A stroke of the lever: two more notes after the step, down and up, as the lever goes. */
const STROKE: readonly Note[] = [
  { hertz: 440, afterS: 0, forS: 0.16, form: 'triangle' },
  { hertz: 660, afterS: 0.12, forS: 0.14, form: 'triangle', loud: 0.7 },
];

/** The notes of one step. */
export function stepNotes(step: Step, timbre: Values['timbre']): Note[] {
  const foot = TIMBRES[timbre].map((note) => ({ ...note, hertz: note.hertz * (step.foot === 'right' ? RIGHT : 1) }));
  return step.isStroke ? [...foot, ...STROKE] : foot;
}

/** The clock of the sound, for as long as it runs. */
export interface AudioClock {
  nowS: () => number;
  /** The moment of the clock that is heard when the page's own clock shows this. */
  heardAtS: (atMs: number) => number;
  play: (notes: readonly Note[], atS: number) => TakeBack;
  /** Lets it run on after something, such as a call, held it. */
  keepRunning: () => void;
}

/** How long a context may take to begin, in milliseconds: without a touch before, a browser never begins it. */
const BEGIN_WITHIN_MS = 400;

/** Starts the clock; nothing where there is no sound, or none may be made yet. */
export async function audioClock(): Promise<AudioClock | null> {
  const on = way();
  if (on === null) return null;
  const late = new Promise((done) => setTimeout(done, BEGIN_WITHIN_MS));
  await Promise.race([on.context.resume().catch(() => undefined), late]);
  if (on.context.state !== 'running') return null;
  return {
    nowS: () => on.context.currentTime,
    heardAtS: (atMs) => {
      const { contextTime, performanceTime } = on.context.getOutputTimestamp();
      if (contextTime === undefined || performanceTime === undefined || performanceTime === 0) {
        return on.context.currentTime;
      }
      return contextTime + (atMs - performanceTime) / 1000;
    },
    play: (notes, atS) => play(notes, atS, on),
    keepRunning: () => {
      if (on.context.state !== 'running') void on.context.resume();
    },
  };
}
