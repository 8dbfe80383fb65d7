// The form of a lawn while it is open: what is typed, what the trade makes of it, and what is asked for besides. Pages
// and modes of the form share it; none of them keeps a copy.
import { untrack } from 'svelte';
import { asTrouble, askFor, type Trouble } from '../../lib/backend';
import { Draft } from '../../lib/draft.svelte';
import type { PointM } from '../../lib/drawing';
import { emptyClient, emptyLawn } from '../../lib/forms';
import type { ClientInput } from '../../lib/generated/ClientInput';
import type { FileView } from '../../lib/generated/FileView';
import type { ImportedView } from '../../lib/generated/ImportedView';
import type { Kept } from '../../lib/generated/Kept';
import type { LawnInput } from '../../lib/generated/LawnInput';
import type { LawnView } from '../../lib/generated/LawnView';
import { everySide, isSpokenOf, sidesOfOffsets, wholeLawn } from '../../lib/lawn';
import { Preview } from '../../lib/preview.svelte';

export interface LawnForm {
  lawn: LawnInput;
  /** `none`, `new`, or a client's id. */
  whose: string;
  client: ClientInput;
  newClientId: string;
}

const empty = (): LawnForm => ({
  lawn: emptyLawn(),
  whose: 'none',
  client: emptyClient(),
  newClientId: crypto.randomUUID(),
});

export class LawnSession {
  readonly draft: Draft<LawnForm>;
  /** The form that each answer was asked about. */
  readonly #askedOf = new WeakMap<LawnView, string>();
  readonly preview = new Preview<LawnInput, LawnView>(async (input) => {
    const view = await askFor('lawn', { ask: 'preview_lawn', input });
    this.#askedOf.set(view, JSON.stringify(input));
    return view;
  });
  clients = $state<Kept<ClientInput>[]>([]);
  kept = $state<LawnForm | null>(null);
  trouble = $state<Trouble | null>(null);
  isBusy = $state(false);
  /** Ends the walk round that is under way, if one is. */
  stopWalk = $state.raw<(() => void) | null>(null);
  /** What was drawn last: a form that makes no lawn just now must not take the picture away. */
  lastView = $state.raw<LawnView | null>(null);
  /** Steps of drawing by hand that can be taken back, and the form as the drawing was left. */
  steps = $state.raw<LawnInput[]>([]);
  #leftAs = '';
  /** The form that the view in hand answers, where it came by another way than a preview. */
  #answered = '';
  /** How many sides each part last had when it made a shape. */
  #nSides = new Map<number, number>();
  #isRescued = false;

  constructor(readonly lawnId: string) {
    this.draft = new Draft<LawnForm>(`lawn:${lawnId}`, empty(), ({ lawn, whose, client }) => ({
      lawn: { ...lawn, origin: null, sides: lawn.sides.filter(isSpokenOf) },
      whose,
      client,
    }));
  }

  get lawn(): LawnInput {
    return this.draft.form.lawn;
  }

  get view(): LawnView | null {
    return this.preview.view;
  }

  /** What is drawn: the lawn as it is typed, or else as it was when it last was one. */
  get seen(): LawnView | null {
    return this.view?.drawing ? this.view : this.lastView;
  }

  async load(): Promise<void> {
    try {
      this.clients = await askFor('clients', { ask: 'clients' });
      try {
        const saved = await askFor('lawn', { ask: 'lawn', lawn_id: this.lawnId });
        this.kept = { ...empty(), lawn: wholeLawn(saved.input), whose: saved.input.client_id ?? 'none' };
      } catch (thrown) {
        if (asTrouble(thrown).code !== 'not_found') throw thrown;
      }
      await this.draft.load(this.#start());
      this.draft.form.lawn = wholeLawn($state.snapshot(this.draft.form.lawn));
    } catch (thrown) {
      this.trouble = asTrouble(thrown);
    }
  }

  #start(): LawnForm | undefined {
    return this.kept ? structuredClone($state.snapshot(this.kept)) : undefined;
  }

  /** Call from an effect: asks about the form when it changed. */
  watch(): void {
    const input = $state.snapshot(this.lawn);
    if (JSON.stringify(input) !== this.#answered) this.preview.soon(input);
  }

  /** Call from an effect: a line for each side that the answer lists, and the place that a first walk round sets. */
  follow(): void {
    if (this.view === null) return;
    if (this.view.drawing) this.lastView = this.view;
    else void this.#rescue();
    // An answer to an older form says nothing of where this one lies, nor how many sides it has.
    const isOfNow = this.#askedOf.get(this.view) === JSON.stringify($state.snapshot(this.lawn));
    const { origin } = this.view.input;
    if (isOfNow && origin !== null && JSON.stringify(origin) !== JSON.stringify(this.lawn.origin))
      this.lawn.origin = origin;
    const known = $state.snapshot(this.lawn.sides);
    const views = $state.snapshot(this.view.parts);
    const before = this.#nSides;
    const parts = $state.snapshot(this.lawn.parts);
    const shaped = views.flatMap((part, idx) =>
      isOfNow && part.sides.length > 0 && parts[idx]?.way === 'offsets' ? [[idx, part.sides.length] as const] : [],
    );
    this.#nSides = new Map([...before, ...shaped]);
    const sides = everySide(sidesOfOffsets(known, parts, before, this.#nSides), views);
    if (JSON.stringify(sides) !== JSON.stringify(known)) this.lawn.sides = sides;
  }

  /** Opened on a form that makes no lawn, the first piece alone may still make one: that much is drawn. */
  async #rescue(): Promise<void> {
    if (this.#isRescued || untrack(() => this.lastView) !== null) return;
    this.#isRescued = true;
    const input = $state.snapshot(this.lawn);
    const blank = { ...input, parts: input.parts.slice(0, 1), sides: [], slope: emptyLawn().slope };
    try {
      const view = await this.previewed(blank);
      if (this.lastView === null && view.drawing) this.lastView = view;
    } catch (thrown) {
      this.preview.trouble = asTrouble(thrown);
    }
  }

  /** Drawing by hand goes on where it was left, unless something was typed since. */
  drawBegins(): void {
    if (JSON.stringify($state.snapshot(this.lawn)) !== this.#leftAs) this.steps = [];
  }

  drawEnds(): void {
    this.#leftAs = JSON.stringify($state.snapshot(this.lawn));
  }

  /** Takes a form and what the trade makes of it, both at once. */
  take(view: LawnView): void {
    this.#answered = JSON.stringify(view.input);
    this.draft.form.lawn = view.input;
    this.preview.view = view;
  }

  /** What the trade makes of another form than the one that is open. */
  previewed(input: LawnInput): Promise<LawnView> {
    return askFor('lawn', { ask: 'preview_lawn', input });
  }

  /** Draws what the trade makes of a form that is on its way already, such as one whose things are dragged. */
  draw(view: LawnView): void {
    this.#answered = JSON.stringify(view.input);
    this.preview.view = view;
  }

  /** Asks what becomes of the form when a corner is moved. */
  moved(input: LawnInput, partIdx: number, cornerIdx: number, to: PointM, snap: boolean): Promise<LawnView> {
    return askFor('moved', { ask: 'move_corner', input, part_idx: partIdx, corner_idx: cornerIdx, to, snap });
  }

  /** What a file holds for a part, laid beside what lies on the lawn already. */
  imported(kind: string, text: string, partIdx: number): Promise<ImportedView> {
    const lawn = $state.snapshot(this.lawn);
    return askFor('imported', { ask: 'import_outline', kind, text, lawn, part_idx: partIdx });
  }

  exported(): Promise<FileView> {
    return askFor('file', { ask: 'export_lawn', lawn_id: this.lawnId });
  }

  async throwAway(): Promise<void> {
    this.#nSides = new Map();
    this.lastView = null;
    await this.draft.throwAway(this.#start() ?? empty());
  }

  /** Keeps the lawn; answers whether it was kept. */
  async save(): Promise<boolean> {
    if (this.isBusy) return false;
    this.isBusy = true;
    this.trouble = null;
    try {
      const { whose, client, newClientId } = this.draft.form;
      if (whose === 'new') {
        await askFor('done', { ask: 'save_client', client_id: newClientId, input: client, draft_key: null });
      }
      const clientId = whose === 'none' ? null : whose === 'new' ? newClientId : whose;
      await askFor('lawn', {
        ask: 'save_lawn',
        lawn_id: this.lawnId,
        input: { ...this.lawn, client_id: clientId },
        draft_key: this.draft.key,
      });
      this.draft.settle();
      return true;
    } catch (thrown) {
      this.trouble = asTrouble(thrown);
      return false;
    } finally {
      this.isBusy = false;
    }
  }
}
