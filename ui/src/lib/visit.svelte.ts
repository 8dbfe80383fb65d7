// A visit on screen. It holds the view that the core answered with last and nothing else: each act is sent with the
// state the screen saw, and the answer is drawn. A retry sends the same command id, so a tap can never count twice.
import { asTrouble, askFor, type Trouble } from './backend';
import type { Act } from './generated/Act';
import type { VisitView } from './generated/VisitView';
import { signal, type Signal } from './senses';

interface Command {
  commandId: string;
  expectedSeq: number;
  act: Act;
  draftKey: string | null;
  heard: Signal;
}

export class VisitSession {
  view = $state<VisitView | null>(null);
  trouble = $state<Trouble | null>(null);
  /** How many acts are on their way. */
  nUnderWay = $state(0);
  /** The state had moved on: what is drawn now is newer than what was tapped on. */
  wasStale = $state(false);
  #last: Command | undefined;
  #line: Promise<unknown> = Promise.resolve();

  constructor(readonly visitId: string) {}

  /** Asks for the visit as it stands. */
  async load(): Promise<void> {
    try {
      this.view = await askFor('visit', { ask: 'visit', visit_id: this.visitId });
    } catch (thrown) {
      this.trouble = asTrouble(thrown);
    }
  }

  /**
   * Does one thing, and clears the draft it was typed in with it. Taps that come while another is on its way stand in
   * line. Answers whether it was done; `heard` is what is heard and felt then.
   */
  act(act: Act, draftKey: string | null = null, heard: Signal = 'accepted'): Promise<boolean> {
    const turn = this.#line.then(() => {
      const expectedSeq = this.view?.seq ?? 0;
      this.#last = { commandId: crypto.randomUUID(), expectedSeq, act, draftKey, heard };
      return this.#send(this.#last);
    });
    this.#line = turn;
    return turn;
  }

  /** Sends the last command once more, with its own id. */
  async again(): Promise<boolean> {
    return this.#last === undefined ? false : this.#send(this.#last);
  }

  /** Puts the trouble away. */
  dismiss(): void {
    this.trouble = null;
    this.wasStale = false;
  }

  async #send(command: Command): Promise<boolean> {
    this.nUnderWay += 1;
    try {
      this.view = await askFor('visit', {
        ask: 'act',
        visit_id: this.visitId,
        command_id: command.commandId,
        expected_seq: command.expectedSeq,
        act: command.act,
        draft_key: command.draftKey,
      });
      this.dismiss();
      signal(command.act.act === 'pause' ? 'paused' : command.heard);
      return true;
    } catch (thrown) {
      signal('refused');
      const trouble = asTrouble(thrown);
      if (trouble.code === 'stale') {
        await this.load();
        this.wasStale = true;
      }
      this.trouble = trouble;
      return false;
    } finally {
      this.nUnderWay -= 1;
    }
  }
}
