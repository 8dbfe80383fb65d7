// What a clicker, a keyboard and a glove have in common: one key for the one thing to do next, one for taking back.
// A key held down counts once, and a second press right after the first is a bounce, not a wish.

/** What a key asks for. */
export type KeyWish = 'forward' | 'back' | null;

const FORWARD = new Set([' ', 'Enter', 'PageDown', 'ArrowRight', 'ArrowDown']);
const BACK = new Set(['PageUp', 'ArrowLeft', 'ArrowUp']);

/** What of a key press and of what has the focus decides. */
export interface Press {
  key: string;
  isRepeat: boolean;
  hasModifier: boolean;
  /** Role of the focused element: where typing or choosing goes on, keys belong to it. */
  focus: 'none' | 'main' | 'button' | 'typing';
}

/** Reads a key press. Space and Enter on some other button press that button, as everywhere. */
export function wishOf(press: Press): KeyWish {
  if (press.isRepeat || press.hasModifier || press.focus === 'typing') return null;
  const isPress = press.key === ' ' || press.key === 'Enter';
  if (isPress && press.focus === 'button') return null;
  if (FORWARD.has(press.key)) return 'forward';
  if (BACK.has(press.key)) return 'back';
  return null;
}

/** Where the focus is, as far as keys care. */
export function focusOf(element: Element | null, main: Element | null): Press['focus'] {
  if (element === null || element === document.body) return 'none';
  if (element === main) return 'main';
  // A finger leaves the focus on the box that it ticked, where nobody sees it: the next key is not meant for that box.
  if (element.matches('[type="checkbox"], [type="radio"]') && !element.matches(':focus-visible')) return 'none';
  if (element.matches('input, select, textarea, [role="radio"], [contenteditable="true"]')) return 'typing';
  if (element.matches('button, a, summary, [role="checkbox"]')) return 'button';
  return 'none';
}

/** The least time between two taps that both count. */
export const BOUNCE_MS = 500;

/** Tells taps from bounces. */
export class Bounce {
  #lastMs = Number.NEGATIVE_INFINITY;

  /** Whether a tap at this moment counts. */
  counts(nowMs: number): boolean {
    if (nowMs - this.#lastMs < BOUNCE_MS) return false;
    this.#lastMs = nowMs;
    return true;
  }
}
