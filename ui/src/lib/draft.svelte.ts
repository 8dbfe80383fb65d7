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

export class Draft<T extends object> {
  form: T;
  /** Whether the form was carried on from a draft. */
  isRestored = $state(false);
  isLoaded = $state(false);
  #written = '';
  #timer: ReturnType<typeof setTimeout> | undefined;
  #isSettled = false;

  constructor(
    readonly key: string,
    initial: T,
  ) {
    this.form = $state(initial);
    this.#written = JSON.stringify(initial);
  }

  /** Brings back what was typed before; `kept` is the saved entry to start from when there is no draft. */
  async load(kept?: T): Promise<void> {
    if (kept !== undefined) this.form = kept;
    this.#written = JSON.stringify(this.form);
    const body = await askFor('draft', { ask: 'draft', key: this.key });
    const back = restored($state.snapshot(this.form) as T, body);
    if (back !== null) {
      this.form = back;
      this.#written = JSON.stringify(back);
      this.isRestored = true;
    }
    this.isLoaded = true;
  }

  /** Call from an effect: writes the form soon if it differs from what was written last. */
  watch(): void {
    const body = JSON.stringify(this.form);
    if (!this.isLoaded || this.#isSettled || body === this.#written) return;
    clearTimeout(this.#timer);
    this.#timer = setTimeout(() => void this.#write(body), DRAFT_AFTER_MS);
  }

  /** Writes at once whatever is still waiting: the page is being left. */
  flush(): void {
    const body = JSON.stringify(this.form);
    clearTimeout(this.#timer);
    if (this.isLoaded && !this.#isSettled && body !== this.#written) void this.#write(body);
  }

  /** The entry was saved and its draft cleared with it: write no more. */
  settle(): void {
    this.#isSettled = true;
    clearTimeout(this.#timer);
  }

  /** What stands in the form has been written down for good; it may still be changed and written down again. */
  written(): void {
    clearTimeout(this.#timer);
    this.#written = JSON.stringify(this.form);
    this.isRestored = false;
  }

  /** Throws away what was typed and starts again from `kept`. */
  async throwAway(kept: T): Promise<void> {
    clearTimeout(this.#timer);
    await askFor('done', { ask: 'clear_draft', key: this.key });
    this.form = kept;
    this.#written = JSON.stringify(kept);
    this.isRestored = false;
  }

  async #write(body: string): Promise<void> {
    try {
      await askFor('done', { ask: 'put_draft', key: this.key, body });
      this.#written = body;
    } catch {
      // The next key tries again; saving the form itself tells of a full or broken disk.
    }
  }
}
