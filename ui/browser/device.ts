// The browser and the sizes of the tests.
const executablePath = process.env['EVENSWARD_CHROMIUM'] ?? '/usr/bin/chromium';

export const chromium = {
  browserName: 'chromium' as const,
  launchOptions: {
    executablePath,
    args: [
      '--no-sandbox',
      '--disable-gpu',
      '--disable-quic',
      '--no-first-run',
      '--disable-background-networking',
      '--disable-component-update',
      '--disable-sync',
    ],
  },
};

const touch = { hasTouch: true, isMobile: true, deviceScaleFactor: 1 } as const;

/** The smallest phone, a phone, and a window on a desk. */
export const SIZES = {
  small: { viewport: { width: 360, height: 740 }, ...touch },
  phone: { viewport: { width: 412, height: 915 }, ...touch },
  desk: { viewport: { width: 1280, height: 800 }, hasTouch: false, isMobile: false, deviceScaleFactor: 1 },
} as const;

export type SizeName = keyof typeof SIZES;

export const THEMES = { day: 'light', dusk: 'dark' } as const;

export type ThemeName = keyof typeof THEMES;
