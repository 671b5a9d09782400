import { sveltekit } from '@sveltejs/kit/vite';
import { defineConfig } from 'vitest/config';

export default defineConfig({
  plugins: [sveltekit()],
  build: { target: 'es2023', chunkSizeWarningLimit: 1700 },
  test: {
    include: ['test/**/*.test.ts'],
    exclude: ['test/e2e/**', 'test/bench/**'],
    environment: 'node',
    testTimeout: 60_000
  }
});
