// Pins walked as people do it: by one thumb on a phone with the chassis in the other hand, and by keys at
// the bench. An action is one press or one field taken. What cannot be followed waits and is joined later.
import { saveDocument } from '#document/index.ts';
import type { Page } from '@playwright/test';
import { mkdirSync, writeFileSync } from 'node:fs';
import { chassis } from '../helpers/chassis.ts';
import { clean } from './clean.ts';
import { expect, exported, openFile, openFresh, test, waitForDrawing } from './story.ts';

const phone = { width: 390, height: 844 };
const path = 'test-results/two-sockets.chassis.json';

/** Two sockets and a strip where a phone shows all three at once, near enough to press. */
const writeSet = (): void => {
  const set = chassis('Two sockets')
    .unit('Main chassis', { size: [200, 140] })
    .tube('V1', '6CG7', { at: [70, 60] })
    .tube('V2', '6AU6A', { at: [115, 60] })
    .strip('TS1', 5, { at: [92, 82] })
    .build();
  mkdirSync('test-results', { recursive: true });
  writeFileSync(path, saveDocument(set));
};

const rowsOf = (csv: string): string[][] =>
  csv
    .split('\r\n')
    .filter(Boolean)
    .slice(1)
    .map((line) => line.split(','));

/** "1 V1-1 TS1-2" for each wire. */
const runs = (csv: string): string[] =>
  rowsOf(csv).map(([number = '', from = '', to = '']) => `${number} ${from} ${to}`);

class Thumb {
  actions = 0;
  readonly page: Page;

  constructor(page: Page) {
    this.page = page;
  }

  async press(testid: string): Promise<void> {
    await this.page.getByTestId(testid).tap();
    this.actions += 1;
  }

  async type(text: string): Promise<void> {
    await this.page.getByTestId('walk-line').fill(text);
    await this.page.getByTestId('walk-line').press('Enter');
    this.actions += 1;
  }

  /** Presses a place on the sheet, mm from the terminal that is walked, which lies in its middle. */
  async pressSheet(dx: number, dy: number): Promise<void> {
    const box = await this.page.getByTestId('sheet').boundingBox();
    if (box === null) throw new Error('the sheet is not there');
    const pxPerMm = 2.6;
    await this.page.touchscreen.tap(
      box.x + box.width / 2 + dx * pxPerMm,
      box.y + box.height / 2 + dy * pxPerMm
    );
    this.actions += 1;
  }

  here(label: string): Promise<void> {
    return expect(this.page.getByTestId('walk-here')).toHaveText(label);
  }
}

test.describe('by one thumb', () => {
  test.use({ hasTouch: true });
  test('a 9-pin socket at most two actions a lead, three half-traced wires joined later', async ({
    page
  }) => {
    writeSet();
    await openFresh(page);
    await openFile(page, path);
    await page.setViewportSize(phone);
    await page.getByTestId('page-sheet').tap();
    await page.getByTestId('drawing-pictorial').tap();
    await waitForDrawing(page);
    await page.getByTestId('page-schedule').tap();
    await page.getByTestId('pin-walk').tap();
    await page.screenshot({ path: 'test-results/walk-parts-phone.png' });
    await page.getByTestId('walk-V1').tap();

    const thumb = new Thumb(page);
    await thumb.here('V1-1');
    await thumb.press('colour-blue');
    await expect(page.getByTestId('walk-question')).toContainText('blue');
    await page.waitForTimeout(400);
    await page.screenshot({ path: 'test-results/walk-asks-phone.png' });
    // From V1-1 to lug 3 of the strip, as both stand on the drawing.
    const pin = { x: 70 - 3.499, y: 60 + 4.816 };
    await thumb.pressSheet(92 - pin.x, 82 - pin.y);
    await thumb.here('V1-2');
    await thumb.press('colour-red');
    await thumb.type('ts1-4');
    await thumb.here('V1-3');
    for (const colour of ['brown', 'green', 'yellow']) {
      await thumb.press(`colour-${colour}`);
      await thumb.press('not-yet');
    }
    await thumb.here('V1-6');
    await thumb.press('walk-next');
    await thumb.press('part-resistor');
    await thumb.type('ts1-5');
    await thumb.here('V1-8');
    await thumb.press('colour-black');
    await thumb.type('9');
    await thumb.here('V1-9');
    await expect(page.getByTestId('lead')).toContainText('to V1-8');
    await thumb.press('walk-next');
    await expect(page.getByTestId('walk')).toContainText('V1 is walked');
    await page.screenshot({ path: 'test-results/walk-done-phone.png' });
    // One lead on each pin but the sixth, which was looked at.
    const leads = 8;
    expect(thumb.actions / leads).toBeLessThanOrEqual(2);
    await expect(page.getByTestId('walk-view-waiting')).toContainText('3');

    // The next socket: the first is known at once for the brown that waits, the others are joined later.
    await page.getByTestId('walk-view-parts').tap();
    await page.getByTestId('walk-V2').tap();
    await thumb.here('V2-1');
    await page.getByTestId('colour-brown').tap();
    await page.getByTestId('is-wire-3').tap();
    await thumb.here('V2-2');
    for (const colour of ['green', 'yellow']) {
      await page.getByTestId(`colour-${colour}`).tap();
      await page.getByTestId('not-yet').tap();
    }
    await page.getByTestId('walk-view-waiting').tap();
    await expect(page.getByTestId('walk-view-waiting')).toContainText('4');
    await page.getByTestId('half-4').tap();
    await expect(page.getByTestId('waiting')).toContainText('same colour');
    await page.screenshot({ path: 'test-results/walk-waiting-phone.png' });
    await page.getByTestId('join-4-7').tap();
    await page.getByTestId('half-5').tap();
    await page.getByTestId('join-5-8').tap();
    await expect(page.getByTestId('waiting')).toContainText('No wire waits');
    await page.getByTestId('undo').tap();
    await expect(page.getByTestId('walk-view-waiting')).toContainText('2');
    await page.getByTestId('redo').tap();

    await page.getByTestId('walk-close').tap();
    expect(runs(await exported(page, 'menu', 'export-csv'))).toEqual([
      '1 V1-1 TS1-3',
      '2 V1-2 TS1-4',
      '3 V1-3 V2-1',
      '4 V1-4 V2-2',
      '5 V1-5 V2-3',
      '6 V1-8 V1-9'
    ]);
  });
});

test('by keys: a new chassis from its tubes, walked without a hand on the mouse', async ({
  page
}) => {
  await openFresh(page);
  await page.getByTestId('file-menu').focus();
  await page.keyboard.press('ArrowDown');
  await page.keyboard.press('Enter');
  await page.getByTestId('new-title').fill('Bench set');
  await page.getByTestId('new-tubes').fill('V1 - 6CG7\n6AU6A 6ZZ9\nstrip 5');
  await expect(page.getByTestId('new-parts')).toContainText('V1 6CG7 9 terminals');
  await expect(page.getByTestId('new-chassis')).toContainText('6ZZ9');
  await page.getByLabel('Base of 6ZZ9').selectOption('noval');
  await expect(page.getByTestId('new-parts')).toContainText('V3 6ZZ9 9 terminals');
  await page.screenshot({ path: 'test-results/new-chassis.png' });
  await page.getByTestId('new-walk').press('Enter');

  const here = (label: string) => expect(page.getByTestId('walk-here')).toHaveText(label);
  await expect(page.getByTestId('way-capture')).toHaveAttribute('aria-pressed', 'true');
  await here('V1-1');
  await expect(page.getByTestId('walk-line')).toBeFocused();
  let actions = 0;
  const line = async (text: string): Promise<void> => {
    await page.keyboard.type(text);
    await page.keyboard.press('Enter');
    actions += 1;
  };
  await line('blue/white ts1-2');
  await line('');
  await here('V1-2');
  await line('red');
  await line('v2-5');
  await here('V1-3');
  await line('resistor yellow violet orange v2-1');
  await line('bare 4');
  await line('');
  await here('V1-4');
  await line('');
  await here('V1-5');
  await line('green');
  await line('');
  await here('V1-6');
  // Five leads and one look at what was there already.
  expect(actions).toBeLessThanOrEqual(2 * 5 + 1);
  await page.keyboard.press('PageUp');
  await here('V1-5');
  await page.screenshot({ path: 'test-results/walk-keys.png' });
  await page.keyboard.press('Escape');
  await expect(page.getByTestId('schedule')).toBeVisible();
  expect(runs(await exported(page, 'export-menu', 'export-csv'))).toEqual([
    '1 V1-1 TS1-2',
    '2 V1-2 V2-5',
    '3 V1-3 V1-4',
    '4 V1-5 ?'
  ]);
});

test('leads seen against leads written down, particulars, and the way of working', async ({
  page
}) => {
  writeSet();
  await openFresh(page);
  await page.getByTestId('way-capture').click();
  await expect(page.getByTestId('later')).toContainText(/\d+ more to look at later/);
  const shown = page.locator('[data-testid^=note-]');
  const few = await shown.count();
  await page.getByTestId('later').click();
  expect(await shown.count()).toBeGreaterThan(few);
  await openFile(page, path);
  await expect(page.getByTestId('notice')).toContainText('opened');
  await page.keyboard.press('Shift+P');
  await page.getByTestId('walk-V1').click();
  for (let n = 0; n < 3; n += 1) await page.getByTestId('count-more').click();
  await page.getByTestId('colour-white').click();
  await page.getByTestId('tracer').click();
  await page.getByTestId('colour-red').click();
  await page.getByTestId('how-metered').click();
  await page.keyboard.type('ts1-1');
  await page.keyboard.press('Enter');
  await page.getByTestId('part-resistor').click();
  await page.getByTestId('bands').click();
  for (const band of ['yellow', 'violet', 'red', 'gold'])
    await page.getByTestId(`band-${band}`).click();
  await page.getByTestId('take-bands').click();
  await page.getByTestId('to-splice').click();
  await expect(page.getByTestId('walk-count')).toContainText('3 seen');
  await expect(page.getByTestId('walk-count')).toContainText('2 written down');
  const [wire, resistor] = await page.getByTestId('lead').all();
  await expect(wire!).toContainText('white with a red tracer');
  await expect(wire!).toContainText('metered');
  await expect(resistor!).toContainText('4.7k');
  await wire!.getByRole('button').first().click();
  await page.getByLabel('keep it short').check();
  await page.getByLabel('Origin').selectOption('earlier repair');
  await page.getByLabel('How it is dressed').fill('along the apron');
  await page.getByLabel('How it is dressed').press('Enter');
  await page.screenshot({ path: 'test-results/walk-particulars.png' });
  await wire!.getByRole('button').first().click();
  await expect(wire!).toContainText('earlier repair, critical');
  await page.getByTestId('walk-next').click();
  await page.getByTestId('walk-view-parts').click();
  await expect(page.getByTestId('walk-V1')).toContainText('1 lead not accounted for');
});

test('the first visit is shown round once, and never again', async ({ page }) => {
  await page.goto('./');
  await page.getByTestId('cautions-read').click();
  for (let step = 1; step < 4; step += 1) {
    await expect(page.getByTestId('guide')).toContainText(`${step} of 4`);
    await page.screenshot({ path: `test-results/guide-${step}.png` });
    await page.getByTestId('guide-next').click();
  }
  await page.getByTestId('guide-new').click();
  await expect(page.getByTestId('new-chassis')).toBeVisible();
  await page.keyboard.press('Escape');
  await expect(page.getByTestId('guide')).toBeHidden();
  await page.reload();
  await waitForDrawing(page);
  await expect(page.getByTestId('guide')).toBeHidden();
});

for (const colorScheme of ['light', 'dark'] as const)
  for (const screen of ['wide', 'phone'] as const)
    test(`clean to axe, ${screen}, ${colorScheme}`, async ({ page }) => {
      if (screen === 'phone') await page.setViewportSize(phone);
      await page.emulateMedia({ colorScheme, reducedMotion: 'reduce' });
      await openFresh(page);
      const shot = (name: string) =>
        page.screenshot({ path: `test-results/${name}-${screen}-${colorScheme}.png` });
      const menu = screen === 'phone' ? 'menu' : 'file-menu';
      await page.getByTestId(menu).click();
      await page.getByTestId('new').click();
      await page.getByTestId('new-tubes').fill('6CG7, 6ZZ9, strip 5');
      await clean(page, 'new chassis', '[data-testid=new-chassis]');
      await shot('new-chassis');
      await page.keyboard.press('Escape');
      await page.getByTestId('pin-walk').click();
      await clean(page, 'parts', '[data-testid=walk]');
      await page.getByTestId('walk-V10').click();
      await page.getByTestId('stop-3').click();
      await page.getByTestId('part-resistor').click();
      await page.getByTestId('bands').click();
      await clean(page, 'a part asked for', '[data-testid=walk]');
      await shot('walk-bands');
      await page.getByTestId('not-yet').click();
      await page.getByTestId('colour-blue').click();
      await page.getByTestId('lead').last().getByRole('button').first().click();
      await clean(page, 'a wire asked for', '[data-testid=walk]');
      await shot('walk-asks');
      await page.getByTestId('walk-view-waiting').click();
      await page.locator('[data-testid^=half-]').first().click();
      await clean(page, 'half-traced', '[data-testid=walk]');
      await shot('walk-waiting');
    });
