// The drawing to scale by hand: what is moved stays where it was put, and every move is one step of undo.
import { saveDocument } from '#document/index.ts';
import { mkdirSync, writeFileSync } from 'node:fs';
import { chassis } from '../helpers/chassis.ts';
import { expect, openFile, openFresh, test, waitForDrawing } from './story.ts';

for (const colorScheme of ['light', 'dark'] as const) {
  test.describe(colorScheme, () => {
    test.use({ colorScheme });

    test('a part is dragged, nudged and put back', async ({ page }) => {
      // One socket in the middle of its unit, so that the middle of the sheet is where it lies.
      const document = chassis('One socket')
        .unit('Main', { size: [300, 200] })
        .tube('V1', '6CG7', { at: [150, 100] })
        .build();
      mkdirSync('test-results', { recursive: true });
      writeFileSync('test-results/one-socket.chassis.json', saveDocument(document));
      await openFresh(page);
      await openFile(page, 'test-results/one-socket.chassis.json');
      await page.getByTestId('drawing-pictorial').click();
      await waitForDrawing(page);
      await page.getByTestId('fit').click();
      const undo = page.getByTestId('undo');
      await expect(undo).toBeDisabled();

      const sheet = page.getByTestId('sheet');
      const box = await sheet.boundingBox();
      if (box === null) throw new Error('the sheet is not there');
      // The drawing is shown in the middle of what the strip of tools leaves free.
      const rail = await page.getByRole('toolbar', { name: 'Tools' }).boundingBox();
      if (rail === null) throw new Error('the tools are not there');
      const free = rail.x + rail.width;
      const [x, y] = [(free + box.x + box.width) / 2, box.y + box.height / 2];
      await page.mouse.move(x, y);
      await page.mouse.down();
      await page.mouse.move(x + 70, y + 40, { steps: 5 });
      await page.screenshot({ path: `test-results/part-in-hand-${colorScheme}.png` });
      await page.mouse.up();
      await expect(undo).toHaveAttribute('title', /move V1/);

      // The drawing follows the edit a moment later: a press is for what is seen to lie there.
      await expect(async () => {
        await page.mouse.move(x + 66, y + 38);
        await page.mouse.move(x + 70, y + 40);
        await expect(page.locator('p.hover')).toContainText('V1', { timeout: 500 });
      }).toPass();
      await page.mouse.click(x + 70, y + 40);
      await expect(page.getByTestId('tag')).toContainText('V1');
      await sheet.focus();
      await page.keyboard.press('r');
      await expect(undo).toHaveAttribute('title', /turn V1/);
      await page.screenshot({ path: `test-results/part-turned-${colorScheme}.png` });
      await undo.click();
      await undo.click();
      await expect(undo).toBeDisabled();
    });
  });
}
