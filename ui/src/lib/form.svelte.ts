// What a form knows about its fields: what the trade said is wrong, and which fields the operator has left once, so
// that nobody is scolded for what they have not typed yet. Fields find it through Svelte's context.
import { getContext, setContext, tick } from 'svelte';
import { SvelteSet } from 'svelte/reactivity';
import type { FieldProblem } from './generated/FieldProblem';
import type { Said } from './generated/Said';

const KEY = Symbol('form');

/** How long after a field was left it is said what is wrong with it: longer than a preview takes. */
export const SAID_AFTER_MS = 350;

export class FormState {
  problems = $state.raw<FieldProblem[]>([]);
  /** Saving was tried: from now on every problem is shown. */
  isTried = $state(false);
  #left = new SvelteSet<string>();

  /**
   * The operator left this field. What is wrong with it is said a moment later: by then the trade has answered to the
   * last key, and no line pushes the page under a finger that is just coming down on the next thing.
   */
  leave(path: string): void {
    setTimeout(() => this.#left.add(path), SAID_AFTER_MS);
  }

  /** What is wrong with this field, if it should be said now. */
  problemAt(path: string): Said | null {
    if (!this.isTried && !this.#left.has(path)) return null;
    return this.problems.find((problem) => problem.field === path)?.said ?? null;
  }

  /** Problems at fields that no field of the form claims, so that none is swallowed. */
  others(claimed: (path: string) => boolean): FieldProblem[] {
    return this.isTried ? this.problems.filter((problem) => !claimed(problem.field)) : [];
  }

  /** Saving was tried and refused: show all, and lead to the first field that is wrong. */
  refuse(problems: FieldProblem[]): void {
    this.problems = problems;
    this.isTried = true;
    void this.showFirst();
  }

  /** Says everything that is wrong, and leads to the first of it, be it a field or a line that belongs to none. */
  async showFirst(): Promise<void> {
    this.isTried = true;
    await tick();
    const wrong = '[aria-invalid="true"], [data-invalid="true"]';
    const first = document.querySelector<HTMLElement>(wrong) ?? document.querySelector<HTMLElement>('[data-problem]');
    let fold = first?.closest('details');
    while (fold) {
      fold.open = true;
      fold = fold.parentElement?.closest('details');
    }
    first?.focus({ preventScroll: true });
    first?.scrollIntoView({ block: 'center' });
  }
}

/** Makes the form that the fields below will find. */
export function makeForm(): FormState {
  return setContext(KEY, new FormState());
}

/** The form around a field. */
export const theForm = (): FormState => getContext<FormState>(KEY);
