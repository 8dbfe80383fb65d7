// Steps a typed figure up and down for a thumb. What was typed is only replaced when it is a number; otherwise it
// stays, for the trade to say what is wrong with it.

/** The figure after one step, never below nothing. */
export function stepped(text: string, step: number, decimals: number): string {
  const value = Number(text.trim().replace(',', '.'));
  if (text.trim() === '' || !Number.isFinite(value)) return text;
  return Math.max(0, value + step).toFixed(Math.max(decimals, 1));
}
