// Times the canvas in Chromium: bundles the page of the bench, opens it, and hands back what it measured.
import { join } from 'node:path';
import { chromium } from '@playwright/test';
import { build } from 'vite';

const flags =
  '--no-sandbox --disable-gpu --disable-quic --no-first-run --disable-background-networking --disable-component-update --disable-sync';

/** @param {string} top the top of the tree @param {string} outDir from the top, for the page's script */
export const timeCanvas = async (top, outDir) => {
  const folder = join(top, outDir);
  await build({
    root: top,
    configFile: false,
    logLevel: 'error',
    publicDir: false,
    define: { 'process.env.NODE_ENV': '"production"' },
    build: {
      outDir: folder,
      emptyOutDir: false,
      minify: false,
      lib: {
        entry: join(top, 'test/bench/canvas/page.ts'),
        formats: ['iife'],
        name: 'canvasBench',
        fileName: () => 'canvas-page.js'
      }
    }
  });
  const browser = await chromium.launch({
    executablePath: process.env['CHROMIUM'] ?? '/usr/bin/chromium',
    args: flags.split(' ')
  });
  try {
    const page = await browser.newPage({ viewport: { width: 1200, height: 800 } });
    const wrong = [];
    page.on('pageerror', (error) => wrong.push(error.message));
    await page.goto('about:blank');
    await page.addScriptTag({ path: join(folder, 'canvas-page.js') });
    if (wrong.length > 0) throw new Error(`the page of the bench: ${wrong.join('; ')}`);
    return await page.evaluate('window.timeCanvas()');
  } finally {
    await browser.close();
  }
};
