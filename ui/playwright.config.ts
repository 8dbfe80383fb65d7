// Browser tests: the built screens, handed out by `evensward-serve`, in Debian's Chromium. Each test has a server and a
// data folder of its own, filled with the invented firm.
import { defineConfig } from '@playwright/test';
import { chromium, SIZES } from './browser/device';

export default defineConfig({
  testDir: 'browser',
  testMatch: '*.spec.ts',
  testIgnore: 'shots.spec.ts',
  outputDir: 'test-results',
  timeout: 120_000,
  expect: { timeout: 10_000 },
  workers: 2,
  fullyParallel: true,
  forbidOnly: true,
  reporter: 'list',
  use: { ...chromium, ...SIZES.phone, locale: 'en-GB', actionTimeout: 15_000, trace: 'retain-on-failure' },
});
