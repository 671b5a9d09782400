// A restorer's first evening: look round the demonstration, open an own list, correct it, take the
// drawing and the schedule away, and find it all again the next day.
import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import {
  cellOf,
  exported,
  expect,
  openFile,
  openFresh,
  openList,
  test,
  typeInto,
  waitForDrawing
} from './story.ts';

test('first visit: the demonstration, its cautions, and a wire picked everywhere', async ({
  page
}) => {
  await page.goto('./');
  await expect(page.getByRole('dialog')).toContainText(/picture tube/i);
  await expect(page.getByRole('dialog')).toContainText(/local codes/i);
  await page.getByTestId('cautions-read').click();
  await waitForDrawing(page);
  expect(await page.locator('[role=row][data-wire]').count()).toBeGreaterThan(20);
  await page.getByTestId('note-1').click();
  await expect(page.getByTestId('tag')).toContainText('25 kV');
  await expect(page.locator('[role=row][aria-selected=true]')).toHaveCount(1);
  await page.screenshot({ path: 'test-results/first-visit.png' });
});

test('an edit is judged at once, undone and done again', async ({ page }) => {
  await openFresh(page);
  const needs = cellOf(page, '8', 'needs');
  await expect(needs).toHaveText(/300/);
  await typeInto(page, '8', 'carries', '285 V dc');
  await expect(needs).toHaveText(/600/);
  await page.getByTestId('undo').click();
  await expect(needs).toHaveText(/300/);
  await page.getByTestId('redo').click();
  await expect(needs).toHaveText(/600/);
});

test('a cell that cannot be read says why and keeps what was typed', async ({ page }) => {
  await openFresh(page);
  const before = await cellOf(page, '8', 'carries').textContent();
  await typeInto(page, '8', 'carries', 'lots of volts');
  await expect(page.locator('.row.why')).toContainText(/not taken/);
  await expect(cellOf(page, '8', 'carries')).toHaveText('lots of volts');
  await page.getByRole('button', { name: 'Put back' }).click();
  await expect(cellOf(page, '8', 'carries')).toHaveText(before ?? '');
});

test('a spreadsheet comes in, drawing and schedule go out, the drawing opens again', async ({
  page
}) => {
  await openFresh(page);
  await openFile(page, 'test/cli/lists/notebook.csv');
  await expect(page.getByTestId('intake')).toContainText('"abc"');
  await page.getByTestId('intake-take').click();
  await expect(page.locator('[role=row][data-wire]')).toHaveCount(12);
  await waitForDrawing(page);

  const csv = await exported(page, 'export-menu', 'export-csv');
  expect(csv.split('\r\n').filter(Boolean)).toHaveLength(13);
  const svg = await exported(page, 'export-menu', 'export-svg');
  expect(svg).toMatch(/<svg /);
  const path = join(mkdtempSync(join(tmpdir(), 'chassis-')), 'taken-away.svg');
  writeFileSync(path, svg);

  await openFile(page, 'static/demonstrations/five-tube-radio.chassis.json');
  await expect(page.locator('[role=row][data-wire]').first()).toBeVisible();
  await waitForDrawing(page);
  await openFile(page, path);
  await expect(page.locator('[role=row][data-wire]')).toHaveCount(12);
  expect(await exported(page, 'export-menu', 'export-csv')).toBe(csv);
});

test('a broken file is refused whole, with its problems, and nothing is lost', async ({ page }) => {
  await openFresh(page);
  const title = await page.getByRole('heading', { level: 1 }).textContent();
  const broken = JSON.parse(
    readFileSync('static/demonstrations/five-tube-radio.chassis.json', 'utf8')
  ) as { wires: Record<string, { found: { awg?: unknown } }> };
  const [wire] = Object.values(broken.wires);
  if (wire) wire.found.awg = 'thick';
  const path = join(mkdtempSync(join(tmpdir(), 'chassis-')), 'broken.chassis.json');
  writeFileSync(path, JSON.stringify(broken));
  await openFile(page, path);
  await expect(page.getByRole('dialog')).toContainText('awg');
  await page.keyboard.press('Escape');
  await expect(page.getByRole('heading', { level: 1 })).toHaveText(title ?? '');
});

test('what was typed is there again after the browser was closed', async ({ page }) => {
  await openFresh(page);
  await openList(page, 'test/cli/lists/notebook.csv');
  await typeInto(page, '5', 'colour', 'blue/white');
  await expect(cellOf(page, '5', 'colour')).toHaveText('blue/white');
  await expect(page.getByRole('banner')).toContainText(/kept/);
  await page.reload();
  await expect(cellOf(page, '5', 'colour')).toHaveText('blue/white');
  await expect(page.locator('[role=row][data-wire]')).toHaveCount(12);
});

test('a wire by keyboard alone', async ({ page }) => {
  await openFresh(page);
  await openList(page, 'test/cli/lists/notebook.csv');
  await page.getByTestId('new-row').locator('[data-column=from]').click();
  await page.keyboard.type('V3-6');
  await page.keyboard.press('Enter');
  await expect(page.locator('[role=row][data-wire]')).toHaveCount(13);
  await page.keyboard.press('Control+z');
  await expect(page.locator('[role=row][data-wire]')).toHaveCount(12);
});
