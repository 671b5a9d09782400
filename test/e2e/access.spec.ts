// Every page and dialog, light and dark, wide and phone, against axe-core's rules (WCAG 2.2 A, AA).
import { clean } from './clean.ts';
import { test, waitForDrawing } from './story.ts';

// axe looks at every cell of the schedule.
test.setTimeout(300_000);

for (const colorScheme of ['light', 'dark'] as const) {
  test(`wide, ${colorScheme}`, async ({ page }) => {
    await page.emulateMedia({ colorScheme, reducedMotion: 'reduce' });
    await page.goto('./');
    await page.getByTestId('cautions-read').waitFor();
    await clean(page, 'cautions');
    await page.getByTestId('cautions-read').click();
    await clean(page, 'guide', '[data-testid=guide]');
    await page.getByTestId('guide-done').click();
    await waitForDrawing(page);
    await page.getByTestId('note-1').click();
    await clean(page, 'editor with a wire picked');
    await page.screenshot({ path: `test-results/editor-${colorScheme}.png` });
    for (const menu of ['file-menu', 'view-menu', 'help-menu']) {
      await page.getByTestId(menu).click();
      await clean(page, menu, '[role=menu]');
      await page.keyboard.press('Escape');
    }
    await page.getByTestId('help-menu').click();
    await page.getByTestId('about').click();
    await clean(page, 'about');
  });

  test(`phone, ${colorScheme}`, async ({ page }) => {
    await page.setViewportSize({ width: 390, height: 844 });
    await page.emulateMedia({ colorScheme, reducedMotion: 'reduce' });
    await page.goto('./');
    await page.getByTestId('cautions-read').click();
    await page.getByTestId('guide-done').click();
    for (const name of ['schedule', 'sheet', 'notes', 'tag']) {
      await page.getByTestId(`page-${name}`).click();
      await clean(page, name);
      await page.screenshot({ path: `test-results/phone-${name}-${colorScheme}.png` });
    }
  });
}
