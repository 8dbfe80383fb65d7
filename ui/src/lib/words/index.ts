// Every word on screen comes from here: a code and its arguments in, a sentence out. A code the catalogue lacks is
// shown as ⟦code⟧, loudly, and never swallowed. Numbers keep the decimals and the unit the trade gave them: this file
// writes them out, it never works them out.
import { FluentBundle, FluentNumber, FluentResource, type FluentVariable } from '@fluent/bundle';
import type { Argument } from '../generated/Argument';
import type { Said } from '../generated/Said';
import type { Shown } from '../generated/Shown';
import { pseudo, pseudoTyped } from './pseudo';
import { LOCALES, spoken, type FullLanguage, type Language } from './spoken.svelte';

const CATALOGUES: Record<FullLanguage, Record<string, string>> = {
  en: import.meta.glob<string>('./en/*.ftl', { query: '?raw', import: 'default', eager: true }),
  de: import.meta.glob<string>('./de/*.ftl', { query: '?raw', import: 'default', eager: true }),
};

/** What a sentence may be given: plain values from a screen, or an argument from the core. */
export type Given = string | number | Shown | Argument;

const bundles = new Map<Language, FluentBundle>();
let missing = new Set<string>();

function makeBundle(language: Language): FluentBundle {
  const made = new FluentBundle(LOCALES[language], {
    useIsolating: false,
    ...(language === 'pseudo' ? { transform: pseudo } : {}),
  });
  for (const [file, text] of Object.entries(CATALOGUES[language === 'pseudo' ? 'en' : language])) {
    const errors = made.addResource(new FluentResource(text));
    if (errors.length > 0) throw new Error(`${file}: ${errors.map((error) => error.message).join('; ')}`);
  }
  return made;
}

/** The words of the language spoken now; whoever asks while drawing is drawn anew when the language changes. */
function bundle(): FluentBundle {
  const { language } = spoken;
  const made = bundles.get(language) ?? makeBundle(language);
  bundles.set(language, made);
  return made;
}

/** Chooses the language. Every sentence on the page is said anew at once, and the page says which language it is in. */
export function speak(chosen: Language): void {
  spoken.language = chosen;
  missing = new Set();
  if (typeof document !== 'undefined') document.documentElement.lang = LOCALES[chosen].slice(0, 2);
}

/** The tongue that the words are read aloud in. */
export const spokenTongue = (): string => LOCALES[spoken.language];

/** Codes asked for that the catalogue does not have. */
export const missingCodes = (): string[] => [...missing];

/** Whether the catalogue has this code. */
export const hasWord = (code: string): boolean => bundle().hasMessage(code);

/** The message id of a unit: a slash cannot stand in an id. */
export const unitCode = (unit: string): string => `unit-${unit.replaceAll('/', '-per-')}`;

/** A number with its decimals, in the language's own decimal sign, thousands set apart by a thin space. */
export function numberText(value: number, decimals: number): string {
  return new Intl.NumberFormat(LOCALES[spoken.language], {
    minimumFractionDigits: decimals,
    maximumFractionDigits: decimals,
  })
    .formatToParts(value)
    .map(({ type, value: part }) => (type === 'group' ? '\u202f' : type === 'minusSign' ? '\u2212' : part))
    .join('');
}

/** The unit's word for this many. */
export function unitText(unit: string, value = 2): string {
  if (unit === '' || unit === 'count') return '';
  // A share over one is plural: 1.1 times.
  return word(unitCode(unit), { n: Number.isInteger(value) ? value : 2 });
}

/** A figure with its unit, and its customary counterpart where that was asked for. */
export function figureText(shown: Shown): string {
  const beside = besideText(shown);
  return beside === '' ? metricText(shown) : `${metricText(shown)} (${beside})`;
}

/** The customary counterpart of a figure, if there is one and it was asked for. */
export function besideText({ beside }: Shown): string {
  return beside && (spoken.alsoCustomary || spoken.isPeeking) ? metricText(beside) : '';
}

/** A figure with its unit alone, kept together on one line: for pictures, where there is room for one. */
export function metricText(shown: Shown): string {
  const unit = unitText(shown.unit, shown.value);
  // The degree of an angle stands close to its figure; every other unit is set apart.
  if (shown.unit === 'deg') return `${numberText(shown.value, shown.decimals)}${unit}`;
  return unit === ''
    ? numberText(shown.value, shown.decimals)
    : `${numberText(shown.value, shown.decimals)}\u00a0${unit}`;
}

/** What a person wrote, shown as written. */
export const typed = (text: string): string => (spoken.language === 'pseudo' ? pseudoTyped(text) : text);

/** A local day, such as Tue 24 Nov 2026. */
export function dayText(date: string): string {
  const [year, month, day] = date.split('-').map(Number);
  if (year === undefined || month === undefined || day === undefined || Number.isNaN(day)) return typed(date);
  const at = Date.UTC(year, month - 1, day);
  return pseudoDate(
    new Intl.DateTimeFormat(LOCALES[spoken.language], {
      weekday: 'short',
      day: 'numeric',
      month: 'short',
      year: 'numeric',
      timeZone: 'UTC',
    }).format(at),
  );
}

/** An instant in its own local time. */
export function instantText(utcMs: number, offsetMin: number): string {
  return pseudoDate(
    new Intl.DateTimeFormat(LOCALES[spoken.language], {
      day: 'numeric',
      month: 'short',
      year: 'numeric',
      hour: '2-digit',
      minute: '2-digit',
      timeZone: 'UTC',
    }).format(utcMs + offsetMin * 60_000),
  );
}

const pseudoDate = (text: string): string => (spoken.language === 'pseudo' ? pseudo(text) : text);

/** A figure in a sentence: chosen by its value, written with its unit. */
class FigureInSentence extends FluentNumber {
  constructor(private readonly shown: Shown) {
    super(shown.value);
  }

  override toString(): string {
    return figureText(this.shown);
  }
}

/** A count in a sentence: chosen by its number, written like every other number. */
class CountInSentence extends FluentNumber {
  override toString(): string {
    return numberText(this.value, 0);
  }
}

function isArgument(given: Given): given is Argument {
  return typeof given === 'object' && 'kind' in given;
}

function variable(given: Given): FluentVariable {
  if (typeof given === 'string') return given;
  if (typeof given === 'number') return new CountInSentence(given);
  if (!isArgument(given)) return new FigureInSentence(given);
  switch (given.kind) {
    case 'number':
      return new FigureInSentence(given.value);
    case 'count':
      return new CountInSentence(given.value);
    default:
      return argumentText(given);
  }
}

/** A code as a word: of the catalogue, or a unit's. */
function codeText(code: string): string {
  return !hasWord(code) && hasWord(unitCode(code)) ? unitText(code) : word(code);
}

/** The word of a stage, whether it came as `walk` or as `stage-walk`. */
export const stageText = (stage: string): string => word(stage.startsWith('stage-') ? stage : `stage-${stage}`);

/** One argument by itself, as text. */
export function argumentText(argument: Argument): string {
  switch (argument.kind) {
    case 'number':
      return figureText(argument.value);
    case 'text':
      return typed(argument.value);
    case 'count':
      return numberText(argument.value, 0);
    case 'code':
      return codeText(argument.value);
    case 'date':
      return dayText(argument.value);
    case 'instant':
      return instantText(argument.value.utc_ms, argument.value.offset_min);
  }
}

/** A sentence of the catalogue. */
export function word(code: string, given: Record<string, Given> = {}): string {
  const words = bundle();
  const pattern = words.getMessage(code)?.value;
  if (pattern === null || pattern === undefined) return lacking(code);
  const variables = Object.fromEntries(Object.entries(given).map(([name, value]) => [name, variable(value)]));
  const errors: Error[] = [];
  const text = words.formatPattern(pattern, variables, errors);
  return errors.length > 0 ? lacking(`${code}: ${errors.map((error) => error.message).join('; ')}`) : text;
}

function lacking(code: string): string {
  missing.add(code);
  return `⟦${code}⟧`;
}

/** A sentence that the core said. */
export const said = (sentence: Said): string => word(sentence.code, sentence.args as Record<string, Given>);
