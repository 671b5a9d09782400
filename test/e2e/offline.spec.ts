// Without a network after the first visit, and a newer version that waits for a yes.
import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { startServer } from '../../src/cli/commands/serve.ts';
import { cellOf, expect, isKept, openList, test, typeInto, waitForDrawing } from './story.ts';

// A server of this story's own, which can be ended and can serve a newer version at the same address.
const folder = mkdtempSync(join(tmpdir(), 'chassis-site-'));
cpSync('build/site', folder, { recursive: true });
const port = Number(process.env['STORY_PORT'] ?? 4327) + 100;
test.use({ serviceWorkers: 'allow', baseURL: `http://localhost:${port}/` });
test.afterAll(() => rmSync(folder, { recursive: true, force: true }));

test('the editor opens without a network, and a newer version waits for a yes', async ({
  page
}) => {
  const first = await startServer(folder, 'localhost', port);
  await page.goto('./');
  await page.getByTestId('cautions-read').click();
  await page.getByTestId('guide-done').click();
  await page.evaluate(async () => {
    const { active } = await navigator.serviceWorker.ready;
    if (active?.state === 'activated') return;
    await new Promise((done) => active?.addEventListener('statechange', done));
  });
  await typeInto(page, '5', 'colour', 'blue/white');
  await isKept(page);
  await page.goto('about:blank');
  await first.close();

  // No server: the book opens, draws anew what it has never drawn, and the sums work.
  await page.goto('./');
  await expect(cellOf(page, '5', 'colour')).toHaveText('blue/white');
  await openList(page, 'test/intake/lists/console-comma.csv');
  await waitForDrawing(page);
  await page.goto('./sums');
  await expect(page.getByRole('heading', { name: 'Sums', level: 1 })).toBeVisible();

  // The same address serves a newer version.
  const worker = join(folder, 'service-worker.js');
  writeFileSync(worker, `${readFileSync(worker, 'utf8')}\n// a newer version\n`);
  const second = await startServer(folder, 'localhost', port);
  await page.goto('./');
  await expect(page.getByTestId('update-line')).toContainText('opens when you say so');
  await typeInto(page, '1', 'colour', 'violet');
  const reloaded = page.waitForEvent('load');
  await page.getByTestId('update-now').click();
  await reloaded;
  await expect(cellOf(page, '1', 'colour')).toHaveText('violet');
  await expect(page.getByTestId('update-line')).toHaveCount(0);
  await second.close();
});
