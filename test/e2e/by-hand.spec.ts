// A chassis of 300 wires rearranged by hand in the diagram: its wires run anew while a part moves, none of them
// through a part, and the part stays where it was put.
import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from '@playwright/test';
import { saveDocument } from '#document/index.ts';
import { generateChassis } from '../helpers/generate-chassis.ts';
import { exported, expect, openFile, openFresh, test, waitForDrawing } from './story.ts';

/** Goes over the sheet until the pointer rests on a tube. */
const findTube = async (page: Page): Promise<{ x: number; y: number; name: string }> => {
  const box = (await page.getByTestId('sheet').boundingBox())!;
  for (let y = box.y + 150; y < box.y + box.height - 150; y += 9)
    for (let x = box.x + 130; x < box.x + box.width - 150; x += 9) {
      await page.mouse.move(x, y);
      const said = page.locator('.hover');
      const name = (await said.count()) > 0 ? ((await said.textContent()) ?? '').trim() : '';
      if (/^V\d+/.test(name)) return { x, y, name };
    }
  throw new Error('no tube on the sheet');
};

test('300 wires: a tube is dragged, its wires follow, it stays, and undo brings it back', async ({
  page
}) => {
  await openFresh(page);
  const path = join(mkdtempSync(join(tmpdir(), 'chassis-')), 'three-hundred.chassis.json');
  writeFileSync(path, saveDocument(generateChassis(300)));
  await openFile(page, path);
  await expect(page.locator('[role=row][data-wire]').first()).toBeVisible();
  await waitForDrawing(page);
  const { x, y } = await findTube(page);
  await page.mouse.down();
  for (let step = 1; step <= 20; step += 1) await page.mouse.move(x + step * 4, y + step * 3);
  await page.mouse.up();
  await expect(page.getByTestId('undo')).toBeEnabled();
  // The router says so where a wire found no room.
  await expect(page.getByTestId('layout-remark')).toHaveCount(0);
  const svg = await exported(page, 'export-menu', 'export-svg');
  expect(svg.match(/diagramPlace/g)).toHaveLength(1);
  await page.getByTestId('undo').click();
  const back = await exported(page, 'export-menu', 'export-svg');
  expect(back).not.toContain('diagramPlace');

  await page.getByTestId('view-menu').click();
  await page.getByTestId('colour-by-function').click();
  await expect(page.getByTestId('legend')).toContainText('heater');
  await page.getByTestId('view-menu').click();
  await page.getByTestId('show-findings').click();
  await page.screenshot({ path: 'test-results/by-function.png' });
});
