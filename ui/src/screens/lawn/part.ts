// What a piece of a lawn is called on the form: the grass itself, more grass, or the kind of thing that is taken out.
import type { PartInput } from '../../lib/generated/PartInput';
import { word } from '../../lib/words';

/** The heading over a piece of the lawn. */
export function partHeading(part: PartInput | undefined, idx: number): string {
  if (idx === 0) return word('part-first');
  const takenOut = part?.taken_out ?? null;
  return takenOut === null ? word('part-added', { n: idx + 1 }) : word('part-taken-out', { n: idx + 1 });
}
