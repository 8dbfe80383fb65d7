// What was really measured for a fill; an empty figure is as planned.
import type { PartnerAmountInput } from '../../lib/generated/PartnerAmountInput';
import type { Typed } from '../../lib/generated/Typed';

export interface Measured {
  product: Typed;
  volume: Typed;
  partners: PartnerAmountInput[];
}
