// What a screen does with the lawns of a visit: moves them, and starts one with nothing chosen yet. What fits a lawn is the
// trade's to say.
import type { LaterChoice } from '../../lib/generated/LaterChoice';

/** A lawn of which nothing was chosen: the trade fills in what fits. */
export const nothingChosen = (lawnId: string): LaterChoice => ({
  lawn_id: lawnId,
  n_passes: 0,
  headings: [],
  start: '',
  narrow: '',
  angle_deg: 0,
  narrow_at: 'last',
  edge_first: false,
  applied: '',
  applied_on: '',
  survivors: '',
  sown_on: '',
  mown_on: '',
});

/** The same in another order: the one at `idx` moved by so many places. */
export function moved<T>(all: T[], idx: number, by: number): T[] {
  const one = all[idx];
  const to = idx + by;
  if (one === undefined || to < 0 || to >= all.length) return all;
  const rest = all.filter((_, at) => at !== idx);
  return [...rest.slice(0, to), one, ...rest.slice(to)];
}
