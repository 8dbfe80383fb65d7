// What was really measured for a fill, and from which containers; an empty figure is as planned.
import type { FillContainerInput } from '../../lib/generated/FillContainerInput';
import type { FillContainersView } from '../../lib/generated/FillContainersView';
import type { PartnerAmountInput } from '../../lib/generated/PartnerAmountInput';
import type { Typed } from '../../lib/generated/Typed';

export interface Measured {
  product: Typed;
  volume: Typed;
  partners: PartnerAmountInput[];
  /** The container that was touched for a product; empty for none of them. A product that is not named was not touched. */
  chosen: Record<string, string>;
  /** How much came from each container, where a product came from more than one. */
  amounts: FillContainerInput[];
}

/** Whether somebody says how much of a product came from each container. */
export const isSeveral = (measured: Measured, of: FillContainersView): boolean =>
  measured.amounts.some((one) => one.product_id === of.product_id && one.amount.text.trim() !== '');

/** The container that all of a product comes from: as touched, else the one to take first; empty for none of them. */
export function takenFrom(measured: Measured, of: FillContainersView): string {
  const touched = measured.chosen[of.product_id];
  const isThere = of.containers.some((container) => container.container_id === touched);
  if (touched === '' || (touched !== undefined && isThere)) return touched;
  return of.containers.find((container) => container.is_suggested)?.container_id ?? '';
}

/** The containers of a fill, as the trade is told of them. */
export function containersOf(measured: Measured, of: FillContainersView[]): FillContainerInput[] {
  return of.flatMap((product) => {
    if (isSeveral(measured, product)) {
      return measured.amounts.filter((one) => one.product_id === product.product_id && one.amount.text.trim() !== '');
    }
    const container_id = takenFrom(measured, product);
    const amount = { text: '', unit: product.wanted.unit };
    return container_id === '' ? [] : [{ product_id: product.product_id, container_id, amount }];
  });
}
