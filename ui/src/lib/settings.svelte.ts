// How this device likes to be looked at, heard and held. Nothing true lies here: losing it costs a touch. Each setting
// stands once, with what it may be and what it is at first; anything else that was kept is taken for what it is at first.

import { speak } from './words';
import { deviceLanguage, LANGUAGES, spoken } from './words/spoken.svelte';

const KEY = 'evensward-settings';

/** What one setting may be. */
interface Field<T> {
  first: T;
  is: (kept: unknown) => kept is T;
}

function oneOf<const T extends string>(choices: readonly T[], first: NoInfer<T>): Field<T> {
  return { first, is: (kept): kept is T => choices.some((choice) => choice === kept) };
}

function yesNo(first: boolean): Field<boolean> {
  return { first, is: (kept) => typeof kept === 'boolean' };
}

function whole(least: number, most: number, first: number): Field<number> {
  return {
    first,
    is: (kept): kept is number => typeof kept === 'number' && Number.isInteger(kept) && kept >= least && kept <= most,
  };
}

/** A language of the screens; `auto` follows the device. */
export const LANGUAGE_CHOICES = ['auto', ...LANGUAGES] as const;
/** Day is paper, dusk is moss; `auto` follows the device. */
export const THEMES = ['auto', 'day', 'dusk'] as const;
/** Whether pictures may move: as the device is set, or never. */
export const MOTIONS = ['auto', 'still'] as const;
export const HANDS = ['right', 'left'] as const;
export const FEET = ['left', 'right'] as const;
export const TIMBRES = ['wood', 'bell', 'drum'] as const;
/** How long the beat goes on: never, on the first strip of each pass, or all the way. */
export const BEATS = ['off', 'first', 'throughout'] as const;
/** What counts a strip: a touch at its beginning and at its end, one at its end, or the planned time. */
export const STRIP_COUNTS = ['two', 'one', 'time'] as const;
export const LOUDEST = 4;
/** Most steps to one stroke of the lever that can be chosen. */
export const MOST_STEPS_PER_STROKE = 12;

/** Every setting. */
const FIELDS = {
  language: oneOf(LANGUAGE_CHOICES, 'auto'),
  /** Shows miles an hour, pints and yards beside the metric figures. */
  alsoCustomary: yesNo(false),
  theme: oneOf(THEMES, 'auto'),
  motion: oneOf(MOTIONS, 'auto'),
  hand: oneOf(HANDS, 'right'),
  isMuted: yesNo(false),
  volume: whole(1, LOUDEST, 3),
  withVibration: yesNo(true),
  withVoice: yesNo(false),
  beat: oneOf(BEATS, 'first'),
  beatByItself: yesNo(false),
  timbre: oneOf(TIMBRES, 'wood'),
  firstFoot: oneOf(FEET, 'left'),
  stepsPerStroke: whole(0, MOST_STEPS_PER_STROKE, 0),
  stripCount: oneOf(STRIP_COUNTS, 'two'),
};

/** The settings as they are kept. */
export type Values = { [K in keyof typeof FIELDS]: (typeof FIELDS)[K]['first'] };

export type Theme = Values['theme'];

/** Reads what was kept; whatever is not there or not right is as at first. */
export function readSettings(text: string | null): Values {
  let kept: unknown;
  try {
    kept = JSON.parse(text ?? '{}');
  } catch {
    kept = {};
  }
  const of = (name: string): unknown =>
    typeof kept === 'object' && kept !== null ? (kept as Record<string, unknown>)[name] : undefined;
  return Object.fromEntries(
    Object.entries(FIELDS).map(([name, field]) => [name, field.is(of(name)) ? of(name) : field.first]),
  ) as Values;
}

/** Storage may be barred, or full: then what is chosen holds until the app is closed. */
function keptText(): string | null {
  try {
    return localStorage.getItem(KEY);
  } catch {
    return null;
  }
}

class Settings {
  #values = $state(readSettings(keptText()));

  constructor() {
    for (const name of Object.keys(FIELDS) as (keyof Values)[]) {
      Object.defineProperty(this, name, { get: () => this.#values[name] });
    }
    this.#apply();
    this.#speak();
  }

  set(change: Partial<Values>): void {
    Object.assign(this.#values, change);
    try {
      localStorage.setItem(KEY, JSON.stringify(this.#values));
    } catch {
      // What was chosen holds all the same, until the app is closed.
    }
    this.#apply();
    if (change.language !== undefined) this.#speak();
  }

  #speak(): void {
    const { language } = this.#values;
    speak(language === 'auto' ? deviceLanguage(typeof navigator === 'undefined' ? [] : navigator.languages) : language);
  }

  /** Words read the units, and stylesheets the rest off the page. */
  #apply(): void {
    spoken.alsoCustomary = this.#values.alsoCustomary;
    if (typeof document === 'undefined') return;
    const { dataset } = document.documentElement;
    const { theme, motion, hand } = this.#values;
    if (theme === 'auto') delete dataset['theme'];
    else dataset['theme'] = theme;
    if (motion === 'auto') delete dataset['motion'];
    else dataset['motion'] = motion;
    dataset['hand'] = hand;
  }
}

/** The one set of settings. */
export const settings = new Settings() as Settings & Readonly<Values>;
