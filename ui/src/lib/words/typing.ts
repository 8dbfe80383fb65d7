// Figures on their way from a form to the trade, in a language whose decimal sign is the comma. There `1.200` is twelve
// hundred to whoever types it, and the trade, which reads a point as the decimal sign, would take it for a bit more than
// one. The trade refuses a comma before three digits, because nobody can know what it meant; so such a point is handed
// over as that comma, and what is never accepted is never kept: the field still shows what was typed.
import { LOCALES, spoken } from './spoken.svelte';

/** A point before exactly three digits that could set thousands apart. */
const GROUPED = /^(\s*[-\u2212]?\s*[1-9]\d{0,2})\.(\d{3}\s*)$/;

const hasDecimalComma = (locale: string): boolean =>
  new Intl.NumberFormat(locale).formatToParts(0.5).some(({ type, value }) => type === 'decimal' && value === ',');

function withoutGroups(asked: unknown): unknown {
  if (Array.isArray(asked)) return asked.map(withoutGroups);
  if (typeof asked !== 'object' || asked === null) return asked;
  const handed = Object.fromEntries(Object.entries(asked).map(([name, value]) => [name, withoutGroups(value)]));
  const isFigure = typeof handed['text'] === 'string' && 'unit' in handed;
  return isFigure ? { ...handed, text: (handed['text'] as string).replace(GROUPED, '$1,$2') } : handed;
}

/** A question as it is handed over: no figure in it can be read as a thousandth of what was meant. */
export function handedOver<T>(asked: T): T {
  return hasDecimalComma(LOCALES[spoken.language]) ? (withoutGroups(asked) as T) : asked;
}
