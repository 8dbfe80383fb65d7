// Steps a typed figure up and down for a thumb. What was typed is only replaced when it is a number; otherwise it
// stays, for the trade to say what is wrong with it.

/** The figure after one step, never below nothing, with the decimal sign that it had. */
export function stepped(text: string, step: number, decimals: number): string {
  const plain = text.replace(/[\s\u202f]/gu, '');
  const value = Number(plain.replace(',', '.'));
  if (plain === '' || !Number.isFinite(value)) return text;
  const made = Math.max(0, value + step).toFixed(Math.max(decimals, 1));
  return plain.includes(',') ? made.replace('.', ',') : made;
}
