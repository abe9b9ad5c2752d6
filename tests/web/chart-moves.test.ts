// The chart of a chamber under fingers, mouse and keys, in a real browser: every way of moving it, its values, and the same as a table.
import type { Locator, Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import type { ClimateSeries } from '../../shared/api/chambers.ts';
import { MINUTE_MS } from '../../shared/units.ts';
import { openBrowser, openPage, phone, signInOn, wallScreen } from '../support/browser.ts';
import { comeToRest, watchConsole } from '../support/look-at-page.ts';
import { DEMO_MANAGER, openStillDemo } from '../support/still-demo.ts';
import { moveFingers } from '../support/touch.ts';

interface Shown {
  readonly from: number;
  readonly to: number;
  readonly span: number;
}

/** The window as its table says it, minutes of the day: every window of these tests lies in one day. */
async function shownWindow(page: Page): Promise<Shown> {
  await page.getByRole('button', { name: 'Values as a table' }).click();
  const caption = (await page.locator('.chart caption').textContent()) ?? '';
  await page.getByRole('button', { name: 'Values as a chart' }).click();
  const [from = 0, to = 0] = [...caption.matchAll(/(\d\d):(\d\d)/g)].map(([, h, m]) => Number(h) * 60 + Number(m));
  return { from, to, span: to - from };
}

async function openChart(isTouch: boolean) {
  const demo = await openStillDemo();
  await demo.goOnTo(MINUTE_MS);
  const browser = await openBrowser();
  const page = await openPage(browser, demo.url, isTouch ? phone : wallScreen, { hasTouch: isTouch });
  const faults = watchConsole(page);
  await page.goto('/');
  await signInOn(page, DEMO_MANAGER);
  const chamber = await demo.hot();
  await page.goto(`/chambers/${chamber.id}`);
  await comeToRest(page);
  const picture = page.getByRole('group', { name: /Arrow keys move/ });
  await picture.scrollIntoViewIfNeeded();
  return { demo, page, faults, picture, chamber };
}

async function placeIn(picture: Locator, shareX: number, shareY = 0.5): Promise<readonly [number, number]> {
  const box = await picture.boundingBox();
  if (box === null) throw new Error('the chart is not on the page');
  return [box.x + box.width * shareX, box.y + box.height * shareY];
}

const readout = (page: Page) => page.locator('.readout');

describe('with fingers on a phone', () => {
  it('one finger drags, two stretch, a tap reads a value and leaves it there, and Reset brings everything back', async () => {
    const { page, picture, faults } = await openChart(true);
    const first = await shownWindow(page);
    expect(first.span).toBe(360);

    await picture.scrollIntoViewIfNeeded();
    await moveFingers(page, [{ from: await placeIn(picture, 0.3), to: await placeIn(picture, 0.8) }]);
    const dragged = await shownWindow(page);
    expect(dragged.span).toBe(360);
    expect(dragged.from).toBeLessThan(first.from - 90);

    await moveFingers(page, [
      { from: await placeIn(picture, 0.45), to: await placeIn(picture, 0.3) },
      { from: await placeIn(picture, 0.6), to: await placeIn(picture, 0.75) },
    ]);
    const stretched = await shownWindow(page);
    expect(stretched.span).toBeGreaterThan(100);
    expect(stretched.span).toBeLessThan(140);
    expect(stretched.from).toBeGreaterThan(dragged.from);
    expect(stretched.to).toBeLessThan(dragged.to);

    await page.getByRole('button', { name: 'Reset' }).click();
    expect(await shownWindow(page)).toEqual(first);
    expect(await page.getByRole('button', { name: '6 h', exact: true }).getAttribute('aria-pressed')).toBe('true');

    const last = await readout(page).textContent();
    await page.touchscreen.tap(...(await placeIn(picture, 0.4)));
    await expect.poll(() => readout(page).textContent()).not.toBe(last);
    await page.waitForTimeout(300);
    expect(await readout(page).textContent()).not.toBe(last);
    expect(faults).toEqual([]);
  }, 90_000);

  it('a finger that goes up or down scrolls the page and leaves the chart where it is', async () => {
    const { page, picture } = await openChart(true);
    const before = await shownWindow(page);
    const scrolled = () => page.evaluate(() => scrollY);
    await picture.scrollIntoViewIfNeeded();
    const startY = await scrolled();
    await moveFingers(page, [{ from: await placeIn(picture, 0.5, 0.9), to: await placeIn(picture, 0.52, 0.1) }]);
    await expect.poll(scrolled).toBeGreaterThan(startY);
    expect(await shownWindow(page)).toEqual(before);
  }, 90_000);
});

describe('with a mouse', () => {
  it('drags; a wheel scrolls the page until the chart has the focus, then it zooms', async () => {
    const { page, picture } = await openChart(false);
    const first = await shownWindow(page);
    const [x, y] = await placeIn(picture, 0.5);
    await page.mouse.move(x, y);
    await page.mouse.wheel(0, 100);
    await expect.poll(() => page.evaluate(() => scrollY)).toBeGreaterThan(0);
    expect(await shownWindow(page)).toEqual(first);

    await picture.focus();
    await page.mouse.move(...(await placeIn(picture, 0.5)));
    await page.mouse.wheel(0, -400);
    await expect.poll(async () => (await shownWindow(page)).span).toBeLessThan(200);

    await page.mouse.move(...(await placeIn(picture, 0.4)));
    await page.mouse.down();
    await page.mouse.move(...(await placeIn(picture, 0.6)), { steps: 5 });
    await page.mouse.up();
    expect((await shownWindow(page)).from).toBeLessThan(first.to - 200);
  }, 90_000);
});

describe('with keys only', () => {
  it('moves, zooms, goes to the beginning and to now, resets, and reads values out at the cross-hair', async () => {
    const { page, picture } = await openChart(false);
    const first = await shownWindow(page);
    await picture.focus();
    await page.keyboard.press('+');
    expect((await shownWindow(page)).span).toBe(180);
    await picture.focus();
    await page.keyboard.press('ArrowLeft');
    const earlier = await shownWindow(page);
    expect(earlier.span).toBe(180);
    await picture.focus();
    await page.keyboard.press('End');
    const now = await shownWindow(page);
    expect(now.span).toBe(180);
    expect(now.to).toBeGreaterThan(earlier.to);
    await picture.focus();
    await page.keyboard.press('Home');
    expect((await shownWindow(page)).span).toBe(180);
    await picture.focus();
    await page.keyboard.press('-');
    await page.keyboard.press('0');
    expect(await shownWindow(page)).toEqual(first);

    await picture.focus();
    const said: string[] = [];
    for (let i = 0; i < 3; i++) {
      const before = await readout(page).locator('b').textContent();
      await page.keyboard.press('Shift+ArrowLeft');
      await expect.poll(() => readout(page).locator('b').textContent()).not.toBe(before);
      said.push((await readout(page).locator('b').textContent()) ?? '');
    }
    expect(new Set(said).size).toBe(3);
    expect(await readout(page).getAttribute('aria-live')).toBe('polite');
  }, 90_000);
});

describe('the table', () => {
  it('holds the data of the chart: lowest, highest and mean of each row, gaps and what happened', async () => {
    const { page, chamber } = await openChart(false);
    const answered = page.waitForResponse((answer) => answer.url().includes(`${chamber.id}/climate?from`));
    await page.getByRole('button', { name: 'Whole healing' }).click();
    const series = (await (await answered).json()) as ClimateSeries;
    await page.getByRole('button', { name: 'Values as a table' }).click();
    const rows = page.locator('.chart tbody tr');
    await expect.poll(() => rows.count()).toBeGreaterThan(10);
    const cells = await rows.evaluateAll((all) =>
      all.map((row) => [...row.querySelectorAll('td')].map((cell) => cell.textContent)),
    );
    expect(cells.map(([temperature]) => temperature)).toEqual(wantedRows(series, series.temperature, 1));
    expect(cells.map(([, , humidity]) => humidity)).toEqual(wantedRows(series, series.humidity, 0));
    const listed = await page.locator('.chart .plain-list li').allTextContents();
    const logged = series.events.filter(({ kind }) => kind === 'log');
    expect(listed.filter((text) => text.includes('Misted'))).toHaveLength(
      logged.filter(({ what }) => what === 'mist').length,
    );
    expect(listed.length).toBeGreaterThanOrEqual(logged.length);
  }, 90_000);
});

/** Rows reckoned by the test itself: at most sixty of equal length up to now, means of means, lowest and highest kept. */
function wantedRows(series: ClimateSeries, { min, mean, max }: ClimateSeries['humidity'], digits: number): string[] {
  const startMs = (index: number) => Date.parse(series.startsAt) + index * series.bucketSeconds * 1000;
  let past = 0;
  while (past < mean.length && startMs(past) <= Date.parse(series.now)) past++;
  const size = Math.ceil(past / 60);
  const rows: string[] = [];
  for (let from = 0; from < past; from += size) {
    const known = (column: readonly (number | null)[]) =>
      column.slice(from, Math.min(past, from + size)).filter((value) => value !== null);
    const means = known(mean);
    const average = means.reduce((sum, one) => sum + one, 0) / means.length;
    const [low, high] = [Math.min(...known(min)), Math.max(...known(max))];
    const said = `${average.toFixed(digits)} (${low.toFixed(digits)}–${high.toFixed(digits)})`;
    rows.push(means.length === 0 ? 'nothing heard' : said);
  }
  return rows;
}
