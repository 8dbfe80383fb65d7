// How long has been walked since the stretch was begun, pauses left out. By pass nobody taps strips, so the phone in the
// pouch can only tell by this time that the refill or the end of the pass is near. It is a hint and stands in no record.

/** Seconds walked in one stretch. */
export class WalkClock {
  #walkedS = 0;
  #sinceMs: number | null = null;

  get isBegun(): boolean {
    return this.#walkedS > 0 || this.#sinceMs !== null;
  }

  /** Begins, or goes on after a pause. */
  run(nowMs: number): void {
    this.#sinceMs ??= nowMs;
  }

  /** Stands still for a pause. */
  hold(nowMs: number): void {
    this.#walkedS = this.walkedS(nowMs);
    this.#sinceMs = null;
  }

  walkedS(nowMs: number): number {
    return this.#walkedS + (this.#sinceMs === null ? 0 : (nowMs - this.#sinceMs) / 1000);
  }
}
