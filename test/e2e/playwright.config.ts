// Stories in a real Chromium against the built editor, served as `npm start` serves it.
import { defineConfig } from '@playwright/test';

const port = Number(process.env['STORY_PORT'] ?? 4327);

export default defineConfig({
  testDir: '.',
  outputDir: '../../test-results/stories',
  fullyParallel: false,
  workers: 1,
  retries: 0,
  timeout: 90_000,
  expect: { timeout: 20_000 },
  reporter: [
    ['list'],
    ...(process.env['STORY_REPORT']
      ? [['json', { outputFile: process.env['STORY_REPORT'] }] as const]
      : [])
  ],
  use: {
    baseURL: `http://localhost:${port}/`,
    viewport: { width: 1440, height: 900 },
    deviceScaleFactor: 1,
    reducedMotion: 'reduce',
    // Only where a story is about it: each fresh browser would fetch the whole editor for later.
    serviceWorkers: 'block',
    launchOptions: {
      executablePath: process.env['CHROMIUM'] ?? '/usr/bin/chromium',
      args: [
        '--no-sandbox',
        '--disable-gpu',
        '--disable-quic',
        '--no-first-run',
        '--disable-background-networking',
        '--disable-component-update',
        '--disable-sync'
      ]
    }
  },
  webServer: {
    command: `node .config/cli.mjs serve --port ${port}`,
    cwd: '../..',
    url: `http://localhost:${port}/`,
    timeout: 180_000,
    reuseExistingServer: false
  }
});
