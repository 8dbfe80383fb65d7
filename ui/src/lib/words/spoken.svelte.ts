// Which language the screens speak now, and whether figures stand in customary units too. It is a state of Svelte's, so that every sentence on a page is said anew the moment
// another language is chosen, and nothing that was typed meanwhile is lost.

/** The languages that the screens can speak in full, each with a folder of its own beside this file. */
export const LANGUAGES = ['en', 'de'] as const;

/** A language with a catalogue of its own. */
export type FullLanguage = (typeof LANGUAGES)[number];

/** What the screens can speak. `pseudo` is for tests. */
export type Language = FullLanguage | 'pseudo';

/** How numbers and days are written in each. */
export const LOCALES: Record<Language, string> = { en: 'en-GB', de: 'de-DE', pseudo: 'en-GB' };

/** Whether this is the name of a language that can be chosen. */
export const isFullLanguage = (name: unknown): name is FullLanguage => LANGUAGES.some((language) => language === name);

/** The first of the device's languages that the screens can speak; English when there is none. */
export function deviceLanguage(languages: readonly string[]): FullLanguage {
  const primary = languages.map((tag) => tag.toLowerCase().split('-')[0]);
  return primary.find(isFullLanguage) ?? 'en';
}

class Spoken {
  /** The language spoken now; `speak` changes it. */
  language = $state<Language>('en');
  /** Figures are written with their customary counterpart: asked for everywhere by a setting. */
  alsoCustomary = $state(false);
  /** The same, for as long as the page at hand is looked at. */
  isPeeking = $state(false);
}

/** How sentences and figures are said now. */
export const spoken = new Spoken();
