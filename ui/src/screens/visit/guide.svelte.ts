// Leads through a stretch of the walk: whether it was begun, how long it has been walked, when the beat goes and when the
// phone speaks up from the pouch. It works by the planned times that the core gave and holds nothing true: when the phone
// dies, a touch begins it again.
import { beating } from '../../lib/beating.svelte';
import { isRefillSoon } from '../../lib/course';
import type { WalkPanel } from '../../lib/generated/WalkPanel';
import { signal } from '../../lib/senses';
import { settings } from '../../lib/settings.svelte';
import { sayAloud } from '../../lib/voice';
import { WalkClock } from '../../lib/walkclock';
import { said, word } from '../../lib/words';

/** A signal that follows a tap waits until the tap's own tick is over, in milliseconds. */
const AFTER_TICK_MS = 400;

export class Guide {
  /** The strip, or the pass, was begun. */
  isWalking = $state(false);
  /** The strip counts itself when its planned time is over. */
  countsItself = $state(false);
  /** A strip that was counted too early and taken back: it goes on, and only a touch ends it. */
  isLeftOver = $state(false);
  /** How much of the planned time is over, from 0 to 1. */
  share = $state(0);
  #clock = new WalkClock();
  #key = '';
  #order = 0;
  #isNearSaid = false;
  #isFirstStripOver = false;
  #isHeld = false;
  #cameMs = 0;
  #beatBefore: number | null = null;

  /** Looks at the panel after each answer. */
  see(panel: WalkPanel): void {
    this.#cameMs = performance.now();
    const isByStrip = panel.guide === 'strip';
    const key = isByStrip ? `${panel.pass}.${panel.strip.strip}` : `${panel.pass}.${panel.fill}`;
    const order = panel.pass * 10_000 + panel.strip.strip;
    if (key !== this.#key) {
      const isBack = this.#key !== '' && order < this.#order;
      this.#key = key;
      this.#arrive(panel, isBack);
    }
    this.#order = order;
    if (panel.paused !== null) this.#hold();
    else this.#goOn();
  }

  /** The stretch is begun. */
  begin(panel: WalkPanel): void {
    this.isWalking = true;
    this.#clock.run(performance.now());
    this.countsItself = panel.guide === 'strip' && settings.stripCount === 'time';
    const isWanted = settings.beat === 'throughout' || (settings.beat === 'first' && panel.strip.strip === 1);
    if (isWanted || panel.guide !== 'strip') this.beat(panel);
    else beating.stop();
  }

  /** The beginning was a slip: back to the marker. */
  unbegin(): void {
    beating.stop();
    this.isWalking = false;
    this.countsItself = false;
    this.share = 0;
    this.#clock = new WalkClock();
  }

  /** Seconds walked since the stretch was begun, pauses left out; none before it was. */
  walkedS(nowMs: number): number {
    return this.#clock.walkedS(nowMs);
  }

  /** Beats at the pace of this strip, if steps were counted and a beat is wanted. */
  beat(panel: WalkPanel): void {
    const steps = panel.guide === 'strip' ? panel.strip.steps_per_min : panel.steps_per_min;
    if (steps !== null && settings.beat !== 'off') void beating.start(steps.value);
  }

  /** Looks at the clock, a few times a second. Answers whether the strip has counted itself. */
  look(panel: WalkPanel, nowMs: number): boolean {
    if (panel.paused !== null) return false;
    const courseS = panel.course.passed_s + (panel.course.is_running ? (nowMs - this.#cameMs) / 1000 : 0);
    if (panel.guide !== 'strip' && !this.#isNearSaid && isRefillSoon(panel.course, courseS)) {
      this.#isNearSaid = true;
      this.#sayNear(true);
    }
    if (!this.isWalking) return false;
    const walkedS = this.#clock.walkedS(nowMs);
    const stripS = panel.strip.seconds.value;
    this.share = stripS > 0 ? Math.min(1, walkedS / stripS) : 1;
    if (panel.guide === 'strip') {
      if (!this.countsItself || walkedS < stripS) return false;
      this.countsItself = false;
      return true;
    }
    if (walkedS >= stripS && !this.#isFirstStripOver) {
      this.#isFirstStripOver = true;
      if (settings.beat === 'first') beating.stop();
    }
    if (walkedS >= panel.until_last_strip.value && !this.#isNearSaid) {
      this.#isNearSaid = true;
      this.#sayNear(panel.refill_before_strip !== null);
    }
    return false;
  }

  /** The walk is left. */
  end(): void {
    beating.stop();
  }

  #arrive(panel: WalkPanel, isBack: boolean): void {
    this.#clock = new WalkClock();
    this.isWalking = false;
    this.countsItself = false;
    this.isLeftOver = false;
    this.share = 0;
    this.#isNearSaid = false;
    this.#isFirstStripOver = false;
    if (panel.guide !== 'strip') {
      beating.stop();
      sayAloud([word('walk-say-pass', { pass: panel.pass, of: panel.n_passes }), ...panel.notes.map(said)].join(' '));
      if (settings.beatByItself && panel.paused === null) this.begin(panel);
      return;
    }
    if (isBack) {
      // It was counted too early: the operator is still on this strip, and says when it is done.
      this.isWalking = true;
      this.isLeftOver = true;
      this.#clock.run(performance.now());
    } else if (settings.stripCount === 'one' && panel.paused === null) {
      this.begin(panel);
    } else {
      beating.stop();
    }
    sayAloud(stripWords(panel));
    if (panel.refill_before_strip === panel.strip.strip + 1) setTimeout(() => this.#sayNear(true), AFTER_TICK_MS);
    else if (panel.strip.strip === panel.strip.n_strips) setTimeout(() => this.#sayNear(false), AFTER_TICK_MS);
  }

  #sayNear(isRefill: boolean): void {
    signal(isRefill ? 'refill' : 'pass');
    sayAloud(word(isRefill ? 'walk-say-refill' : 'walk-say-pass-end'));
  }

  #hold(): void {
    if (this.#isHeld) return;
    this.#isHeld = true;
    this.#beatBefore = beating.stepsPerMin;
    this.#clock.hold(performance.now());
    beating.stop();
  }

  #goOn(): void {
    if (!this.#isHeld) return;
    this.#isHeld = false;
    if (this.isWalking) this.#clock.run(performance.now());
    if (this.#beatBefore !== null) void beating.start(this.#beatBefore);
  }
}

/** What is said aloud at the marker of a strip. */
function stripWords(panel: WalkPanel): string {
  const { strip } = panel;
  const words = [word('walk-say-strip', { strip: strip.strip, of: strip.n_strips, length: strip.length })];
  if (strip.towards) words.push(said(strip.towards));
  return [...words, ...strip.notes.map(said)].join(' ');
}
