// What every story starts with: the editor open on its demonstration, cautions read, drawing drawn.
// A page that breaks a rule of its policy, throws, or asks another host for anything fails its story.
import { expect, test as base, type Locator, type Page } from '@playwright/test';

export const test = base.extend<{ watched: Page }>({
  watched: [
    async ({ page, baseURL }, use) => {
      const wrong: string[] = [];
      // A story cannot press the buttons of the system's own dialogs: files come and go as in browsers
      // that have none.
      await page.addInitScript(() => {
        Reflect.deleteProperty(globalThis, 'showOpenFilePicker');
        Reflect.deleteProperty(globalThis, 'showSaveFilePicker');
      });
      page.on('pageerror', (error) => wrong.push(`thrown: ${error.message}`));
      page.on('console', (message) => {
        if (message.type() === 'error') wrong.push(`console: ${message.text()}`);
      });
      page.context().on('request', (request) => {
        const url = request.url();
        if (!url.startsWith(baseURL ?? '') && !/^(blob|data):/.test(url))
          wrong.push(`asked elsewhere: ${url}`);
      });
      await use(page);
      expect(wrong).toEqual([]);
    },
    { auto: true }
  ]
});
export { expect };

/** Opens the editor for the first time and reads the cautions. */
export const openFresh = async (page: Page): Promise<void> => {
  await page.goto('./');
  await page.getByTestId('cautions-read').click();
  await page.getByTestId('guide-done').click();
  await waitForDrawing(page);
};

/** Until the drawing stands on the sheet. */
export const waitForDrawing = (page: Page): Promise<void> =>
  expect(page.locator('[data-testid=sheet][data-ready=yes]')).toHaveCount(1, { timeout: 60_000 });

/** Until the browser has kept what was done. */
export const isKept = (page: Page): Promise<void> =>
  expect(page.getByRole('banner')).toContainText('kept in this browser');

/** A cell of the schedule by wire number and column. */
export const cellOf = (page: Page, wire: string, column: string): Locator =>
  page.locator(`[data-testid="row-${wire}"] [data-column=${column}]`);

/** Types into a cell as in a spreadsheet: pick it, type, Enter. */
export const typeInto = async (
  page: Page,
  wire: string,
  column: string,
  text: string
): Promise<void> => {
  await cellOf(page, wire, column).dblclick();
  await page.keyboard.press('Control+A');
  await page.keyboard.type(text);
  await page.keyboard.press('Enter');
};

/** Picks a file in the dialog that the File menu opens. */
export const openFile = async (page: Page, path: string): Promise<void> => {
  const chosen = page.waitForEvent('filechooser');
  await page.getByTestId('file-menu').click();
  await page.getByTestId('open').click();
  await (await chosen).setFiles(path);
};

/** Opens a wire list as it is read. */
export const openList = async (page: Page, path: string): Promise<void> => {
  await openFile(page, path);
  await page.getByTestId('intake-take').click();
  await expect(page.getByTestId('intake')).toBeHidden();
};

/** The text of what an item of a menu gives to save. */
export const exported = async (page: Page, menu: string, item: string): Promise<string> => {
  await page.getByTestId(menu).click();
  const download = page.waitForEvent('download');
  await page.getByTestId(item).click();
  const stream = await (await download).createReadStream();
  const chunks: Buffer[] = [];
  for await (const chunk of stream) chunks.push(chunk as Buffer);
  return Buffer.concat(chunks).toString('utf8');
};
