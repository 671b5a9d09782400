// Story: the whole main job by key alone, as somebody does who hears the page: a list is pasted and a cell of it
// repaired, a finding is read and its fix taken, a wire is planned, schedule and drawing are taken away. What is
// pressed is asked for by role and name.
import type { Locator, Page } from '@playwright/test';
import { cellOf, expect, test, waitForDrawing } from './story.ts';

/** Goes on by Tab until the thing has the focus. */
const tabTo = async (page: Page, target: Locator): Promise<void> => {
  await expect(target).toBeVisible();
  for (let turn = 0; turn < 90; turn++) {
    if (await target.evaluate((element) => element === document.activeElement)) return;
    await page.keyboard.press('Tab');
  }
  throw new Error(`no Tab leads to ${String(target)}`);
};

const press = async (page: Page, target: Locator): Promise<void> => {
  await tabTo(page, target);
  await page.keyboard.press('Enter');
};

/** Says it in the field that goes anywhere and does anything. */
const say = async (page: Page, words: string): Promise<void> => {
  await page.keyboard.press('Control+K');
  await expect(page.getByTestId('go-text')).toBeFocused();
  await page.keyboard.type(words);
  await page.keyboard.press('Enter');
};

const list = [
  'No\tFrom\tTo\tColour\tDC volts',
  '1\tV1-2\tTS1-1\tred\t28S',
  '2\tV1-3\tTS1-2\tblue\t120',
  '2\tV2-1\tTS1-4\tgreen\t12'
].join('\n');

test('import, repair, finding, fix, plan and export without a mouse, told by roles and names', async ({
  page
}) => {
  await page.goto('./');
  await press(page, page.getByTestId('cautions-read'));
  await press(page, page.getByTestId('guide-done'));
  await waitForDrawing(page);

  await say(page, 'bring in a wire list');
  const paste = page.getByRole('textbox', { name: /Paste the rows of a spreadsheet/ });
  await tabTo(page, paste);
  await page.keyboard.insertText(list);
  await press(page, page.getByRole('button', { name: 'Look at it' }));

  const intake = page.getByRole('dialog', { name: 'Pasted list: before it comes in' });
  await expect(intake.getByRole('status')).toContainText('3 wires');
  await expect(intake.getByRole('status')).toContainText('1 cell not read');
  await expect(intake.getByRole('columnheader', { name: /DC volts/ })).toHaveCount(1);
  const cell = intake.getByRole('textbox', { name: 'Row 2, DC volts' });
  await expect(cell).toHaveAccessibleDescription(/"28S" was not read/);
  await tabTo(page, cell);
  await page.keyboard.press('Control+A');
  await page.keyboard.type('285');
  await page.keyboard.press('Tab');
  await expect(intake.getByRole('status')).toContainText('every cell read');
  await press(page, intake.getByRole('button', { name: 'Open 3 wires' }));
  await expect(intake).toBeHidden();

  const grid = page.getByRole('grid', { name: 'Wire schedule' });
  await expect(grid).toHaveAttribute('aria-rowcount', '5');
  await expect(grid.getByRole('columnheader')).not.toHaveCount(0);
  await expect(cellOf(page, '1', 'carries')).toHaveText('285 V dc');
  await waitForDrawing(page);

  await say(page, '2');
  const tag = page.getByTestId('tag');
  await expect(tag.getByRole('heading', { level: 2 })).toContainText('2');
  await press(page, tag.getByRole('button', { name: /next free|renumber|number/i }).first());
  await expect(page.getByTestId('row-3')).toBeVisible();
  await expect(page.getByTestId('notice')).toHaveAttribute('aria-live', 'polite');
  await expect(page.getByTestId('notice')).not.toBeEmpty();

  await say(page, 'wire 1');
  await press(page, tag.getByRole('button', { name: 'Plan it so' }));
  await expect(tag).toContainText('Planned new wire');

  for (const [words, ending] of [
    ['export: wire schedule', /\.csv$/],
    ['export: drawing', /\.svg$/]
  ] as const) {
    const download = page.waitForEvent('download');
    await say(page, words);
    expect((await download).suggestedFilename()).toMatch(ending);
  }

  await page.keyboard.press('Control+K');
  await page.keyboard.type('steps');
  await page.keyboard.press('Enter');
  const steps = page.getByRole('dialog', { name: 'Steps' });
  await press(page, steps.getByRole('button', { name: /^Take back/ }).last());
  await page.keyboard.press('Escape');
  await expect(page.getByTestId('row-3')).toHaveCount(0);
});
