// Planning from the demonstration: the shelf put right, a proposal overruled and what that costs seen, the cut
// list and the shopping list read, all of it taken over and taken back; every leaf clean to axe.
import type { Page } from '@playwright/test';
import { clean } from './clean.ts';
import { expect, openFresh, test } from './story.ts';

const phone = { width: 390, height: 844 };

const turnTo = async (page: Page, leaf: string): Promise<void> => {
  await page.getByTestId(`leaf-${leaf}`).click();
  await expect(page.getByTestId(leaf)).toBeVisible();
};

test('the shelf, a proposal overruled, both lists, all taken over and undone', async ({ page }) => {
  await openFresh(page);
  await turnTo(page, 'shelf');

  // A field of a piece, by key; then what cannot be read says so and is not taken.
  const red = page.getByTestId('stock-row-22-AWG-red');
  await red.getByRole('button').first().press('Enter');
  await red.getByTestId('stock-length').fill('40 ft');
  await red.getByTestId('stock-length').press('Tab');
  await expect(red.getByRole('button').first()).toContainText('12.19 m');
  await red.getByTestId('stock-awg').fill('twenty');
  await red.getByTestId('stock-awg').press('Tab');
  await expect(red.getByText(/Not taken/)).toBeVisible();
  await red.getByTestId('stock-awg').fill('22');
  await red.getByTestId('stock-awg').press('Tab');

  // Rows out of a spreadsheet; the length of one is reckoned from its ohms.
  await page.getByTestId('paste-rows').click();
  await page
    .getByTestId('stock-rows')
    .fill(
      'name\tgauge\tcolour\tvolts\ttemp\tlength\tprice\n1 kV reel\t22 solid\twhite\t1 kV\t105 C\t0.53 ohm\t0.60/ft'
    );
  await page.getByTestId('take-rows').click();
  // 22 AWG is 52.96 mΩ a metre at 20 °C: ASTM B258 and IACS.
  await expect(page.getByTestId('stock-row-1-kV-reel').getByRole('button').first()).toContainText(
    /(10|9\.\d+) m/
  );

  await turnTo(page, 'proposals');
  await expect(page.getByTestId('proposals')).toContainText(/\d+ to do, \d+ kept, 3 done/);
  const own = page.getByTestId('proposal-38');
  await own.getByTestId('open-38').click();
  await own.getByTestId('way-of-wire-keep').check();
  await expect(own.getByTestId('cost')).toContainText(/Margin 0\.69 times; now 1\.38 times/);
  await expect(own.getByTestId('cost')).toContainText(/rated 300\sV, and 600\sV is asked for/);
  await own.getByTestId('choose').click();
  await page.getByTestId('view-all').click();
  await expect(own).toContainText('chosen');
  await expect(own).toContainText('falls short');
  await own.getByTestId('back-to-proposal').click();
  await expect(own).not.toContainText('chosen');

  await turnTo(page, 'cuts');
  await expect(page.getByTestId('bound')).toContainText(/no cutting does with fewer than\s+\d+/);
  await expect(page.getByTestId('cut-22-AWG-red')).toContainText(/left, stays on the spool/);
  await page.getByTestId('print-cut-list').click();
  await expect(page.frameLocator('[data-testid=print-frame]').locator('h1')).toHaveText('Cut list');
  await page.keyboard.press('Escape');
  const csv = page.waitForEvent('download');
  await page.getByTestId('csv-cut-list').click();
  expect((await csv).suggestedFilename()).toMatch(/cut-list\.csv$/);

  await turnTo(page, 'shopping');
  await expect(page.getByTestId('shopping')).toContainText('high-voltage lead');
  await expect(page.getByTestId('total')).toHaveText(/^\d+\.\d\d$/);

  await turnTo(page, 'order');
  await page.getByTestId('order-mode').selectOption('bare chassis');
  const layers = page.getByTestId('order').getByRole('heading', { level: 3 });
  await expect(layers.first()).toHaveText('Heaters');
  await expect(layers.last()).toHaveText('Pulse and high-voltage leads');

  await turnTo(page, 'proposals');
  await page.getByTestId('take-over').click();
  await expect(page.getByTestId('take-over')).toBeDisabled();
  await page.getByTestId('undo').click();
  await expect(page.getByTestId('take-over')).toBeEnabled();
});

for (const colorScheme of ['light', 'dark'] as const)
  for (const [screen, size] of [
    ['wide', { width: 1440, height: 900 }],
    ['phone', phone]
  ] as const)
    test(`axe: leaves of planning, ${screen}, ${colorScheme}`, async ({ page }) => {
      test.setTimeout(180_000);
      await page.setViewportSize(size);
      await page.emulateMedia({ colorScheme, reducedMotion: 'reduce' });
      await openFresh(page);
      for (const leaf of ['proposals', 'shelf', 'cuts', 'shopping', 'order']) {
        await turnTo(page, leaf);
        if (leaf === 'proposals') await page.getByTestId('open-43').click();
        if (leaf === 'shelf') {
          await page.getByTestId('stock-row-22-AWG-red').getByRole('button').first().click();
          await page.getByTestId('paste-rows').click();
        }
        await expect(page.getByTestId('cutting')).toHaveCount(0);
        await clean(page, leaf, '.left-page');
        const over = await page.evaluate(
          () => document.documentElement.scrollWidth - window.innerWidth
        );
        expect(over, `${leaf} is wider than the screen`).toBeLessThanOrEqual(0);
        await page.screenshot({ path: `test-results/${leaf}-${screen}-${colorScheme}.png` });
      }
    });
