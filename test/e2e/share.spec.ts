// Someone hands a chassis on: by a link, as files that other programs open, and takes a member's copy in.
import { readFileSync } from 'node:fs';
import type { Download, Page } from '@playwright/test';
import { asFile, callTool } from '../helpers/outside-tools.ts';
import { readShareLink } from '#storage/share-link.ts';
import { clean } from './clean.ts';
import { cellOf, expect, openFresh, test, typeInto, waitForDrawing } from './story.ts';

const bytesOf = async (download: Download): Promise<Buffer> => readFileSync(await download.path());

/** Presses something that saves a file, and gives the file's place. */
const savedBy = async (page: Page, testid: string): Promise<string> => {
  const download = page.waitForEvent('download');
  await page.getByTestId(testid).click();
  const file = await download;
  return asFile(await bytesOf(file), file.suggestedFilename());
};

const openHandOn = async (page: Page): Promise<void> => {
  await page.getByTestId('way-share').click();
  await page.getByTestId('make-link').waitFor();
};

test.setTimeout(120_000);

test('a chassis is handed on by a link that opens as it was, and overwrites nothing', async ({
  page,
  browser
}) => {
  await openFresh(page);
  await openHandOn(page);
  await clean(page, 'hand on', '[data-testid=hand-on]');
  await page.getByTestId('make-link').click();
  const link = await page.getByTestId('share-link').inputValue();
  expect(link.length).toBeLessThanOrEqual(32_000);
  await expect(page.getByTestId('link-long')).toBeVisible();
  const sent = readShareLink(new URL(link).hash);
  if (!sent?.ok) throw new Error('the link does not read');

  const other = await browser.newContext();
  const theirs = await other.newPage();
  await theirs.goto(link);
  await theirs.getByTestId('cautions-read').click();
  await theirs.getByTestId('row-128').waitFor();
  expect(new URL(theirs.url()).hash).toBe('');
  await waitForDrawing(theirs);
  await openHandOn(theirs);
  // Nothing private was in it, so that a file of it says the same, with the link as where it came from.
  const copy = JSON.parse(readFileSync(await savedBy(theirs, 'save-copy'), 'utf8')) as object;
  const { lineage: _, ...said } = JSON.parse(sent.text) as { lineage: unknown };
  expect(copy).toMatchObject(said);

  // What is changed of it is kept; the link opened once more stands beside that.
  await theirs.getByTestId('leaf-schedule').click();
  await typeInto(theirs, '1', 'colour', 'violet');
  await expect(theirs.getByRole('banner')).toContainText('kept in this browser');
  await theirs.goto(link);
  await theirs.reload();
  await theirs.getByTestId('row-128').waitFor();
  await theirs.goto(`${link.slice(0, 5000)}`);
  await expect(theirs.getByTestId('report')).toContainText('cut off');
  await theirs.getByTestId('report').getByRole('button', { name: 'Close' }).click();
  await theirs.getByTestId('file-menu').click();
  await theirs.getByTestId('kept').click();
  await expect(theirs.getByTestId('kept-dialog')).toContainText('Console 21-K');
  await other.close();
});

test('files come out that other programs open', async ({ page, browser }) => {
  await openFresh(page);
  await openHandOn(page);

  const pdf = await savedBy(page, 'save-drawing');
  const words = callTool('pdftotext', [pdf, '-']).toString();
  for (const word of ['Console 21-K', 'Lethal voltages', 'V10', 'not known'])
    expect(words).toContain(word);
  callTool('pdftoppm', ['-r', '30', '-png', '-singlefile', pdf, pdf.replace('.pdf', '')]);

  await page.getByTestId('drawing-view').selectOption({ label: 'To scale, from below' });
  await page.getByTestId('drawing-scale').selectOption({ label: '1 : 1, true size' });
  await page.getByTestId('preview-drawing').click();
  await expect(page.getByTestId('drawing-preview')).toBeVisible();
  await expect(page.getByText(/sheets of A4/)).toBeVisible();
  const board = await savedBy(page, 'save-drawing');
  expect(callTool('pdftotext', ['-l', '1', board, '-']).toString()).toContain('scale 1 : 1');

  await page.getByTestId('drawing-format').selectOption('png');
  const png = readFileSync(await savedBy(page, 'save-drawing'));
  // PNG (ISO/IEC 15948), 5.2 and 11.2.2: signature, then width and height.
  expect(png.subarray(1, 4).toString()).toBe('PNG');
  expect(Math.max(png.readUInt32BE(16), png.readUInt32BE(20))).toBeGreaterThan(3000);

  await page.getByTestId('drawing-format').selectOption('svg');
  await page.getByTestId('drawing-theme').selectOption('black');
  const svg = await savedBy(page, 'save-drawing');
  callTool('rsvg-convert', ['--width', '500', svg]);

  const csv = await savedBy(page, 'save-csv');
  const count =
    'import csv,sys; print(len(list(csv.DictReader(open(sys.argv[1], encoding="utf-8-sig")))))';
  expect(callTool('python3', ['-c', count, csv]).toString().trim()).toBe('129');
  const xlsx = await savedBy(page, 'save-xlsx');
  expect(callTool('unzip', ['-l', xlsx]).toString()).toContain('xl/workbook.xml');

  const onePage = await savedBy(page, 'save-page');
  expect(readFileSync(onePage).length).toBeLessThan(350_000);
  for (const viewport of [
    { width: 1440, height: 900 },
    { width: 390, height: 844 }
  ]) {
    const context = await browser.newContext({ viewport, offline: true });
    const reader = await context.newPage();
    const wrong: string[] = [];
    reader.on('console', (message) => wrong.push(message.text()));
    await reader.goto(`file://${onePage}`);
    await reader.locator('#stage[data-ready=Diagram]').waitFor();
    await reader.getByRole('searchbox', { name: 'Find' }).fill('V10');
    await reader.keyboard.press('Enter');
    await expect(reader.locator('#tag')).toContainText('V10');
    await reader.getByLabel('Colour by').selectOption('state');
    await reader.getByLabel('Show rows with').fill('second anode');
    await expect(reader.locator('#row-count')).toContainText(/^[1-9]\d? of 129 wires$/);
    expect(await reader.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBe(0);
    await clean(reader, `one-file page, ${viewport.width}`);
    expect(wrong).toEqual([]);
    await context.close();
  }
});

test("a member's copy is compared, marked and taken in", async ({ page }) => {
  await openFresh(page);
  await openHandOn(page);
  const file = await savedBy(page, 'save-copy');
  const copy = JSON.parse(readFileSync(file, 'utf8')) as {
    wires: Record<string, { number: string; found: { colour?: string } }>;
  };
  const theirs = Object.values(copy.wires);
  const numbered = (number: string) => theirs.find((wire) => wire.number === number)!;
  numbered('1').found.colour = 'violet';
  numbered('2').found.colour = 'pink';
  const changed = asFile(JSON.stringify(copy), 'from-a-member.chassis.json');

  await page.getByTestId('leaf-schedule').click();
  await typeInto(page, '2', 'colour', 'gray');
  await page.getByTestId('leaf-compare').click();
  await page.getByTestId('compare-file').setInputFiles(changed);
  await expect(page.getByTestId('changes-changed').getByRole('listitem')).toHaveCount(2);
  await expect(page.getByTestId('changes-changed')).toContainText('colour: “violet” instead of');
  await page.getByTestId('mark-drawing').check();
  await clean(page, 'compare', '[data-testid=compare]');
  await page.screenshot({ path: 'test-results/compare.png' });

  const clash = page.getByTestId('merge').getByRole('group', { name: 'wire 2: colour' });
  await clash.getByText('the other: “pink”').click();
  const undecided = page.getByTestId('merge').getByRole('group');
  for (const other of await undecided.all())
    if (!(await other.getByRole('radio', { checked: true }).count()))
      await other.getByText('the other:').click();
  await page.getByTestId('take-in').click();
  await expect(page.getByTestId('changes-changed')).toHaveCount(0);
  await page.getByTestId('leaf-schedule').click();
  await expect(cellOf(page, '1', 'colour')).toContainText('violet');
  await expect(cellOf(page, '2', 'colour')).toContainText('pink');
  await page.keyboard.press('Control+Z');
  await expect(cellOf(page, '2', 'colour')).toContainText('gray');
  await expect(cellOf(page, '1', 'colour')).not.toContainText('violet');
  await expect(page.locator('[data-differs=differs]').first()).toBeVisible();
});
