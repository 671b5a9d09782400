// Story: on a walk round the pins a photo is taken of the spot; it is there on the walk and on the tag.
import type { Page } from '@playwright/test';
import { expect, openFresh, test } from './story.ts';

/** A picture of one colour, drawn by the browser itself. */
const picture = async (page: Page): Promise<Buffer> => {
  const bytes = await page.evaluate(async () => {
    const canvas = new OffscreenCanvas(320, 240);
    const ink = canvas.getContext('2d');
    if (ink !== null) {
      ink.fillStyle = '#8a6f3c';
      ink.fillRect(0, 0, 320, 240);
    }
    const blob = await canvas.convertToBlob({ type: 'image/jpeg' });
    return [...new Uint8Array(await blob.arrayBuffer())];
  });
  return Buffer.from(bytes);
};

test('a photo of the spot is taken on the walk', async ({ page }) => {
  await openFresh(page);
  await page.getByTestId('pin-walk').click();
  await page.getByTestId('walk-V14').click();
  const here = (await page.getByTestId('walk-here').textContent()) ?? '';
  const chooser = page.waitForEvent('filechooser');
  await page.getByTestId('take-spot-photo').first().click();
  const buffer = await picture(page);
  await (await chooser).setFiles({ name: 'spot.jpg', mimeType: 'image/jpeg', buffer });
  const photos = page.getByTestId('spot-photos').first();
  await expect(photos.getByRole('button', { name: /^Look at/ })).toHaveCount(1);
  await page.getByTestId('walk-next').click();
  await expect(page.getByTestId('walk-here')).not.toHaveText(here);
  await expect(photos.getByRole('button', { name: /^Look at/ })).toHaveCount(0);
  await page.getByTestId('walk-back').click();
  await photos.getByRole('button', { name: /^Look at/ }).click();
  await expect(page.getByRole('dialog').getByRole('img')).toBeVisible();
});
