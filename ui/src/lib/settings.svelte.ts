// How this device likes to be looked at, heard and read. Nothing true lies here: losing it costs a tap.
import { speak } from './words';
import { deviceLanguage, isFullLanguage, spoken, type FullLanguage } from './words/spoken.svelte';

/** Day is paper, dusk is moss; `auto` follows the device. */
export type Theme = 'auto' | 'day' | 'dusk';

/** A language of the screens; `auto` follows the device. */
export type LanguageChoice = 'auto' | FullLanguage;

const KEY = 'evensward-settings';

interface Kept {
  theme: Theme;
  isMuted: boolean;
  language: LanguageChoice;
  /** Shows miles an hour, pints and yards beside the metric figures. */
  alsoCustomary: boolean;
}

const UNTOUCHED: Kept = { theme: 'auto', isMuted: false, language: 'auto', alsoCustomary: false };

function read(): Kept {
  try {
    const kept: unknown = JSON.parse(localStorage.getItem(KEY) ?? '{}');
    const { theme, isMuted, language, alsoCustomary } = kept as Partial<Record<keyof Kept, unknown>>;
    return {
      theme: theme === 'day' || theme === 'dusk' ? theme : 'auto',
      isMuted: isMuted === true,
      language: isFullLanguage(language) ? language : 'auto',
      alsoCustomary: alsoCustomary === true,
    };
  } catch {
    return UNTOUCHED;
  }
}

class Settings {
  theme = $state<Theme>(UNTOUCHED.theme);
  isMuted = $state(UNTOUCHED.isMuted);
  language = $state<LanguageChoice>(UNTOUCHED.language);
  alsoCustomary = $state(UNTOUCHED.alsoCustomary);

  constructor() {
    this.#take(read());
  }

  set(change: Partial<Kept>): void {
    this.#take(change);
    const { theme, isMuted, language, alsoCustomary } = this;
    localStorage.setItem(KEY, JSON.stringify({ theme, isMuted, language, alsoCustomary } satisfies Kept));
  }

  #take(change: Partial<Kept>): void {
    Object.assign(this, change);
    if (this.theme === 'auto') delete document.documentElement.dataset['theme'];
    else document.documentElement.dataset['theme'] = this.theme;
    spoken.alsoCustomary = this.alsoCustomary;
    if (change.language !== undefined) {
      speak(this.language === 'auto' ? deviceLanguage(navigator.languages) : this.language);
    }
  }
}

/** The one set of settings. */
export const settings = new Settings();
