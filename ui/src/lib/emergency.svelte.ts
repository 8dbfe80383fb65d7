// One touch from everywhere. The words are fetched when a page opens and kept, so that they are there at once when they
// are wanted, with no signal and whatever else is stuck.
import { asTrouble, askFor, type Trouble } from './backend';
import type { EmergencyView } from './generated/EmergencyView';

class Emergency {
  isOpen = $state(false);
  view = $state<EmergencyView | null>(null);
  trouble = $state<Trouble | null>(null);

  #visitId: string | null = null;

  /** Fetches the words for this visit, or for every product kept. */
  async load(visitId: string | null): Promise<void> {
    this.#visitId = visitId;
    try {
      this.view = await askFor('emergency', { ask: 'emergency', visit_id: visitId });
      this.trouble = null;
    } catch (thrown) {
      this.trouble = asTrouble(thrown);
    }
  }

  open(): void {
    this.isOpen = true;
    // A product may have been chosen since: what was fetched before stays on the page until this is there.
    void this.load(this.#visitId);
  }

  close(): void {
    this.isOpen = false;
  }
}

/** The one emergency page. */
export const emergency = new Emergency();
