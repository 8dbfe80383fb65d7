// Asks the trade what it makes of a form while it is typed. Only the answer to the newest question is drawn: an older
// one that comes late is dropped.
import { asTrouble, type Trouble } from './backend';

/** How long after the last key a preview is asked for. */
export const PREVIEW_AFTER_MS = 120;

export class Preview<Form, View> {
  view = $state.raw<View | null>(null);
  trouble = $state<Trouble | null>(null);
  #timer: ReturnType<typeof setTimeout> | undefined;
  #newest = 0;

  constructor(private readonly askAbout: (form: Form) => Promise<View>) {}

  /** Asks soon. */
  soon(form: Form): void {
    clearTimeout(this.#timer);
    this.#timer = setTimeout(() => void this.now(form), PREVIEW_AFTER_MS);
  }

  /** Asks now. */
  async now(form: Form): Promise<void> {
    clearTimeout(this.#timer);
    const turn = ++this.#newest;
    try {
      const view = await this.askAbout(form);
      if (turn !== this.#newest) return;
      this.view = view;
      this.trouble = null;
    } catch (thrown) {
      if (turn === this.#newest) this.trouble = asTrouble(thrown);
    }
  }
}
