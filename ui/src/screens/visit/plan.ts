// What the plan's choices and the sides of the lawn have to do with one another: which side is walked along, and what a
// side is called. Angles come from the trade and are only compared.
import type { DirectionView } from '../../lib/generated/DirectionView';
import type { PlanChoice } from '../../lib/generated/PlanChoice';
import type { SideDrawing } from '../../lib/generated/SideDrawing';
import { said, word } from '../../lib/words';

/** Whether the strips run along this side. */
export const isAlong = (choice: PlanChoice, side: SideDrawing): boolean =>
  choice.headings[0] !== 'across' && Math.abs(choice.angle_deg - side.along_deg) < 1e-6;

/** What a side is called; pieces after the first say which piece they are. */
export function sideName(side: SideDrawing): string {
  const name = side.name ? said(side.name) : '';
  return side.part_idx === 0 ? name : word('side-of-part', { side: name, n: side.part_idx + 1 });
}

/** What a direction is called. */
export function directionName(direction: DirectionView): string {
  if (direction.side) return word('direction-along', { side: said(direction.side) });
  if (direction.angle_deg === 0) return word('direction-straight');
  if (direction.angle_deg === 90) return word('direction-side-to-side');
  return word('direction-angle', { angle: { value: direction.angle_deg, unit: 'deg', decimals: 0 } });
}
