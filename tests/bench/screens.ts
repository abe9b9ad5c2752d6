// The screens on a slow phone with sixty chambers, in a real Chromium: bytes of the first load, the first useful picture, and what a live update costs.
import { gzipSync } from 'node:zlib';
import type { Browser, CDPSession, Page } from 'playwright-core';
import { launchBrowser } from '../support/launch-browser.ts';
import { openBarePage } from './bare-page.ts';
import { type BenchLine, makeLine } from './bench-line.ts';
import { firstLoad } from './first-load.ts';
import { BENCH_MANAGER, type Nursery, openNursery, TENTS } from './open-nursery.ts';

const BUDGET_KB = 110;
const BUDGET_MS = 8;
const CPU_SLOWER = 4;
const LOADS = 5;
const UPDATES = 120;
const ROUNDS = 3;
/** "Slow 4G" as Lighthouse has it (from memory): 150 ms there and back, 1.6 Mbit/s down, 750 kbit/s up. */
const SLOW_4G = { offline: false, latency: 150, downloadThroughput: 204_800, uploadThroughput: 93_750 };

export async function* measureScreens(): AsyncGenerator<BenchLine> {
  yield measureBytes();
  const nursery = await openNursery();
  const browser = await launchBrowser();
  yield* measureLoad(browser, nursery);
  yield* measureUpdates(browser, nursery);
  await browser.close();
  await nursery.close();
}

function measureBytes(): BenchLine {
  const bytes = firstLoad().reduce((sum, { text }) => sum + gzipSync(text).length, 0);
  const pair = { floor: BUDGET_KB, measured: bytes / 1_000 };
  return makeLine('first load: script and style, gzip (the floor is the budget)', 'kB', 'at most 1', [pair]);
}

/** From asking for the page to the first row of the overview on the screen, beside a bare page that is sent the same bytes. */
async function* measureLoad(browser: Browser, nursery: Nursery): AsyncGenerator<BenchLine> {
  const bare = await openBarePage(nursery);
  const rows: { floor: number; measured: number }[] = [];
  for (let round = 0; round < LOADS; round += 1) {
    const floor = await timeLoad(browser, bare.url, null);
    rows.push({ floor, measured: await timeLoad(browser, nursery.url, nursery) });
  }
  await bare.close();
  const where = `${TENTS} chambers, CPU ${CPU_SLOWER}× slower, slow 4G`;
  const beside = 'at most 2 (floor: the same bytes on a bare page)';
  yield makeLine(`first useful picture: which chamber needs someone, ${where}`, 'ms', beside, rows);
}

type Seen = { seenMs?: number };

async function timeLoad(browser: Browser, url: string, nursery: Nursery | null): Promise<number> {
  const { page, session, close } = await openPhone(browser, url, nursery);
  await session.send('Network.enable');
  await session.send('Network.setCacheDisabled', { cacheDisabled: true });
  await session.send('Network.emulateNetworkConditions', SLOW_4G);
  await session.send('Emulation.setCPUThrottlingRate', { rate: CPU_SLOWER });
  await page.addInitScript(() => {
    const look = () => {
      if (document.querySelector('.row .sentence') === null) requestAnimationFrame(look);
      else (globalThis as Seen).seenMs = performance.now();
    };
    requestAnimationFrame(look);
  });
  await page.goto(url, { waitUntil: 'commit' });
  const isSeen = () => (globalThis as Seen).seenMs !== undefined;
  await page.waitForFunction(isSeen, undefined, { timeout: 60_000, polling: 200 });
  const seenMs = await page.evaluate(() => (globalThis as Seen).seenMs ?? Number.NaN);
  await close();
  return seenMs;
}

/** Scripting for one new reading that is told to a page with sixty rows, by the browser's own count. */
async function* measureUpdates(browser: Browser, nursery: Nursery): AsyncGenerator<BenchLine> {
  const { page, session, close } = await openPhone(browser, nursery.url, nursery);
  await page.addInitScript(() => {
    const counter = globalThis as { updates?: number };
    counter.updates = 0;
    const { addEventListener } = EventSource.prototype;
    EventSource.prototype.addEventListener = function (this: EventSource, kind: string, ...rest: [never]) {
      if (kind === 'climate')
        addEventListener.call(this, kind, () => {
          counter.updates = (counter.updates ?? 0) + 1;
        });
      addEventListener.call(this, kind, ...rest);
    } as typeof addEventListener;
  });
  await page.goto(nursery.url);
  // Of many chambers a phone draws strips only where something is wrong: here there are none.
  await page.locator('.row .sentence').first().waitFor();
  await page.waitForTimeout(3_000);
  await session.send('Emulation.setCPUThrottlingRate', { rate: CPU_SLOWER });
  await session.send('Performance.enable');
  const pairs: { floor: number; measured: number }[] = [];
  for (let round = 0; round < ROUNDS; round += 1) {
    const before = await scripting(page, session);
    for (let n = 0; n < UPDATES; n += 1) {
      await nursery.measure(n % TENTS, 23 + ((n + round) % 20) / 10);
      await page.waitForTimeout(25);
    }
    await page.waitForTimeout(500);
    const after = await scripting(page, session);
    const updates = after.updates - before.updates;
    if (updates < UPDATES / 2)
      throw new Error(`the page was told of ${updates} of ${UPDATES}: the figure means nothing`);
    pairs.push({ floor: BUDGET_MS, measured: (after.ms - before.ms) / updates });
  }
  await close();
  const name = `live update, ${TENTS} chambers, CPU ${CPU_SLOWER}× slower: scripting (the floor is the budget)`;
  yield makeLine(name, 'ms', 'at most 1', pairs);
}

async function scripting(page: Page, session: CDPSession): Promise<{ ms: number; updates: number }> {
  const { metrics } = await session.send('Performance.getMetrics');
  const seconds = metrics.find(({ name }) => name === 'ScriptDuration')?.value ?? Number.NaN;
  const updates = await page.evaluate(() => (globalThis as { updates?: number }).updates ?? 0);
  return { ms: seconds * 1_000, updates };
}

async function openPhone(browser: Browser, url: string, nursery: Nursery | null) {
  const context = await browser.newContext({
    ...{ locale: 'en-US', viewport: { width: 360, height: 740 }, serviceWorkers: 'block' },
  });
  if (nursery !== null) await context.request.post(`${url}/api/v1/session`, { data: BENCH_MANAGER });
  const page = await context.newPage();
  const session = await context.newCDPSession(page);
  return { page, session, close: () => context.close() };
}
