// Keeping what a form holds: one try at a time, and whatever stands against it is said and led to.
import { untrack } from 'svelte';
import { asTrouble, type Trouble } from './backend';
import type { FormState } from './form.svelte';
import type { FieldProblem } from './generated/FieldProblem';

export class Keeping {
  trouble = $state.raw<Trouble | null>(null);
  isBusy = $state(false);
  readonly #form: FormState;

  constructor(form: FormState) {
    this.#form = form;
  }

  /** Loads what the form starts from. */
  async load(doing: () => Promise<void>): Promise<void> {
    try {
      await doing();
      this.trouble = null;
    } catch (thrown) {
      this.trouble = asTrouble(thrown);
    }
  }

  /** Tries to keep it; a try under way is not begun again. `onrefused` may first turn to where the wrong field stands. */
  async keep(
    doing: () => Promise<void>,
    onrefused: (problems: FieldProblem[]) => void = () => undefined,
  ): Promise<void> {
    if (this.isBusy) return;
    this.isBusy = true;
    this.trouble = null;
    try {
      await doing();
    } catch (thrown) {
      this.trouble = asTrouble(thrown);
      onrefused(this.trouble.problems);
      this.#form.refuse(this.trouble.problems);
    } finally {
      this.isBusy = false;
    }
  }

  /** What the trade says of the form while it is typed. Once all is put right, the note about a refusal would be untrue. */
  hear(problems: FieldProblem[]): void {
    this.#form.problems = problems;
    if (problems.length === 0) untrack(() => this.trouble?.problems.length && (this.trouble = null));
  }
}
