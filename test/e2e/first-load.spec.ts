// Story: the first visit over a thin line. What is fetched before the schedule can be read and typed in is
// counted as it comes from the server, packed, and then shown to be all that is needed for it.
import type { Page } from '@playwright/test';
import { cellOf, expect, openFresh, test, typeInto } from './story.ts';

/** Bytes, packed: pages, code, style and the demonstration. The faces are counted apart: the text stands
 *  without them. The layout's worker comes with the drawing and is not among them. */
const mostBytes = 250_000;

interface Fetched {
  readonly path: string;
  readonly bytes: number;
}

/** Notes the moment at which the first wire of the schedule and the button under the cautions are there. */
const watchForUse = async (page: Page): Promise<void> => {
  await page.addInitScript(() => {
    const isThere = (): boolean =>
      document.querySelector('[data-testid^=row-]') !== null &&
      document.querySelector('dialog[open] [data-testid=cautions-read]') !== null;
    new MutationObserver((_, observer) => {
      if (!isThere()) return;
      observer.disconnect();
      performance.mark('usable');
    }).observe(document, { childList: true, subtree: true, attributes: true });
  });
};

/** What was asked for so far, or before the page could be used. */
const fetched = (page: Page, until: 'usable' | 'now'): Promise<readonly Fetched[]> =>
  page.evaluate((end) => {
    const [mark] = performance.getEntriesByName('usable');
    const latest = end === 'now' ? performance.now() : (mark?.startTime ?? Number.NaN);
    return [
      ...performance.getEntriesByType('navigation'),
      ...performance.getEntriesByType('resource')
    ].flatMap((entry) => {
      const { name, startTime, encodedBodySize } = entry as PerformanceResourceTiming;
      const path = new URL(name).pathname;
      return startTime <= latest ? [{ path, bytes: encodedBodySize }] : [];
    });
  }, until);

const isFace = ({ path }: Fetched): boolean => /\.woff2?$/.test(path);
const sum = (list: readonly Fetched[]): number => list.reduce((all, { bytes }) => all + bytes, 0);

test('the first visit: at most 250 kB before the schedule can be used', async ({
  page,
  browser,
  baseURL
}) => {
  await watchForUse(page);
  await openFresh(page);
  const before = await fetched(page, 'usable');
  const all = await fetched(page, 'now');
  // Code, style, page and demonstration are all there, and none came from a cache.
  for (const kind of [/^\/$/, /\.js$/, /\.css$/, /console-21\.chassis\.json$/])
    expect(before.filter(({ path, bytes }) => kind.test(path) && bytes > 0)).not.toEqual([]);
  expect(before.filter(({ path, bytes }) => bytes === 0 && !isFace({ path, bytes }))).toEqual([]);
  expect(before.filter(({ path }) => /layout-worker/.test(path))).toEqual([]);
  const first = before.filter((one) => !isFace(one));
  const drawn = all.filter((one) => !isFace(one) && !/layout-worker/.test(one.path));
  const words = [
    `before use ${(sum(first) / 1000).toFixed(1)} kB in ${first.length} files`,
    `faces ${(sum(all.filter(isFace)) / 1000).toFixed(1)} kB`,
    `with the drawing ${(sum(drawn) / 1000).toFixed(1)} kB`
  ].join(', ');
  console.log(`    First load, packed: ${words}`);
  expect(sum(first), words).toBeLessThanOrEqual(mostBytes);

  // Nothing else is fetched: the schedule is read, typed into and kept all the same, and nobody is told
  // that there is no finding.
  const context = await browser.newContext(baseURL === undefined ? {} : { baseURL });
  const thin = await context.newPage();
  const allowed = new Set(before.map(({ path }) => path));
  await thin.route('**/*', (route) =>
    allowed.has(new URL(route.request().url()).pathname) ? route.continue() : route.abort()
  );
  await thin.goto('./');
  await thin.getByTestId('cautions-read').click();
  await expect(cellOf(thin, '38', 'needs')).toHaveText('600 V');
  await typeInto(thin, '38', 'carries', '5 kV pk');
  await expect(cellOf(thin, '38', 'needs')).toHaveText('10 kV');
  await expect(thin.getByTestId('not-judged')).toContainText('nothing here has been judged');
  await expect(thin.getByTestId('notes')).not.toContainText('No finding');
  await expect(thin.locator('header.bar')).toContainText('kept in this browser');
  await thin.reload();
  await expect(cellOf(thin, '38', 'carries')).toContainText('5 kV pk');
  await context.close();
});
