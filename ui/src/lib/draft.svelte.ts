// A form that is never lost: what is typed goes to the core as a draft within 300 ms and is back when the page is
// opened again. A draft is not an entry: only saving makes one, and saving clears the draft in the same transaction.
import { askFor } from './backend';

/** How long after the last key a draft is written. Shorter than the 300 ms we promise. */
export const DRAFT_AFTER_MS = 200;

/** Lays a kept draft over an empty form: fields this version does not know are dropped, new ones stay empty. */
export function restored<T extends object>(empty: T, body: string | null): T | null {
  if (body === null) return null;
  try {
    const kept: unknown = JSON.parse(body);
    if (typeof kept !== 'object' || kept === null || Array.isArray(kept)) return null;
    const known = Object.entries(kept).filter(([name]) => name in empty);
    return { ...empty, ...Object.fromEntries(known) };
  } catch {
    return null;
  }
}

/**
 * What of a form a person typed or chose: a unit with no figure beside it, which a field offers by itself, is nothing.
 */
export function typedJson(form: unknown): string {
  return JSON.stringify(form, (_name, value: unknown) => {
    const isFigure = typeof value === 'object' && value !== null && 'text' in value && 'unit' in value;
    return isFigure && value.text === '' ? null : value;
  });
}

export class Draft<T extends object> {
  form: T;
  /** Whether the form was carried on from a draft. */
  isRestored = $state(false);
  isLoaded = $state(false);
  #written = '';
  /** What was typed in the form as it began: looking at a page is no draft. */
  #typedAtStart = '';
  #hasDraft = false;
  #timer: ReturnType<typeof setTimeout> | undefined;
  #isSettled = false;

  constructor(
    readonly key: string,
    initial: T,
    /** The part of the form that a person types; the rest only says where they were. */
    private readonly typedPart: (form: T) => unknown = (form) => form,
  ) {
    this.form = $state(initial);
    this.#begin();
  }

  /** Brings back what was typed before; `kept` is the saved entry to start from when there is no draft. */
  async load(kept?: T): Promise<void> {
    if (kept !== undefined) this.form = kept;
    this.#begin();
    const body = await askFor('draft', { ask: 'draft', key: this.key });
    const back = restored($state.snapshot(this.form) as T, body);
    if (back !== null) {
      this.form = back;
      this.#written = JSON.stringify(back);
      this.#hasDraft = true;
      this.isRestored = true;
    }
    this.isLoaded = true;
  }

  /** Call from an effect: writes the form soon if it differs from what was written last. */
  watch(): void {
    const body = JSON.stringify(this.form);
    if (!this.#isWaiting(body)) return;
    clearTimeout(this.#timer);
    this.#timer = setTimeout(() => void this.#write(body), DRAFT_AFTER_MS);
  }

  /** Writes at once whatever is still waiting: the page is being left. */
  flush(): void {
    const body = JSON.stringify(this.form);
    clearTimeout(this.#timer);
    if (this.#isWaiting(body)) void this.#write(body);
  }

  /** The entry was saved and its draft cleared with it: write no more. */
  settle(): void {
    this.#isSettled = true;
    clearTimeout(this.#timer);
  }

  /** What stands in the form has been written down for good; it may still be changed and written down again. */
  written(): void {
    clearTimeout(this.#timer);
    this.#begin();
  }

  /** Throws away what was typed and starts again from `kept`. */
  async throwAway(kept: T): Promise<void> {
    clearTimeout(this.#timer);
    await askFor('done', { ask: 'clear_draft', key: this.key });
    this.form = kept;
    this.#begin();
  }

  #begin(): void {
    this.#written = JSON.stringify(this.form);
    this.#typedAtStart = typedJson(this.typedPart(this.form));
    this.#hasDraft = false;
    this.isRestored = false;
  }

  #isWaiting(body: string): boolean {
    if (!this.isLoaded || this.#isSettled || body === this.#written) return false;
    return this.#hasDraft || typedJson(this.typedPart(this.form)) !== this.#typedAtStart;
  }

  async #write(body: string): Promise<void> {
    try {
      await askFor('done', { ask: 'put_draft', key: this.key, body });
      this.#written = body;
      this.#hasDraft = true;
    } catch {
      // The next key tries again; saving the form itself tells of a full or broken disk.
    }
  }
}
