// Nothing is lost: the browser killed in the middle of work, storage wiped and a zip opened, two windows on one
// chassis, a store that is full, an earlier state, and a file that is saved back to.
import { hashOfPicture } from '#document/index.ts';
import { buildChassisZip, readChassisZip } from '#storage/index.ts';
import { chromium, type Page } from '@playwright/test';
import { spawn, type ChildProcess } from 'node:child_process';
import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { chassis } from '../helpers/chassis.ts';
import { cellOf, expect, isKept, openFile, openFresh, openList, test, typeInto } from './story.ts';

const freshFolder = (): string => mkdtempSync(join(tmpdir(), 'chassis-'));
const notebook = 'test/cli/lists/notebook.csv';

/** A picture of the page's own making, as bytes: a canvas with a few strokes. */
const makePicture = async (page: Page): Promise<Uint8Array> => {
  const base64 = await page.evaluate(() => {
    const canvas = document.createElement('canvas');
    [canvas.width, canvas.height] = [40, 30];
    const context = canvas.getContext('2d');
    if (context === null) throw new Error('no canvas');
    context.fillStyle = '#a33';
    context.fillRect(5, 5, 20, 12);
    return canvas.toDataURL('image/png').split(',')[1] ?? '';
  });
  return new Uint8Array(Buffer.from(base64, 'base64'));
};

/** A zip of a small chassis with a photo of it. */
const writeZip = (png: Uint8Array): { path: string; bytes: Buffer } => {
  const hash = hashOfPicture(png);
  const bare = chassis('Photographed set')
    .unit('Main', { size: [300, 200] })
    .tube('V1', '6CG7')
    .strip('TS1', 4)
    .wire(1, 'V1-5', 'TS1-2')
    .build();
  const [unit = ''] = Object.keys(bare.units);
  const picture = { hash, type: 'image/png', width: 40, height: 30 } as const;
  const photo = { id: 'f1', order: 'a0', unit, name: 'Below', picture, face: 'below' } as const;
  const document = { ...bare, photos: { f1: photo } };
  const path = join(freshFolder(), 'photographed-set.chassis.zip');
  const zip = buildChassisZip([document], new Map([[hash, { bytes: png, type: 'image/png' }]]));
  writeFileSync(path, zip);
  return { path, bytes: Buffer.from(zip) };
};

const savedBytes = async (page: Page, menu: string, item: string): Promise<Buffer> => {
  const download = page.waitForEvent('download');
  if (menu !== '') await page.getByTestId(menu).click();
  await page.getByTestId(item).click();
  return readFileSync(await (await download).path());
};
const wipe = async (page: Page): Promise<void> => {
  await page.evaluate(async () => {
    const names = (await indexedDB.databases()).map(({ name }) => name ?? '');
    await Promise.all(
      names.map(
        (name) =>
          new Promise((resolve) => {
            const wish = indexedDB.deleteDatabase(name);
            wish.onsuccess = wish.onerror = wish.onblocked = resolve;
          })
      )
    );
  });
};

test('the browser is killed in mid-edit: at most the last second is missing', async ({
  baseURL
}) => {
  test.setTimeout(180_000);
  const profile = freshFolder();
  const port = 9300 + (process.pid % 500);
  const start = async (): Promise<{ process: ChildProcess; page: Page }> => {
    const executable = process.env['CHROMIUM'] ?? '/usr/bin/chromium';
    const started = spawn(
      executable,
      [
        '--headless',
        '--no-sandbox',
        '--disable-gpu',
        '--disable-quic',
        '--no-first-run',
        '--disable-background-networking',
        '--disable-component-update',
        '--disable-sync',
        '--window-size=1440,900',
        `--remote-debugging-port=${port}`,
        `--user-data-dir=${profile}`,
        'about:blank'
      ],
      // A group of its own, so that it can be killed with all that it started.
      { detached: true, stdio: 'ignore' }
    );
    await expect
      .poll(
        () =>
          fetch(`http://127.0.0.1:${port}/json/version`).then(
            () => true,
            () => false
          ),
        {
          timeout: 60_000
        }
      )
      .toBe(true);
    const browser = await chromium.connectOverCDP(`http://127.0.0.1:${port}`);
    const [context] = browser.contexts();
    if (!context) throw new Error('no window');
    const page = context.pages()[0] ?? (await context.newPage());
    await page.addInitScript(() => {
      Reflect.deleteProperty(globalThis, 'showOpenFilePicker');
    });
    await page.goto(baseURL ?? '');
    return { process: started, page };
  };
  const kill = async ({ process: started }: { process: ChildProcess }): Promise<void> => {
    const ended = new Promise((resolve) => started.once('exit', resolve));
    if (started.pid !== undefined) process.kill(-started.pid, 'SIGKILL');
    await ended;
  };

  const first = await start();
  try {
    await first.page.getByTestId('cautions-read').click();
    await openList(first.page, notebook);
    await typeInto(first.page, '5', 'colour', 'blue/white');
    await expect(cellOf(first.page, '5', 'colour')).toHaveText('blue/white');
    await first.page.waitForTimeout(1000);
    // What could not be read, and what stands in an open cell, is older than a second too.
    await typeInto(first.page, '4', 'carries', 'lots');
    await cellOf(first.page, '7', 'colour').dblclick();
    await first.page.keyboard.press('Control+A');
    await first.page.keyboard.type('yellow with a bro');
    await first.page.waitForTimeout(1000);
    // Within the last second: these may be missing.
    await first.page.keyboard.type('wn');
  } finally {
    await kill(first);
  }
  const second = await start();
  try {
    await expect(second.page.locator('[role=row][data-wire]')).toHaveCount(12);
    await expect(cellOf(second.page, '5', 'colour')).toHaveText('blue/white');
    const field = cellOf(second.page, '7', 'colour').getByRole('textbox');
    await expect(field).toHaveValue(/^yellow with a bro/);
    await expect(second.page.getByTestId('notice')).toContainText('in its place again');
    await field.press('Escape');
    await expect(cellOf(second.page, '4', 'carries')).toContainText('lots');
  } finally {
    await kill(second);
  }
});

test('zip out, storage wiped, zip in: the same document and pictures', async ({ page }) => {
  await openFresh(page);
  const { path, bytes } = writeZip(await makePicture(page));
  await openFile(page, path);
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Photographed set');
  await isKept(page);
  const out = await savedBytes(page, 'file-menu', 'save');
  expect(out.equals(bytes)).toBe(true);

  await page.goto('about:blank');
  await page.goto('./');
  await wipe(page);
  await page.reload();
  await expect(page.getByRole('heading', { level: 1 })).not.toHaveText('Photographed set');
  const again = join(freshFolder(), 'again.chassis.zip');
  writeFileSync(again, out);
  await openFile(page, again);
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Photographed set');
  await expect(page.getByTestId('report')).toBeHidden();
  const back = await savedBytes(page, 'file-menu', 'save');
  expect(back.equals(bytes)).toBe(true);
  expect(readChassisZip(new Uint8Array(back), 'x')).toMatchObject({ ok: true, notes: [] });
});

test('a zip whose picture is missing opens, and says which', async ({ page }) => {
  await openFresh(page);
  const { bytes } = writeZip(await makePicture(page));
  const reading = readChassisZip(new Uint8Array(bytes), 'x');
  if (!reading.ok) throw new Error('the zip does not open');
  const path = join(freshFolder(), 'alone.chassis.json');
  writeFileSync(path, reading.documents[0]?.bytes ?? '');
  await openFile(page, path);
  await expect(page.getByTestId('report')).toContainText('the picture of “Below” is missing');
});

test('two windows: the second follows, and takes over by a click', async ({ page, context }) => {
  await openFresh(page);
  await openList(page, notebook);
  await isKept(page);
  const second = await context.newPage();
  await second.goto('./');
  await expect(second.getByTestId('keep-line')).toContainText('open in another window');
  await typeInto(page, '5', 'colour', 'blue/white');
  await expect(cellOf(second, '5', 'colour')).toHaveText('blue/white');
  // It changes nothing, and says why.
  await typeInto(second, '5', 'colour', 'red');
  await expect(second.locator('.row.why')).toContainText('open in another window');
  await second.keyboard.press('Escape');
  await second.screenshot({ path: 'test-results/second-window.png' });
  await second.getByTestId('keep-take-over').click();
  await expect(second.getByTestId('keep-line')).toBeEmpty();
  await expect(page.getByTestId('keep-line')).toContainText('open in another window');
  await typeInto(second, '6', 'colour', 'green');
  await expect(cellOf(page, '6', 'colour')).toHaveText('green');
  // The seat falls free when its window is closed.
  await second.close();
  await expect(page.getByTestId('keep-line')).toBeEmpty();
  await typeInto(page, '6', 'colour', 'brown');
  await isKept(page);
});

for (const colorScheme of ['light', 'dark'] as const) {
  test.describe(colorScheme, () => {
    test.use({ colorScheme });

    test('a full store is told, and the work is kept all the same', async ({ page }) => {
      await openFresh(page);
      await openList(page, notebook);
      await isKept(page);
      await page.evaluate(() => {
        // What a browser throws when the disk is full: Indexed Database API 3.0 (W3C).
        const { put } = IDBObjectStore.prototype;
        Object.assign(globalThis, { putBefore: put });
        IDBObjectStore.prototype.put = () => {
          throw new DOMException('no room', 'QuotaExceededError');
        };
      });
      await typeInto(page, '5', 'colour', 'blue/white');
      await expect(page.getByTestId('keep-line')).toContainText('the browser has no room left');
      await page.screenshot({ path: `test-results/not-kept-${colorScheme}.png` });
      const saved = await savedBytes(page, '', 'keep-save-a-file');
      expect(saved.toString('utf8')).toContain('"blue"');
      await page.evaluate(() => {
        const { putBefore } = globalThis as unknown as { putBefore: IDBObjectStore['put'] };
        IDBObjectStore.prototype.put = putBefore;
      });
      await page.getByTestId('keep-try-again').click();
      await expect(page.getByTestId('keep-line')).toBeEmpty();
      await page.reload();
      await expect(cellOf(page, '5', 'colour')).toHaveText('blue/white');
    });

    test('many chassis: rename, duplicate, remove and put back, all in one file', async ({
      page
    }) => {
      await openFresh(page);
      const { path } = writeZip(await makePicture(page));
      await openFile(page, path);
      await isKept(page);
      await openList(page, notebook);
      await expect(page.locator('[data-testid=sheet][data-ready=yes]')).toHaveCount(1);
      await isKept(page);
      await page.waitForTimeout(1500);
      await page.getByTestId('file-menu').click();
      await page.getByTestId('kept').click();
      const dialog = page.getByTestId('kept-dialog');
      await expect(dialog.getByText('12 wires: all found')).toBeVisible();
      await dialog.getByRole('button', { name: 'Duplicate Photographed set' }).click();
      await expect(dialog.getByText('Photographed set, copy')).toBeVisible();
      await dialog.getByRole('button', { name: 'Rename Photographed set, copy' }).click();
      await page.keyboard.type('Second set');
      await page.keyboard.press('Enter');
      await expect(dialog.getByText('Second set')).toBeVisible();
      await page.screenshot({ path: `test-results/kept-list-${colorScheme}.png` });
      await dialog.getByRole('button', { name: 'Remove Second set' }).click();
      await expect(dialog.getByText('Second set is removed.')).toBeVisible();
      await page.screenshot({ path: `test-results/kept-removed-${colorScheme}.png` });
      await page.getByTestId('put-back').click();
      await expect(dialog.getByRole('button', { name: 'Open Second set' })).toBeVisible();
      const all = await savedBytes(page, '', 'save-all');
      const reading = readChassisZip(new Uint8Array(all), 'all');
      expect(reading.ok && [reading.documents.length, reading.pictures.size]).toEqual([3, 1]);

      await page.goto('about:blank');
      await page.goto('./');
      await wipe(page);
      await page.reload();
      const archive = join(freshFolder(), 'all.chassis.zip');
      writeFileSync(archive, all);
      await openFile(page, archive);
      await expect(dialog.locator('li[data-testid^=kept-]')).toHaveCount(3);
      await page.setViewportSize({ width: 390, height: 844 });
      await page.screenshot({ path: `test-results/kept-list-phone-${colorScheme}.png` });
    });
  });
}

test('a window that keeps nothing says so, and gives the work as a file', async ({ page }) => {
  await page.addInitScript(() => {
    // As a browser that refuses: Indexed Database API 3.0 (W3C).
    IDBFactory.prototype.open = () => {
      throw new DOMException('not here', 'SecurityError');
    };
  });
  await openFresh(page);
  const { path, bytes } = writeZip(await makePicture(page));
  await openFile(page, path);
  await expect(page.getByTestId('keep-line')).toContainText('does not let this page keep anything');
  await page.setViewportSize({ width: 390, height: 844 });
  await page.screenshot({ path: 'test-results/keeps-nothing-phone.png' });
  const out = await savedBytes(page, '', 'keep-save-a-file');
  expect(out.equals(bytes)).toBe(true);
});

test('going back to an earlier state is a step that can be undone', async ({ page }) => {
  await openFresh(page);
  await openList(page, notebook);
  await isKept(page);
  const before = await cellOf(page, '5', 'colour').textContent();
  await typeInto(page, '5', 'colour', 'blue/white');
  await isKept(page);
  await page.getByTestId('file-menu').click();
  await page.getByTestId('states').click();
  const dialog = page.getByTestId('states-dialog');
  await expect(dialog).toContainText('wire 5 changed: colour');
  await page.screenshot({ path: 'test-results/states.png' });
  await dialog
    .getByRole('button', { name: /^Go back/ })
    .first()
    .click();
  await expect(cellOf(page, '5', 'colour')).toHaveText(before ?? '');
  await page.getByTestId('undo').click();
  await expect(cellOf(page, '5', 'colour')).toHaveText('blue/white');
});

test('a file is saved back to where it lies, and a broken save leaves it as it was', async ({
  page
}) => {
  await openFresh(page);
  // A file of the page's own disk stands for one that was chosen: the same handles, without the dialog.
  await page.evaluate(async () => {
    const root = await navigator.storage.getDirectory();
    const handle = await root.getFileHandle('mine.chassis.json', { create: true });
    let asked = 0;
    Object.assign(globalThis, {
      showSaveFilePicker: async () => {
        asked += 1;
        Object.assign(globalThis, { asked });
        return handle;
      }
    });
  });
  // What was taken hold of just before the editor put the new file in its place can be read no more: take hold again.
  const read = (): Promise<string> =>
    page.evaluate(async () => {
      const root = await navigator.storage.getDirectory();
      for (;;) {
        const file = await (await root.getFileHandle('mine.chassis.json')).getFile();
        try {
          return await file.text();
        } catch (error) {
          if (!(error instanceof DOMException && error.name === 'NotReadableError')) throw error;
        }
      }
    });
  await openList(page, notebook);
  await page.keyboard.press('Control+s');
  await expect(page.getByTestId('notice')).toContainText('mine.chassis.json saved');
  const first = await read();
  expect(first).toContain('"format"');
  await typeInto(page, '5', 'colour', 'blue/white');
  await page.keyboard.press('Control+s');
  await expect.poll(read).not.toBe(first);
  const second = await read();
  expect(await page.evaluate(() => (globalThis as unknown as { asked: number }).asked)).toBe(1);
  // On the next visit the file is known still: nothing is asked.
  await isKept(page);
  await page.reload();
  await typeInto(page, '5', 'colour', 'white');
  await page.keyboard.press('Control+s');
  await expect(page.getByTestId('notice')).toContainText('mine.chassis.json saved');
  const third = await read();
  expect(third).not.toBe(second);
  await page.evaluate(() => {
    FileSystemWritableFileStream.prototype.write = () =>
      Promise.reject(new Error('the disk was pulled out'));
  });
  await typeInto(page, '6', 'colour', 'green');
  await page.keyboard.press('Control+s');
  await expect(page.getByTestId('notice')).toContainText('the disk was pulled out');
  expect(await read()).toBe(third);
});

test('the drawing of a chassis that was laid out before is there at once', async ({ page }) => {
  await openFresh(page);
  await openList(page, notebook);
  await expect(page.locator('[data-testid=sheet][data-ready=yes]')).toHaveCount(1, {
    timeout: 60_000
  });
  await isKept(page);
  await page.waitForTimeout(500);
  // With no layout worker to be had, only what was kept can be drawn.
  await page.addInitScript(() => {
    Object.assign(globalThis, {
      Worker: function () {
        throw new Error('no worker');
      }
    });
  });
  await page.reload();
  await expect(page.locator('[data-testid=sheet][data-ready=yes]')).toHaveCount(1, {
    timeout: 10_000
  });
  await expect(page.locator('[role=row][data-wire]')).toHaveCount(12);
});
