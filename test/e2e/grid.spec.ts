// Story: a long list is brought in from a spreadsheet, put in order, found in, and corrected many cells at a
// time, by mouse and by key.
import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from '@playwright/test';
import { clean } from './clean.ts';
import { cellOf, expect, openFile, openFresh, test } from './story.ts';

const undo = async (page: Page): Promise<void> => {
  await page.getByTestId('sheet').focus();
  await page.keyboard.press('Control+Z');
};

test('cells are marked, filled down, copied and pasted as in a spreadsheet', async ({
  page,
  context
}) => {
  await context.grantPermissions(['clipboard-read', 'clipboard-write']);
  await openFresh(page);
  const from = await cellOf(page, '3', 'colour').textContent();
  await cellOf(page, '3', 'colour').click();
  await page.keyboard.press('Shift+ArrowDown');
  await page.keyboard.press('Shift+ArrowDown');
  await expect(page.locator('.cell.marked')).toHaveCount(3);
  await page.keyboard.press('Control+D');
  for (const wire of ['4', '5']) await expect(cellOf(page, wire, 'colour')).toHaveText(from ?? '');
  await page.screenshot({ path: 'test-results/grid-marked.png' });
  await undo(page);

  await page.evaluate(() =>
    navigator.clipboard.writeText('From\tTo\tColour\nV1-2\tV2-3\tgreen/white\nV1-3\t?\tpink\n')
  );
  await page.getByTestId('new-row').locator('[data-column=carries]').click();
  await page.keyboard.press('Escape');
  await page.keyboard.press('Control+V');
  await expect(cellOf(page, '149', 'colour')).toHaveText('pink');
  await expect(cellOf(page, '148', 'from')).toHaveText('V1-2');
  await undo(page);
  await expect(page.getByTestId('row-148')).toHaveCount(0);
});

test('rows are sorted, grouped, found and replaced', async ({ page }) => {
  await openFresh(page);
  const first = page.locator('.schedule-table .wires .row:not(.group)').first();
  await page.getByTestId('head-needs').click();
  await page.getByTestId('head-needs').click();
  await expect(first.locator('[data-column=needs]')).toHaveText(/kV/);
  await expect(page.locator('[role=columnheader][aria-sort=descending]')).toHaveCount(1);

  await page.keyboard.press('Control+F');
  await page.keyboard.type('over 1 kV');
  await expect(page.getByTestId('find-words')).toHaveText(/found; of \d+ more it is not known/);
  await page.getByTestId('find-only').click();
  await page.getByTestId('group-by').selectOption('needs');
  await expect(page.locator('.row.group').first()).toContainText('kV');
  await page.screenshot({ path: 'test-results/grid-find.png' });
  await page.getByTestId('find-only').click();
  await page.getByTestId('group-by').selectOption('');

  await page.getByTestId('find-text').fill('yellow');
  await page.keyboard.press('Enter');
  await expect(page.getByTestId('find-words')).toHaveText(/^1 of \d+ found$/);
  await page.getByTestId('replace-text').fill('green');
  await page.getByTestId('replace-all').click();
  await expect(page.getByTestId('find-words')).toHaveText('nothing found');
  await page.keyboard.press('Control+Z');
  await page.getByTestId('find-text').press('Escape');
  await expect(page.getByTestId('find-strip')).toHaveCount(0);
});

test('the person chooses the columns, and they are there the next time', async ({ page }) => {
  await openFresh(page);
  await page.getByTestId('column-set').selectOption('choose');
  const dialog = page.getByTestId('columns');
  await dialog.getByRole('checkbox', { name: 'Unit' }).check();
  await dialog.getByRole('checkbox', { name: 'Carries' }).uncheck();
  await page.screenshot({ path: 'test-results/grid-columns.png' });
  await page.getByTestId('columns-save').click();
  await expect(page.getByTestId('head-unit')).toBeVisible();
  await page.reload();
  await expect(page.getByTestId('head-unit')).toBeVisible();
  await expect(page.getByTestId('head-carries')).toHaveCount(0);
});

test('three thousand rows scroll, with only those near by on the page', async ({ page }) => {
  await openFresh(page);
  await page.getByTestId('new-row').locator('[data-column=from]').click();
  await page.keyboard.press('Escape');
  const rows = Array.from({ length: 3000 }, (_, index) => `?\t?\tred ${index}`);
  await page.evaluate((text) => {
    const clipboardData = new DataTransfer();
    clipboardData.setData('text/plain', text);
    document.activeElement?.dispatchEvent(
      new ClipboardEvent('paste', { clipboardData, bubbles: true, cancelable: true })
    );
  }, rows.join('\n'));
  await expect(page.locator('[role=grid]')).toHaveAttribute('aria-rowcount', '3131');
  const shown = page.locator('.schedule-table [data-wire]');
  expect(await shown.count()).toBeLessThan(600);
  await page.keyboard.press('Control+End');
  await page.keyboard.press('ArrowUp');
  await expect(page.getByTestId('row-3147')).toBeVisible();
  await page.keyboard.press('Control+Home');
  await expect(page.getByTestId('row-1')).toBeVisible();
  expect(await shown.count()).toBeLessThan(600);
});

test('a list in words of its own: columns are named, a cell is repaired, and a second list merges', async ({
  page
}) => {
  await openFresh(page);
  const folder = mkdtempSync(join(tmpdir(), 'lists-'));
  const write = (name: string, ...lines: string[]): string => {
    const path = join(folder, name);
    writeFileSync(path, lines.join('\n'));
    return path;
  };
  await openFile(
    page,
    write('first.csv', 'No,Hither,Yon,Hue,DC volts', '1,V1-2,TS1-1,red,28S', '2,V1-3,TS1-2,blue,')
  );
  const dialog = page.getByTestId('intake');
  await page.getByTestId('intake-role-4').selectOption({ label: 'Volts dc' });
  await expect(dialog).toContainText('1 cell not read');
  await page.getByTestId('intake-cell-2-4').fill('285');
  await page.getByTestId('intake-cell-2-4').press('Tab');
  await expect(page.getByTestId('intake-summary')).toContainText('every cell read');
  await clean(page, 'intake', '[data-testid=intake]');
  await page.getByTestId('intake-take').click();
  await expect(cellOf(page, '1', 'carries')).toHaveText('285 V dc');

  await openFile(
    page,
    write('second.csv', 'No,From,To,Colour', '1,V1-2,TS1-1,red/white', '7,V2-1,TS1-4,green')
  );
  await page.getByTestId('intake-into-open').check();
  await expect(page.getByTestId('intake-merge-words')).toContainText(
    '1 new, 1 changed, 0 the same. 1 wire that the list does not name stays'
  );
  await clean(page, 'intake merging', '[data-testid=intake]');
  await page.screenshot({ path: 'test-results/intake-merge.png' });
  await page.getByTestId('intake-take').click();
  await expect(cellOf(page, '1', 'colour')).toHaveText('red/white');
  await expect(cellOf(page, '7', 'from')).toHaveText('V2-1');
  await undo(page);
  await expect(cellOf(page, '1', 'colour')).toHaveText('red');
  await expect(page.locator('[role=row][data-wire]')).toHaveCount(2);

  await openFile(page, 'test/intake/workbooks/bench-set.xlsx');
  await page.getByTestId('intake-take').click();
  await expect(page.locator('[role=row][data-wire]')).toHaveCount(4);
});
