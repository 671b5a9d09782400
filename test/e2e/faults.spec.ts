// What breaks while people work, one fault after the other: the work goes on, the words are plain, and
// nothing that was recorded is lost.
import { Buffer } from 'node:buffer';
import type { Page } from '@playwright/test';
import {
  cellOf,
  expect,
  isKept,
  openFresh,
  openList,
  test,
  typeInto,
  waitForDrawing
} from './story.ts';

const notebook = 'test/cli/lists/notebook.csv';

test('a layout that dies or hangs is told and begun anew; the work goes on meanwhile', async ({
  page
}) => {
  await openFresh(page);
  // As a worker that ends by a fault of its own: HTML Living Standard, 10.2.5, runtime script errors in workers.
  await page.route('**/layout-worker*', (route) =>
    route.fulfill({
      contentType: 'text/javascript',
      body: 'onmessage = () => { throw new Error("out of memory"); };'
    })
  );
  await page.reload();
  await openList(page, notebook);
  const strip = page.getByRole('status').filter({ hasText: 'could not be laid out' });
  await expect(strip).toContainText('perhaps for want of memory');
  await typeInto(page, '5', 'colour', 'blue/white');
  await expect(cellOf(page, '5', 'needs')).not.toBeEmpty();

  await page.unroute('**/layout-worker*');
  await page.route('**/layout-worker*', (route) =>
    route.fulfill({ contentType: 'text/javascript', body: 'onmessage = () => { for (;;); };' })
  );
  await page.getByRole('button', { name: 'Lay out again' }).click();
  await typeInto(page, '6', 'colour', 'green');
  await expect(cellOf(page, '6', 'colour')).toHaveText('green');
  await page.getByTestId('stop-layout').click();
  await expect(page.getByText('The layout was stopped')).toBeVisible();

  await page.unroute('**/layout-worker*');
  await page.getByRole('button', { name: 'Lay out again' }).click();
  await waitForDrawing(page);
  await expect(cellOf(page, '5', 'colour')).toHaveText('blue/white');
});

const laterFile = {
  format: 'underchassis',
  version: 99,
  id: 'd000000001',
  lineage: [],
  identity: { title: 'Set of a later day' },
  policy: {},
  units: {},
  parts: {},
  wires: {},
  cables: {},
  supports: {},
  photos: {},
  patterns: {},
  callouts: {},
  shelf: {},
  smells: { w1: 'of burnt wax' }
};

test('a file of a newer version can be looked at and not changed, and keeps what it does not know', async ({
  page
}) => {
  await openFresh(page);
  const chosen = page.waitForEvent('filechooser');
  await page.getByTestId('file-menu').click();
  await page.getByTestId('open').click();
  await (
    await chosen
  ).setFiles({
    name: 'later.chassis.json',
    mimeType: 'application/json',
    buffer: Buffer.from(JSON.stringify(laterFile))
  });
  await expect(page.getByTestId('report')).toContainText('newer version (99)');
  await page.getByTestId('report').getByRole('button', { name: 'Close' }).click();
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Set of a later day');
  // Typing is refused in words.
  const row = page.locator('[data-row=new][data-column=from]');
  await row.click();
  await page.keyboard.type('V1-1');
  await page.keyboard.press('Enter');
  await expect(page.getByTestId('notice')).toContainText('newer version');
  await expect(page.getByTestId('keep-line')).toContainText('can be looked at');
  await page.screenshot({ path: 'test-results/later-version.png' });
  await page.keyboard.press('Escape');
  const download = page.waitForEvent('download');
  await page.getByTestId('file-menu').click();
  await page.getByTestId('save').click();
  const saved = await (await download).createReadStream();
  const text = (await saved.toArray()).join('');
  expect(JSON.parse(text)).toMatchObject({ version: 99, smells: { w1: 'of burnt wax' } });
});

/** Takes everything away that the page has kept, as a browser does that needs room. */
const clearStorage = async (page: Page): Promise<void> => {
  const session = await page.context().newCDPSession(page);
  const origin = new URL(page.url()).origin;
  await session.send('Storage.clearDataForOrigin', { origin, storageTypes: 'all' });
};

test('storage that the browser clears under the open page loses nothing', async ({ page }) => {
  await openFresh(page);
  await openList(page, notebook);
  await isKept(page);
  await clearStorage(page);
  await typeInto(page, '5', 'colour', 'blue/white');
  await expect(page.getByRole('banner')).toContainText(/kept in this browser/);
  await page.waitForTimeout(1500);
  await page.reload();
  await expect(cellOf(page, '5', 'colour')).toHaveText('blue/white');
});

test('a clock that is set back mixes nothing up', async ({ page }) => {
  await openFresh(page);
  await openList(page, notebook);
  await typeInto(page, '5', 'colour', 'blue/white');
  await isKept(page);
  await page.addInitScript(() => {
    const now = Date.now.bind(Date);
    Date.now = () => now() - 400 * 24 * 3600 * 1000;
  });
  await page.reload();
  await expect(cellOf(page, '5', 'colour')).toHaveText('blue/white');
  await typeInto(page, '6', 'colour', 'green');
  await isKept(page);
  await page.reload();
  await expect(cellOf(page, '6', 'colour')).toHaveText('green');
  await expect(cellOf(page, '5', 'colour')).toHaveText('blue/white');
  await page.getByTestId('file-menu').click();
  await page.getByTestId('states').click();
  await expect(page.getByTestId('states-dialog')).toContainText('wire 5 changed: colour');
});

test('a tab that crashes comes back with all but the last second', async ({ page, context }) => {
  await openFresh(page);
  await openList(page, notebook);
  await typeInto(page, '5', 'colour', 'blue/white');
  await isKept(page);
  const session = await context.newCDPSession(page);
  const crashed = page.waitForEvent('crash');
  // The tab is gone before it could answer.
  void session.send('Page.crash').catch(() => undefined);
  await crashed;
  const next = await context.newPage();
  await next.goto('./');
  await expect(cellOf(next, '5', 'colour')).toHaveText('blue/white');
  // The seat of the crashed tab is free: this one may write.
  await typeInto(next, '6', 'colour', 'green');
  await isKept(next);
});

test('a picture whose worker dies is told by name, and the next one comes in', async ({ page }) => {
  await openFresh(page);
  await page.route('**/photo-worker*', (route) =>
    route.fulfill({ contentType: 'text/javascript', body: 'throw new Error("out of memory");' })
  );
  const picture = await page.evaluate(async () => {
    const canvas = document.createElement('canvas');
    [canvas.width, canvas.height] = [60, 40];
    canvas.getContext('2d')?.fillRect(5, 5, 20, 12);
    return canvas.toDataURL('image/png').split(',')[1] ?? '';
  });
  const drop = (name: string): Promise<void> =>
    page.evaluate(
      ([base64 = '', file = '']) => {
        const bytes = Uint8Array.from(atob(base64), (sign) => sign.charCodeAt(0));
        const transfer = new DataTransfer();
        transfer.items.add(new File([bytes], file, { type: 'image/png' }));
        document.body.dispatchEvent(
          new DragEvent('drop', { bubbles: true, cancelable: true, dataTransfer: transfer })
        );
      },
      [picture, name]
    );
  await drop('one.png');
  await expect(page.getByTestId('photo-problems')).toContainText('one.png');
  await expect(page.getByTestId('photo-problems')).toContainText('ran out of memory');
  await page.unroute('**/photo-worker*');
  await drop('two.png');
  await expect(page.getByTestId('photo-row')).toHaveCount(1);
});
