// The beat as it is heard, felt and seen. Steps are put on the audio clock seconds ahead, so that a busy screen never makes
// it stutter; the sign reads the same clock, so that eye and ear agree. Where no sound can be made it runs by the page's
// own clock. One beat at a time, and it survives the screens' being drawn anew.
import { Ahead, Beat, WAKE_MS, type Rhythm, type Step, type TakeBack } from './beat';
import { buzzStep } from './senses';
import { settings } from './settings.svelte';
import { audioClock, followVolume, stepNotes, type AudioClock } from './sound';

/** From the touch to the first step, in seconds: a breath to set off. */
const SET_OFF_S = 0.6;

/** How a step feels, and a step with a stroke of the lever. */
const STEP_BUZZ = [35];
const STROKE_BUZZ = [35, 45, 90];

class Beating {
  /** Steps a minute, while it beats. */
  stepsPerMin = $state<number | null>(null);
  #ahead: Ahead | undefined;
  #clock: AudioClock | null = null;
  #waking: ReturnType<typeof setInterval> | undefined;
  #nStarts = 0;

  get isOn(): boolean {
    return this.stepsPerMin !== null;
  }

  /** Begins to beat, or goes on in another pace from the next step on. */
  async start(stepsPerMin: number): Promise<void> {
    if (this.#ahead !== undefined) {
      this.stepsPerMin = stepsPerMin;
      this.#ahead.change(this.#rhythm(stepsPerMin));
      return;
    }
    this.stepsPerMin = stepsPerMin;
    this.#nStarts += 1;
    const mine = this.#nStarts;
    const clock = settings.isMuted ? null : await audioClock();
    // Stopped, or started once more, while the clock was set going.
    if (mine !== this.#nStarts || this.stepsPerMin === null) return;
    this.#clock = clock;
    const beat = new Beat(this.#nowS() + SET_OFF_S, this.#rhythm(this.stepsPerMin));
    const ahead = new Ahead(
      beat,
      () => this.#nowS(),
      (step) => this.#hand(step),
    );
    this.#ahead = ahead;
    this.#waking = setInterval(() => {
      clock?.keepRunning();
      ahead.wake();
    }, WAKE_MS);
    ahead.wake();
  }

  stop(): void {
    this.#nStarts += 1;
    clearInterval(this.#waking);
    this.#ahead?.stop();
    this.#ahead = undefined;
    this.stepsPerMin = null;
  }

  /** Foot, pump, timbre or volume were changed: the next step follows. */
  follow(): void {
    followVolume();
    if (this.stepsPerMin === null || this.#ahead === undefined) return;
    const isSilentClock = this.#clock === null;
    if (isSilentClock && !settings.isMuted) {
      const { stepsPerMin } = this;
      this.stop();
      void this.start(stepsPerMin);
    } else {
      this.#ahead.change(this.#rhythm(this.stepsPerMin));
    }
  }

  /** The step that is heard when the page's clock shows this, and how much of it is over; nothing before the first. */
  at(atMs: number): { step: Step; share: number } | null {
    const heardS = this.#clock === null ? atMs / 1000 : this.#clock.heardAtS(atMs);
    return this.#ahead?.beat.at(heardS) ?? null;
  }

  #rhythm(stepsPerMin: number): Rhythm {
    return { stepsPerMin, firstFoot: settings.firstFoot, stepsPerStroke: settings.stepsPerStroke };
  }

  #nowS(): number {
    return this.#clock === null ? performance.now() / 1000 : this.#clock.nowS();
  }

  #hand(step: Step): TakeBack {
    const silence = this.#clock?.play(stepNotes(step, settings.timbre), step.atS);
    // A vibration cannot be put on a clock: it is let go when the step falls.
    const felt = setTimeout(() => buzzStep(step.isStroke ? STROKE_BUZZ : STEP_BUZZ), (step.atS - this.#nowS()) * 1000);
    return () => {
      clearTimeout(felt);
      silence?.();
    };
  }
}

/** The one beat of the app. */
export const beating = new Beating();
