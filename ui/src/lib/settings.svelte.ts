// How this device likes to be looked at and heard. Nothing true lies here: losing it costs a tap.

/** Day is paper, dusk is moss; `auto` follows the device. */
export type Theme = 'auto' | 'day' | 'dusk';

const KEY = 'evensward-settings';

function read(): { theme: Theme; isMuted: boolean } {
  try {
    const kept: unknown = JSON.parse(localStorage.getItem(KEY) ?? '{}');
    const { theme, isMuted } = kept as { theme?: unknown; isMuted?: unknown };
    return { theme: theme === 'day' || theme === 'dusk' ? theme : 'auto', isMuted: isMuted === true };
  } catch {
    return { theme: 'auto', isMuted: false };
  }
}

class Settings {
  theme = $state<Theme>('auto');
  isMuted = $state(false);

  constructor() {
    Object.assign(this, read());
    this.#apply();
  }

  set(change: { theme?: Theme; isMuted?: boolean }): void {
    Object.assign(this, change);
    localStorage.setItem(KEY, JSON.stringify({ theme: this.theme, isMuted: this.isMuted }));
    this.#apply();
  }

  #apply(): void {
    if (this.theme === 'auto') delete document.documentElement.dataset['theme'];
    else document.documentElement.dataset['theme'] = this.theme;
  }
}

/** The one set of settings. */
export const settings = new Settings();
