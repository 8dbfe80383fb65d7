// Which answer of the trade belongs to which row of a repeated test: rows that are not filled in yet have none.
import type { Typed } from '../../lib/generated/Typed';
import { numberText, unitText } from '../../lib/words';

/** The place of a row's answer among the answers; -1 while the row is not filled in. */
export function resultIdx(rows: Typed[][], idx: number): number {
  const isFilled = (row: Typed[] | undefined): boolean => row?.every((figure) => figure.text.trim() !== '') ?? false;
  return isFilled(rows[idx]) ? rows.slice(0, idx).filter(isFilled).length : -1;
}

/** How far a row lies from the mean, with its sign. */
export const offText = (offPercent: number): string =>
  `${offPercent > 0 ? '+' : ''}${numberText(offPercent, 1)}\u00a0${unitText('percent')}`;

/** The row that the watch fills: the first without a time, else the last. */
export function rowToTime(rows: { time: Typed }[]): number {
  const next = rows.findIndex((row) => row.time.text === '');
  return next === -1 ? rows.length - 1 : next;
}
