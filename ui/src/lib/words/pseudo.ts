// The pseudo-language of the tests: every word of the catalogue comes out accented and in square brackets, so that a
// word typed into a screen instead of the catalogue stands out bare. What a person wrote is set in angle brackets.
const ACCENTED: Record<string, string> = {
  a: 'á',
  e: 'é',
  i: 'í',
  o: 'ó',
  u: 'ú',
  y: 'ý',
  A: 'Á',
  E: 'É',
  I: 'Í',
  O: 'Ó',
  U: 'Ú',
};

/** A word of the catalogue, made to stand out. Text without letters stays as it is. */
export function pseudo(text: string): string {
  if (!/\p{L}/u.test(text)) return text;
  const [, before = '', inner = '', after = ''] = /^(\s*)(.*?)(\s*)$/su.exec(text) ?? [];
  return `${before}[${inner.replace(/[aeiouyAEIOU]/g, (letter) => ACCENTED[letter] ?? letter)}]${after}`;
}

/** What a person wrote, set apart from the catalogue's words. */
export const pseudoTyped = (text: string): string => (text === '' ? '' : `⟨${text}⟩`);
