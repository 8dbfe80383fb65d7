// How the screens are built and unit-tested. The output is plain files that the shell embeds and `evensward-serve`
// hands out; nothing is fetched from elsewhere when they run.
import { svelte } from '@sveltejs/vite-plugin-svelte';
import { defineConfig } from 'vitest/config';

export default defineConfig({
  plugins: [svelte()],
  build: {
    target: 'es2022',
    // The shell's content policy allows no inline data as a font, so fonts stay files.
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
  },
  server: { port: 5173, strictPort: true },
  test: {
    include: ['src/**/*.test.ts'],
    environment: 'node',
  },
});
