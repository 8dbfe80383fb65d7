// The phone's back gesture on the walk. A page of its own is laid into the history, so that the first gesture only takes
// that one away and asks in a line whether to leave; the second one leaves. On a phone the shell's back button turns the
// same history back, so that one way serves both. Nothing that was recorded depends on it.

/** Marks the page that lies in the history for the gesture to take away. */
const GUARD = 'walk';

const isGuard = (state: unknown): boolean =>
  typeof state === 'object' && state !== null && (state as { guard?: unknown }).guard === GUARD;

export class Leaving {
  /** The gesture was made: whether to leave is asked. */
  isAsked = $state(false);

  /** Stands guard until what it answers with is called. */
  watch(): () => void {
    this.#lay();
    const back = (): void => {
      if (!isGuard(history.state)) this.isAsked = true;
    };
    window.addEventListener('popstate', back);
    return () => {
      window.removeEventListener('popstate', back);
      // The walk has gone on to another step: the gesture means again what it means everywhere.
      if (isGuard(history.state)) history.back();
    };
  }

  /** Stays on the walk: the next gesture asks again. */
  stay(): void {
    this.isAsked = false;
    this.#lay();
  }

  #lay(): void {
    if (!isGuard(history.state)) history.pushState({ guard: GUARD }, '', location.href);
  }
}
