// The handbook beside the chassis: sums for the bench, how we know, list of rules. Each page works by
// key and by thumb, opens again from its address, loads nothing of the drawing, and is clean to axe.
import AxeBuilder from '@axe-core/playwright';
import type { Page } from '@playwright/test';
import { expect, test, typeInto, cellOf, openFresh } from './story.ts';

const phone = { width: 390, height: 844 };
const fullSum = './sums#voltage-drop?awg=22&length=10ft&amps=1.2A&volts=6.3V';

const result = (page: Page, name: string) => page.getByTestId(`result-${name}`);
const allWorkedOut = (page: Page) =>
  expect(page.getByTestId('outcome')).toContainText('worked out in this browser', {
    timeout: 120_000
  });

test('a link opens a sum with its answer, and what is typed goes into the address', async ({
  page
}) => {
  await page.goto(fullSum);
  // 20 ft of 22 AWG at 16.14 ohm per 1000 ft (published wire table) x 1.2 A = 0.387 V.
  await expect(result(page, 'drop')).toContainText('387.4 mV');
  const length = page.getByTestId('field-length');
  await length.fill('3 m');
  await expect(result(page, 'drop')).toContainText('381.3 mV');
  await expect(page).toHaveURL(/length=3\+m/);
  await page.reload();
  await expect(length).toHaveValue('3 m');
  await expect(result(page, 'drop')).toContainText('381.3 mV');
  await page.getByRole('link', { name: 'Wire size by gauge' }).click();
  await expect(page.getByRole('heading', { name: /Wire size by gauge/ })).toBeVisible();
  await page.goBack();
  await expect(length).toHaveValue('3 m');
});

test('bad input says at its field what is wrong, and no old answer stands', async ({ page }) => {
  await page.goto(fullSum);
  await expect(result(page, 'drop')).toBeVisible();
  const length = page.getByTestId('field-length');
  await length.fill('10q');
  await expect(length).toHaveAttribute('aria-invalid', 'true');
  await expect(length).toHaveAccessibleDescription(
    /"q" is no unit of length.*Accepted: from 0 to 100000 m.*Write it as 10ft/
  );
  await expect(length).toHaveValue('10q');
  await expect(page.getByTestId('answer')).toContainText('No answer yet: length to put right');
  await expect(page.getByTestId('answer')).not.toContainText(/\d/);
  await page.getByTestId('clear').click();
  await expect(page.getByTestId('answer')).toContainText(
    'awg, length, amps and volts still needed'
  );
  await page.getByTestId('example').click();
  await expect(result(page, 'drop')).toContainText('387.4 mV');
});

test('blank volts are never a low class', async ({ page }) => {
  await page.goto('./sums#insulation-class');
  await expect(page.getByTestId('answer')).toContainText('at least one of dc, ac or pulse needed');
  await page.getByTestId('field-dc').fill('285');
  await expect(result(page, 'required')).toContainText('at least 600 V');
  await page.getByTestId('field-ac').fill('0');
  await page.getByTestId('field-pulse').fill('0');
  await expect(result(page, 'required')).not.toContainText('at least');
});

test('cautions stand beside the sums that touch lethal voltages', async ({ page }) => {
  for (const id of ['discharge', 'anode-resistor', 'air-gap']) {
    await page.goto(`./sums#${id}`);
    await expect(page.getByTestId('caution'), id).toContainText('can kill');
  }
  await page.goto('./sums#wire-size');
  await expect(page.getByTestId('sum')).toBeVisible();
  await expect(page.getByTestId('caution')).toHaveCount(0);
});

test('a sum by keys alone', async ({ page }) => {
  await page.goto('./sums');
  await page.getByRole('link', { name: 'Pick-up between two wires' }).focus();
  await page.keyboard.press('Enter');
  await page.getByTestId('field-spacing').focus();
  for (const text of ['2mm', '0.64mm', '0.3m', '2', '6.3V', '60Hz', '500k']) {
    await page.keyboard.type(text);
    await page.keyboard.press('Enter');
  }
  await expect(result(page, 'pickup')).toContainText(/V/);
  await page.goto('./sums#air-gap');
  await page.getByTestId('field-peak').focus();
  await page.keyboard.type('2.5kV');
  await page.keyboard.press('Tab');
  await page.keyboard.press('Space');
  await page.keyboard.press('Tab');
  await page.keyboard.press('Tab');
  await page.keyboard.press('ArrowRight');
  await expect(page.getByRole('radio', { name: '2', exact: true })).toBeChecked();
  // IEC 60664-1 Table F.2, 2.5 kV, inhomogeneous field, pollution degree 2.
  await expect(result(page, 'clearance')).toContainText('1.5 mm');
});

test('a bundle is packed beside the page and drawn', async ({ page }) => {
  await page.goto('./sums#bundle?diameters=7x1mm');
  // Seven equal circles need a hole of three diameters.
  await expect(result(page, 'packed')).toContainText('3 mm');
  await expect(page.getByRole('img', { name: /The wires as packed/ })).toBeVisible();
  await page.getByTestId('field-diameters').fill('60x1mm,20x2mm');
  await expect(page.getByTestId('answer')).toContainText('Working it out');
  await expect(result(page, 'packed')).toBeVisible();
});

test('by one thumb: contents, a sum, units to tap, the answer in sight', async ({ browser }) => {
  const context = await browser.newContext({ viewport: phone, hasTouch: true, isMobile: true });
  const page = await context.newPage();
  await page.goto('./sums');
  await page.getByRole('link', { name: 'Volts lost in a run' }).tap();
  for (const [name, number, unit] of [
    ['length', '10', 'ft'],
    ['amps', '450', 'mA'],
    ['volts', '6.3', 'V']
  ] as const) {
    await page.getByTestId(`field-${name}`).fill(number);
    await page
      .getByRole('group', { name: `Unit of ${name}` })
      .getByText(unit, { exact: true })
      .tap();
    await expect(page.getByTestId(`field-${name}`)).toHaveValue(`${number} ${unit}`);
  }
  await page.getByTestId('field-awg').fill('22');
  await page.getByTestId('field-temperature').tap();
  await expect(result(page, 'drop')).toContainText('145.3 mV');
  await expect(result(page, 'drop')).toBeInViewport();
  const small = await page
    .locator('main button:visible, main input:visible, header a:visible, header button:visible')
    .evaluateAll((all) =>
      all
        .map((one) => (one instanceof HTMLInputElement ? (one.closest('label') ?? one) : one))
        .filter((one) => one.getBoundingClientRect().height < 31)
        .map((one) => one.outerHTML)
    );
  expect(small).toEqual([]);
  await page.getByTestId('contents').tap();
  await page.getByRole('link', { name: 'Twin lead' }).tap();
  await expect(page.getByRole('heading', { name: /Twin lead/ })).toBeVisible();
  await context.close();
});

test('every published figure is worked out in the browser, filtered and found', async ({
  page
}) => {
  await page.goto('./proof#air-gap');
  await expect(page.getByRole('heading', { name: /Distance through air/ })).toBeInViewport();
  await allWorkedOut(page);
  await expect(page.getByTestId('outcome')).toContainText('all are within what their row allows');
  const rows = page.locator('[data-testid=proof-table] tbody tr');
  const all = await rows.count();
  expect(all).toBeGreaterThanOrEqual(120);
  await page.getByTestId('filter').fill('stranded');
  await expect(page.getByText(new RegExp(`^\\d+ of ${all} figures$`))).toBeVisible();
  expect(await rows.count()).toBeLessThan(all / 4);
  await page.getByTestId('filter').fill('no such words at all');
  await expect(page.getByText('No figure holds all of these words')).toBeVisible();
  await page.getByTestId('filter').fill('');
  await expect(rows).toHaveCount(all);
});

test('the pages print without what only a screen needs, in day inks', async ({ page }) => {
  await page.emulateMedia({ colorScheme: 'dark' });
  await page.goto('./proof');
  await allWorkedOut(page);
  await page.emulateMedia({ media: 'print' });
  await expect(page.getByRole('heading', { name: 'How we know' })).toBeVisible();
  await expect(page.getByRole('navigation')).toHaveCount(0);
  await expect(page.getByTestId('filter')).toBeHidden();
  await expect(page.getByTestId('paper-menu')).toBeHidden();
  const themeOn = (event: string) =>
    page.evaluate((name) => {
      window.dispatchEvent(new Event(name));
      return document.documentElement.dataset['theme'];
    }, event);
  expect(await themeOn('beforeprint')).toBe('light');
  expect(await themeOn('afterprint')).toBe('dark');
});

test('the rules are listed, worst first, and each has a place of its own', async ({ page }) => {
  await page.goto('./rules#number-twice');
  await expect(page.locator('#number-twice')).toBeInViewport();
  const groups = page.locator('main h2');
  await expect(groups.first()).toContainText('Danger');
  const all = await page.locator('main article').count();
  expect(all).toBeGreaterThanOrEqual(20);
  await page.getByTestId('filter').fill('shield hum');
  expect(await page.locator('main article').count()).toBeLessThan(all);
  await expect(page.locator('#shield-ground')).toBeVisible();
});

test('the handbook opens beside the chassis, which keeps its undo', async ({ page }) => {
  await openFresh(page);
  await typeInto(page, '35', 'colour', 'green');
  await page.getByTestId('help-menu').click();
  const opened = page.waitForEvent('popup');
  await page.getByTestId('handbook-sums').click();
  const handbook = await opened;
  await handbook.getByRole('link', { name: 'Rules' }).click();
  await expect(handbook.getByRole('heading', { name: 'List of rules' })).toBeVisible();
  const closed = handbook.waitForEvent('close');
  await handbook.getByTestId('back').click();
  await closed;
  await expect(cellOf(page, '35', 'colour')).toContainText('green');
  await page.getByTestId('undo').click();
  await expect(cellOf(page, '35', 'colour')).not.toContainText('green');
});

test('without a chassis behind it the handbook leads to one', async ({ page }) => {
  await page.goto('./rules');
  await page.getByTestId('back').click();
  await expect(page.getByTestId('cautions-read')).toBeVisible();
});

for (const path of ['sums', 'proof', 'rules'])
  test(`${path} loads nothing of the drawing and states no style inline`, async ({ page }) => {
    const scripts: Promise<{ url: string; text: string }>[] = [];
    page.on('response', (response) => {
      const url = response.url();
      if (url.endsWith('.js')) scripts.push(response.text().then((text) => ({ url, text })));
    });
    await page.goto(`./${path}`, { waitUntil: 'networkidle' });
    const loaded = await Promise.all(scripts);
    expect(loaded.length).toBeGreaterThan(3);
    const drawn = loaded.filter(({ text }) => /Konva|layout-worker/.test(text));
    expect(drawn.map(({ url }) => url)).toEqual([]);
    await expect(page.locator('.handbook [style], .handbook[style]')).toHaveCount(0);
  });

const clean = async (page: Page, where: string): Promise<void> => {
  const { violations } = await new AxeBuilder({ page }).analyze();
  expect(
    violations.map(({ id, nodes }) => `${where}: ${id}: ${nodes[0]?.html ?? ''}`),
    where
  ).toEqual([]);
};

const places = [
  ['sums', './sums'],
  ['sum', fullSum],
  ['sum with bad input', './sums#voltage-drop?awg=22&length=10q'],
  ['sum with a caution', './sums#discharge?capacitance=100uF&resistance=100k&from=350V&to=60V'],
  ['sum with a lower bound', './sums#insulation-class?dc=18kV'],
  ['sum with choices', './sums#air-gap?peak=18kV'],
  ['bundle', './sums#bundle?diameters=12x1.6,3x2.4'],
  ['proof', './proof'],
  ['rules', './rules']
] as const;

for (const colorScheme of ['light', 'dark'] as const)
  for (const [screen, size] of [
    ['wide', { width: 1440, height: 900 }],
    ['phone', phone]
  ] as const)
    test(`axe: ${screen}, ${colorScheme}`, async ({ page }) => {
      test.setTimeout(300_000);
      await page.setViewportSize(size);
      await page.emulateMedia({ colorScheme, reducedMotion: 'reduce' });
      for (const [name, url] of places) {
        await page.goto('about:blank');
        await page.goto(url);
        await expect(page.getByRole('heading', { level: 1 })).toBeVisible();
        if (name === 'proof') {
          await allWorkedOut(page);
          // axe looks at every cell: all of them once, then a part.
          if (screen !== 'wide' || colorScheme !== 'light')
            await page.getByTestId('filter').fill('bundle');
        }
        if (name === 'bundle') await expect(result(page, 'packed')).toBeVisible();
        await clean(page, name);
        const over = await page.evaluate(
          () => document.documentElement.scrollWidth - window.innerWidth
        );
        expect(over, `${name} is wider than the screen`).toBeLessThanOrEqual(0);
        const file = name.replaceAll(' ', '-');
        await page.screenshot({ path: `test-results/${file}-${screen}-${colorScheme}.png` });
      }
    });
