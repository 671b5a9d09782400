// The bench: three wires ticked through on a phone, one step out of order with a word, undone, and all still
// there after a reload; a test sheet with readings judged; tags as they will be printed.
import { clean } from './clean.ts';
import { expect, openFresh, test, waitForDrawing } from './story.ts';

const phone = { width: 390, height: 844 };

test('the bench list by one thumb', async ({ browser, baseURL }) => {
  const context = await browser.newContext({
    viewport: phone,
    hasTouch: true,
    isMobile: true,
    reducedMotion: 'reduce',
    ...(baseURL === undefined ? {} : { baseURL })
  });
  const page = await context.newPage();
  await page.goto('./');
  await page.getByTestId('cautions-read').tap();
  await page.getByTestId('guide-done').tap();
  await page.getByTestId('way').selectOption('work');
  await expect(page.getByTestId('bench')).toContainText('Only then touch');
  await expect(page.getByTestId('bench-next')).toContainText('Fit wire 10');
  const wire = (number: string) => page.getByTestId(`bench-wire-${number}`);
  const step = (number: string, name: string) => wire(number).getByTestId(`step-${name}`);

  // What is out comes in, and is checked.
  await step('10', 'fitted').tap();
  if (await page.getByTestId('out-of-order').isVisible())
    await page.getByTestId('all-the-same').tap();
  await step('10', 'checked').tap();
  await expect(step('10', 'checked')).toHaveAttribute('aria-pressed', 'true');
  for (const name of ['removed', 'fitted', 'checked']) {
    await step('43', name).tap();
    if (await page.getByTestId('out-of-order').isVisible())
      await page.getByTestId('all-the-same').tap();
    await expect(step('43', name)).toHaveAttribute('aria-pressed', 'true');
  }
  await step('1', 'tagged').tap();
  await wire('1').getByTestId('more').tap();
  await wire('1').getByTestId('bench-note').fill('lug was cold');
  await wire('1').getByTestId('bench-note').blur();

  // Nothing goes out of order without a word.
  await step('38', 'removed').tap();
  const asked = page.getByTestId('out-of-order');
  await expect(asked).toContainText('It was not tagged yet.');
  await expect(asked).toContainText('Nothing is written down to come in its place.');
  await page.getByTestId('not-now').tap();
  await expect(step('38', 'removed')).toHaveAttribute('aria-pressed', 'false');

  await step('38', 'tagged').tap();
  await expect(step('38', 'tagged')).toHaveAttribute('aria-pressed', 'true');
  await page.getByTestId('undo').tap();
  await expect(step('38', 'tagged')).toHaveAttribute('aria-pressed', 'false');
  const small = await page
    .getByTestId('bench')
    .locator('button:visible')
    .evaluateAll((all) =>
      all.filter((one) => one.getBoundingClientRect().height < 43.5).map((one) => one.outerHTML)
    );
  expect(small.filter((html) => !/link-button/.test(html))).toEqual([]);
  await clean(page, 'bench list, phone', '.left-page');
  await page.screenshot({ path: 'test-results/bench-phone.png' });

  await expect(async () => {
    await page.reload();
    await expect(page.getByTestId('bench')).toContainText('at wire', { timeout: 5000 });
    await expect(step('43', 'checked')).toHaveAttribute('aria-pressed', 'true');
    await expect(step('10', 'checked')).toHaveAttribute('aria-pressed', 'true');
  }).toPass({ timeout: 30_000 });
  // It stops where it was left.
  await expect(wire('38')).toBeInViewport();
  await context.close();
});

test('a test sheet with readings judged, and tags', async ({ page }) => {
  await openFresh(page);
  await page.getByTestId('way-work').click();
  await page.getByTestId('leaf-tests').click();
  const sheet = page.getByTestId('tests');
  for (const [id, words] of [
    ['continuity', 'Null the leads'],
    ['insulation', 'does not prove high-voltage leads'],
    ['leakage', 'plug both ways'],
    ['power-up', 'Isolation transformer']
  ] as const) {
    await page.getByTestId(`sheet-${id}`).click();
    await expect(page.getByTestId('discharge-first')).toContainText('Only then touch');
    await expect(page.getByTestId('discharge-first')).toContainText('if the bleeder is good');
    await expect(sheet).toContainText(new RegExp(words, 'i'));
  }
  await expect(sheet.locator('tr.stop', { hasText: 'DO NOT MEASURE' }).first()).toBeVisible();
  await page.getByTestId('record-line-volts').fill('117 V');
  const fields = sheet.locator('table input');
  await fields.nth(0).fill('300 V');
  await fields.nth(0).press('Enter');
  await expect(fields.nth(1)).toBeFocused();
  await page.keyboard.type('0.1kV');
  await page.keyboard.press('Enter');
  await page.keyboard.type('about right');
  await page.keyboard.press('Enter');
  const verdicts = sheet.locator('tr[data-verdict]:has(input)');
  await expect(verdicts.nth(0)).toHaveAttribute('data-verdict', 'as expected');
  await expect(verdicts.nth(1)).toHaveAttribute('data-verdict', 'too low');
  await expect(verdicts.nth(2)).toContainText('is not understood');
  await expect(sheet).not.toContainText(/is safe\b(?! |\.)/);

  await page.getByTestId('sheet-leakage').click();
  await page.getByTestId('record-limit-of').fill('0.5 mA');
  await page.getByTestId('record-limit-of').press('Tab');
  await fields.nth(0).fill('0.7 mA');
  await fields.nth(0).press('Tab');
  await expect(verdicts.nth(0)).toHaveAttribute('data-verdict', 'too high');

  await page.getByTestId('leaf-bench').click();
  await page.getByTestId('tags').click();
  const flags = page.frameLocator('[data-testid=tags-frame]').locator('.flag');
  await expect(flags).toHaveCount(258);
  await page.getByTestId('labels-gone').fill('3');
  await expect(
    page.frameLocator('[data-testid=tags-frame]').locator('.grid').first().locator('> div')
  ).toHaveCount(24);
  await expect(page.getByTestId('tags-dialog')).toContainText('258 flags on 11 sheets');
  await page.keyboard.press('Escape');
  await page.reload();
  await waitForDrawing(page);
  await page.getByTestId('leaf-tests').click();
  await page.getByTestId('sheet-power-up').click();
  await expect(fields.nth(0)).toHaveValue('300 V');
});

for (const colorScheme of ['light', 'dark'] as const)
  test(`axe: leaves of the bench, ${colorScheme}`, async ({ page }) => {
    test.setTimeout(180_000);
    await page.emulateMedia({ colorScheme, reducedMotion: 'reduce' });
    await openFresh(page);
    await page.getByTestId('way-work').click();
    await expect(page.getByTestId('bench')).toBeVisible();
    await page.getByTestId('bench-wire-38').getByTestId('step-removed').click();
    await clean(page, 'bench list', '.left-page');
    await page.getByTestId('tags').click();
    await clean(page, 'tags', '[data-testid=tags-dialog]');
    await page.keyboard.press('Escape');
    await page.getByTestId('leaf-tests').click();
    for (const id of ['insulation', 'leakage', 'power-up']) {
      await page.getByTestId(`sheet-${id}`).click();
      await clean(page, id, '.left-page');
      await page.screenshot({ path: `test-results/test-sheet-${id}-${colorScheme}.png` });
    }
  });
