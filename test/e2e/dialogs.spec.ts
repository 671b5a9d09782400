// Every dialog that the editor has, found in its sources so that a new one cannot be forgotten: by day and by
// night against axe's rules, on a phone without anything cut off at the side, and closed by Escape.
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import type { Page } from '@playwright/test';
import { clean } from './clean.ts';
import { expect, openFile, openFresh, test } from './story.ts';

test.setTimeout(240_000);

const rooms = 'src/lib/editor';
/** The dialogs by the name that each carries for its test. */
const found = readdirSync(rooms, { recursive: true, encoding: 'utf8' })
  .filter((file) => file.endsWith('.svelte') && !file.endsWith('Modal.svelte'))
  .flatMap((file) => {
    const source = readFileSync(`${rooms}/${file}`, 'utf8');
    return [...source.matchAll(/<Modal\b[^]*?\btestid="([^"]+)"/g)].map(([, name = '']) => name);
  });

const say =
  (words: string) =>
  async (page: Page): Promise<void> => {
    await page.keyboard.press('Control+K');
    await page.getByTestId('go-text').fill(words);
    await page.keyboard.press('Enter');
  };

const openers: Readonly<Record<string, (page: Page) => Promise<void>>> = {
  'about-dialog': say('About and licences'),
  cautions: say('Cautions'),
  columns: say('Choose the columns'),
  go: (page) => page.keyboard.press('Control+K'),
  intake: say('Bring in a wire list'),
  'kept-dialog': say('Kept in this browser'),
  keys: say('Keys'),
  many: say('Change one field of many'),
  'new-chassis': say('New chassis'),
  policy: say('What the judging goes by'),
  report: async (page) => {
    writeFileSync('test-results/broken.chassis.json', '{"format": 1}');
    await openFile(page, 'test-results/broken.chassis.json');
  },
  'set-dialog': (page) => page.getByTitle('What set this is').click(),
  'states-dialog': say('Earlier states'),
  steps: say('Steps'),
  'tags-dialog': say('Tags for the wires')
};

/** Dialogs that need a photo, or a leaf of the plan: the stories that open them. */
const elsewhere: readonly string[] = ['photo-view', 'scale-dialog', 'print'];

test('every dialog, by day and by night, on a phone, and by Escape', async ({ page }) => {
  expect([...found].sort()).toEqual([...Object.keys(openers), ...elsewhere].sort());
  await openFresh(page);
  // Something that was done, so that it can be gone back to.
  await page.getByTestId('new-row').locator('[data-column=from]').click();
  await page.keyboard.type('V1-2');
  await page.keyboard.press('Enter');
  await page.keyboard.press('Escape');
  for (const [name, open] of Object.entries(openers)) {
    await open(page);
    const dialog = page.getByTestId(name);
    await expect(dialog, name).toBeVisible();
    for (const colorScheme of ['light', 'dark'] as const) {
      await page.emulateMedia({ colorScheme });
      await expect(page.locator('html')).toHaveAttribute('data-theme', colorScheme);
      await clean(page, `${name}, ${colorScheme}`, `[data-testid="${name}"]`);
    }
    await page.setViewportSize({ width: 390, height: 844 });
    const sideways = await dialog.evaluate((element) => ({
      dialog: element.scrollWidth - element.clientWidth,
      text: [...element.querySelectorAll('.text')].map(
        (text) => text.scrollWidth - text.clientWidth
      ),
      page: document.documentElement.scrollWidth - innerWidth
    }));
    expect(sideways, name).toEqual({ dialog: 0, text: sideways.text.map(() => 0), page: 0 });
    await page.screenshot({ path: `test-results/dialog-${name}-phone-dark.png` });
    await page.setViewportSize({ width: 1440, height: 900 });
    await page.keyboard.press('Escape');
    await expect(dialog, name).toBeHidden();
  }
});
