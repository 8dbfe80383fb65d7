// The beat of the steps, as plain arithmetic on a clock: when each step falls, which foot it is, and whether the lever is
// pumped with it. Each step is counted from the first one, never from the one before, so that no error adds up. Steps are
// handed on well before they fall: a busy screen may wake late and the beat still stands. Nothing here makes a sound or
// reads a clock of its own, so that it is tested with a clock made for it.
//
// How many steps go to one stroke of the lever is the operator's own figure: common practice, no source.

export type Foot = 'left' | 'right';

/** What the steps follow. */
export interface Rhythm {
  stepsPerMin: number;
  firstFoot: Foot;
  /** Steps to one stroke of the lever; 0 where nothing is pumped. */
  stepsPerStroke: number;
}

/** One step. */
export interface Step {
  /** Counted from 0. */
  n: number;
  /** On the clock that the beat runs by, in seconds. */
  atS: number;
  foot: Foot;
  /** Whether the lever is pumped with this step. */
  isStroke: boolean;
}

/** How far ahead steps are handed on, in seconds: more than a phone holds back the timers of a page that is not looked at. */
export const AHEAD_S = 3;

/** How often it is looked whether steps must be handed on, in milliseconds. */
export const WAKE_MS = 250;

/** A row of steps that begins at a moment. */
export class Beat {
  constructor(
    readonly startS: number,
    readonly rhythm: Rhythm,
    /** Number of the step at the start: a beat that changes its pace counts on. */
    readonly startN = 0,
  ) {
    if (!(rhythm.stepsPerMin > 0)) throw new RangeError('a beat needs steps');
  }

  /** From one step to the next, in seconds. */
  get periodS(): number {
    return 60 / this.rhythm.stepsPerMin;
  }

  step(n: number): Step {
    const { firstFoot, stepsPerStroke } = this.rhythm;
    const other: Foot = firstFoot === 'left' ? 'right' : 'left';
    return {
      n,
      atS: this.startS + (n - this.startN) * this.periodS,
      foot: n % 2 === 0 ? firstFoot : other,
      isStroke: stepsPerStroke > 0 && n % stepsPerStroke === 0,
    };
  }

  /** The first step that does not fall before this moment. */
  firstFrom(atS: number): number {
    const n = this.startN + Math.ceil((atS - this.startS) / this.periodS - 1e-9);
    return Math.max(this.startN, n);
  }

  /** The step under way at this moment and how much of it is over, from 0 to 1; nothing before the first. */
  at(nowS: number): { step: Step; share: number } | null {
    const passed = (nowS - this.startS) / this.periodS;
    if (passed < 0) return null;
    const whole = Math.floor(passed);
    return { step: this.step(this.startN + whole), share: passed - whole };
  }

  /** The same walk in another rhythm, from the next step that does not fall before this moment. */
  changed(rhythm: Rhythm, fromS: number): Beat {
    const next = this.step(this.firstFrom(fromS));
    return new Beat(next.atS, rhythm, next.n);
  }
}

/** Takes back a step that was handed on and has not fallen yet. */
export type TakeBack = () => void;

/** Hands steps on ahead of their time. */
export class Ahead {
  #beat: Beat;
  #next: number;
  #handed: { atS: number; takeBack: TakeBack }[] = [];

  constructor(
    beat: Beat,
    private readonly nowS: () => number,
    private readonly hand: (step: Step) => TakeBack,
  ) {
    this.#beat = beat;
    this.#next = beat.startN;
  }

  get beat(): Beat {
    return this.#beat;
  }

  /** Hands on every step up to the look-ahead. A step whose moment has passed is left out: late is worse than not at all. */
  wake(): void {
    const nowS = this.nowS();
    this.#handed = this.#handed.filter(({ atS }) => atS >= nowS);
    this.#next = Math.max(this.#next, this.#beat.firstFrom(nowS));
    for (let step = this.#beat.step(this.#next); step.atS <= nowS + AHEAD_S; step = this.#beat.step(this.#next)) {
      this.#handed.push({ atS: step.atS, takeBack: this.hand(step) });
      this.#next += 1;
    }
  }

  /** Goes on in another rhythm from the next step on. */
  change(rhythm: Rhythm): void {
    this.#beat = this.#beat.changed(rhythm, this.nowS());
    this.#takeBack();
    this.#next = this.#beat.startN;
    this.wake();
  }

  /** Takes back all that has not fallen yet. */
  stop(): void {
    this.#takeBack();
  }

  #takeBack(): void {
    const nowS = this.nowS();
    for (const { atS, takeBack } of this.#handed) if (atS >= nowS) takeBack();
    this.#handed = [];
  }
}
