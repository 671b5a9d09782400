// Story: by key alone to a wire, a terminal and a command; axe on the box.
import AxeBuilder from '@axe-core/playwright';
import { expect, openFresh, test } from './story.ts';

test('one field goes anywhere and does anything', async ({ page }) => {
  await openFresh(page);
  await page.keyboard.press('Control+K');
  await page.keyboard.type('over 1 kV');
  await expect(page.getByTestId('go').getByRole('option').first()).toContainText('25 kV');
  await expect(page.getByTestId('go')).toContainText('it is not known');
  const results = await new AxeBuilder({ page }).include('[data-testid=go]').analyze();
  expect(results.violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html}`)).toEqual([]);

  await page.getByTestId('go-text').fill('V14-2');
  await page.keyboard.press('Enter');
  await expect(page.getByTestId('go')).toBeHidden();
  await expect(page.getByTestId('tag')).toContainText('V14');

  await page.keyboard.press('Control+K');
  await page.keyboard.type('night');
  await page.keyboard.press('Enter');
  await expect(page.locator('html')).toHaveAttribute('data-theme', 'dark');
  await page.keyboard.press('Control+K');
});
