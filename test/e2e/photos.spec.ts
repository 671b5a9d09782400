// A photo with a place in it is dropped on a blank chassis, made true to scale by four corners, measured,
// and still there after the page is opened anew.
import type { Page } from '@playwright/test';
import { buildPhoto, drop, findDots, setCorners } from './plate.ts';
import { expect, exported, openFresh, test, waitForDrawing } from './story.ts';

const blank = async (page: Page): Promise<void> => {
  await openFresh(page);
  await page.getByTestId('file-menu').click();
  await page.getByTestId('new').click();
  await page.getByTestId('new-start').click();
  await expect(page.getByTestId('new-chassis')).toBeHidden();
};

for (const colorScheme of ['light', 'dark'] as const) {
  test.describe(colorScheme, () => {
    test.use({ colorScheme });

    test('a photo is dropped, made true to scale, measured and kept', async ({ page }) => {
      await blank(page);
      const photo = await buildPhoto(page);
      expect(atob(photo)).toContain('51.5074');
      await drop(page, 'underside of the set.jpg', 'image/jpeg', photo);
      await expect(page.getByTestId('photo-row')).toHaveCount(1);
      await waitForDrawing(page);
      await expect(page.getByTestId('photo-scale-words')).toContainText('nothing can be measured');
      await page.screenshot({ path: `test-results/photo-unscaled-${colorScheme}.png` });

      await page.getByTestId('photo-scale').click();
      await expect(page.getByTestId('handle-3')).toBeVisible();
      await setCorners(page);
      await page.getByTestId('scale-width').fill('300 mm');
      await expect(page.getByTestId('scale-save')).toBeDisabled();
      await page.getByTestId('scale-height').fill('200');
      await page.getByTestId('handle-1').focus();
      await page.screenshot({ path: `test-results/photo-scaling-${colorScheme}.png` });
      await page.getByTestId('scale-save').click();
      await expect(page.getByTestId('photo-scale-words')).toContainText('300 mm by 200 mm');
      await page.waitForTimeout(1500);
      await page.screenshot({ path: `test-results/photo-scaled-${colorScheme}.png` });

      const svg = await exported(page, 'export-menu', 'export-svg');
      const picture = /href="data:image\/jpeg;base64,([^"]+)"/.exec(svg)?.[1] ?? '';
      expect(picture.length).toBeGreaterThan(1000);
      expect(atob(picture)).not.toMatch(/Exif|51\.5074/);

      await page.reload();
      await waitForDrawing(page);
      await page.getByTestId('drawing-pictorial').click();
      await page.getByTestId('photos').click();
      await expect(page.getByTestId('photo-scale-words')).toContainText('300 mm by 200 mm');
      await page.getByTestId('photos').click();

      // From the first dot to the last: 200 mm across and 100 mm down.
      await page.getByTestId('tool-measure').click();
      const dots = await findDots(page);
      expect(dots).toHaveLength(15);
      for (const { x, y } of [dots[0]!, dots.at(-1)!]) await page.mouse.click(x, y);
      const said = await page.locator('.in-hand').textContent();
      const measured = Number(/([\d.]+) mm/.exec(said ?? '')?.[1]);
      expect(Math.abs(measured / Math.hypot(200, 100) - 1)).toBeLessThan(0.01);
      await page.screenshot({ path: `test-results/photo-measured-${colorScheme}.png` });
    });
  });
}

test.describe('on a phone', () => {
  test.use({ viewport: { width: 390, height: 844 }, hasTouch: true });

  test('a broken and an unreadable picture are refused in words, a good one is scaled', async ({
    page
  }) => {
    await openFresh(page);
    const heic = `\0\0\0\x18ftypheic\0\0\0\0mif1heic`;
    await drop(page, 'spot.heic', 'image/heic', Buffer.from(heic, 'latin1').toString('base64'));
    await expect(page.getByTestId('photo-problems')).toContainText('HEIC picture');
    const photo = await buildPhoto(page);
    await drop(page, 'cut.jpg', 'image/jpeg', photo.slice(0, 400));
    await expect(page.getByTestId('photo-problems')).toContainText('cut.jpg');
    await drop(page, 'plate.jpg', 'image/jpeg', photo);
    await expect(page.getByTestId('photo-row')).toHaveCount(1);
    await expect(page.getByTestId('photo-problems')).toBeHidden();
    await page.screenshot({ path: 'test-results/photo-panel-phone.png' });
    await page.getByTestId('photo-scale').click();
    await setCorners(page);
    await page.getByTestId('handle-2').focus();
    await page.screenshot({ path: 'test-results/photo-scaling-phone.png' });
    await page.getByTestId('scale-by-pair').click();
    await page.getByTestId('scale-distance').fill('8 in');
    await page.getByTestId('scale-distance').press('Enter');
    await expect(page.getByTestId('photo-scale-words')).toContainText('apart');
  });
});
