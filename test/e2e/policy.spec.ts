// Story: another floor for the supply rails, judged again at once; a figure that cannot be; axe.
import { clean } from './clean.ts';
import { cellOf, expect, openFresh, test } from './story.ts';

test('what the judging goes by can be changed, and put back', async ({ page }) => {
  await openFresh(page);
  await expect(cellOf(page, '38', 'needs')).toHaveText('600 V');
  await page.getByTestId('view-menu').click();
  await page.getByTestId('policy-open').click();
  const floor = page.getByTestId('policy-supplyFloorV');
  await floor.fill('1kV');
  await floor.press('Enter');
  await page.getByTestId('policy-marginRequired').fill('0.5');
  await page.getByTestId('policy-marginRequired').press('Tab');
  await expect(page.getByTestId('policy')).toContainText('it cannot be below 1');
  await clean(page, 'policy', '[data-testid=policy]');
  await page.keyboard.press('Escape');
  await expect(cellOf(page, '38', 'needs')).toHaveText('1 kV');
  await page.getByTestId('undo').click();
  await expect(cellOf(page, '38', 'needs')).toHaveText('600 V');
});
