// Listens to what really sounds: everything on its way to the loudspeaker also goes through a recorder that runs on the
// audio thread and notes, to the sample, where a tone begins after a silence. Frames of the sign are noted beside it.
import type { Page } from '@playwright/test';

/** Notes the sample at which each tone begins: louder than a whisper, after a silence. */
const RECORDER = `
registerProcessor('onsets', class extends AudioWorkletProcessor {
  constructor() { super(); this.quiet = 1e9; }
  process([input]) {
    const loud = input[0];
    if (loud === undefined) { this.quiet += 128; return true; }
    for (let idx = 0; idx < loud.length; idx += 1) {
      if (Math.abs(loud[idx]) > 0.01) {
        if (this.quiet > 0.12 * sampleRate) this.port.postMessage((currentFrame + idx) / sampleRate);
        this.quiet = 0;
      } else this.quiet += 1;
    }
    return true;
  }
});`;

/** A frame, by the clock of the sound. */
export interface Frame {
  clockS: number;
}

/** A step that the sign came to show, and in which frame. */
export interface Seen {
  n: number;
  frame: number;
}

declare global {
  interface Window {
    heard: { onsetsS: number[]; context?: AudioContext };
    seen: Seen[];
    shownFrames: Frame[];
  }
}

/** Lays the recorder into every page from now on. Before the page is opened. */
export async function listen(page: Page): Promise<void> {
  await page.addInitScript((recorder) => {
    window.heard = { onsetsS: [] };
    window.seen = [];
    window.shownFrames = [];
    const connect = AudioNode.prototype.connect as (this: AudioNode, to: unknown, ...rest: number[]) => unknown;
    let node: Promise<AudioWorkletNode> | undefined;
    AudioNode.prototype.connect = function (this: AudioNode, to: unknown, ...rest: number[]) {
      const { context } = this;
      if (to === context.destination && context instanceof AudioContext) {
        window.heard.context = context;
        const address = URL.createObjectURL(new Blob([recorder], { type: 'text/javascript' }));
        node ??= context.audioWorklet.addModule(address).then(() => {
          const made = new AudioWorkletNode(context, 'onsets', { numberOfOutputs: 0 });
          made.port.onmessage = ({ data }) => window.heard.onsetsS.push(data as number);
          return made;
        });
        void node.then((made) => connect.call(this, made));
      }
      return connect.call(this, to, ...rest);
    } as typeof AudioNode.prototype.connect;
  }, RECORDER);
}

/** Notes every frame by the clock of the sound, and when the sign came to show each step. */
export async function watchSign(page: Page): Promise<void> {
  await page.evaluate(() => {
    const look = (atMs: number): void => {
      const reading = window.heard.context?.getOutputTimestamp();
      const clockS = (reading?.contextTime ?? 0) + (atMs - (reading?.performanceTime ?? 0)) / 1000;
      window.shownFrames.push({ clockS });
      requestAnimationFrame(look);
    };
    requestAnimationFrame(look);
    new MutationObserver(() => {
      const n = document.querySelector('svg.sign')?.getAttribute('data-step') ?? '';
      if (n !== '' && window.seen[window.seen.length - 1]?.n !== Number(n)) {
        window.seen.push({ n: Number(n), frame: window.shownFrames.length - 1 });
      }
    }).observe(document.body, { subtree: true, childList: true, attributes: true, attributeFilter: ['data-step'] });
  });
}

/**
 * By how many frames each step is shown after the first frame that falls at or after its moment, least first: 0 is on time,
 * and -1 is the frame right before, when the two clocks are read a moment apart.
 */
export function framesLate(seen: Seen[], frames: Frame[], momentS: (n: number) => number): number[] {
  const late = seen.map(({ n, frame }) => {
    const due = frames.findIndex(({ clockS }) => clockS >= momentS(n));
    return due < 0 ? Number.POSITIVE_INFINITY : frame - due;
  });
  return late.sort((a, b) => a - b);
}

/** Keeps the page busy again and again, as drawing and storing do, only worse. */
export async function keepBusy(page: Page): Promise<void> {
  await page.evaluate(() => {
    let nTimes = 0;
    setInterval(() => {
      nTimes += 1;
      const until = performance.now() + 40 + (nTimes % 7) * 60;
      while (performance.now() < until);
    }, 700);
  });
}

/** How a row of moments keeps time: the straight line through them is its own pace. */
export interface Timekeeping {
  n: number;
  /** From the first to the last moment: how far it strays from what it should take, in milliseconds. */
  driftMs: number;
  /** The farthest that a moment lies from where the pace puts it, and the share of one in twenty, in milliseconds. */
  jitterMs: number;
  jitter95Ms: number;
}

/** Holds moments, in seconds, against a period. Moments that are missing show up as jitter. */
export function timekeeping(momentsS: number[], periodS: number): Timekeeping {
  const first = momentsS[0];
  const last = momentsS[momentsS.length - 1];
  if (first === undefined || last === undefined || momentsS.length < 10) throw new Error('too little was heard');
  const driftMs = Math.abs(last - first - (momentsS.length - 1) * periodS) * 1000;
  const offs = momentsS.map((atS, idx) => (atS - first - idx * periodS) * 1000);
  const middle = [...offs].sort((a, b) => a - b)[Math.floor(offs.length / 2)] ?? 0;
  const apart = offs.map((off) => Math.abs(off - middle)).sort((a, b) => a - b);
  return {
    n: momentsS.length,
    driftMs,
    jitterMs: apart[apart.length - 1] ?? 0,
    jitter95Ms: apart[Math.floor(apart.length * 0.95)] ?? 0,
  };
}
