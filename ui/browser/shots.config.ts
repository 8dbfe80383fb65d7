// `npm run shots`: a picture of every screen in each size and theme, to be looked at. Nothing is judged here.
import { defineConfig } from '@playwright/test';
import { chromium } from './device';

export default defineConfig({
  testDir: '.',
  testMatch: 'shots.spec.ts',
  outputDir: '../test-results',
  timeout: 240_000,
  workers: 2,
  fullyParallel: true,
  reporter: 'list',
  use: { ...chromium, locale: 'en-GB', actionTimeout: 15_000 },
});
