// What sixty strips may cost: one that is off the screen is neither asked for nor drawn, and a new reading redraws none.
import { expect, it } from 'vitest';
import { openBrowser, openPage, phone, signInOn } from '../support/browser.ts';
import { openBigNursery } from '../support/open-big-nursery.ts';
import { MANAGER } from '../support/open-test-app.ts';

type Counted = { drawings?: number };

it('only strips near the screen are drawn, and a reading draws none of them again', async () => {
  const { app, clock } = await openBigNursery();
  const page = await openPage(await openBrowser(), app.url, phone);
  await page.addInitScript(() => {
    const counted = globalThis as Counted;
    counted.drawings = 0;
    const { clearRect } = CanvasRenderingContext2D.prototype;
    CanvasRenderingContext2D.prototype.clearRect = function (...box) {
      counted.drawings = (counted.drawings ?? 0) + 1;
      clearRect.apply(this, box);
    };
  });
  const asked: string[] = [];
  page.on('request', (request) => {
    if (request.url().includes('/climate')) asked.push(request.url());
  });
  await page.goto('/');
  await signInOn(page, MANAGER);
  await page.locator('.strip canvas').first().waitFor();

  const drawings = () => page.evaluate(() => (globalThis as Counted).drawings ?? 0);
  await expect.poll(() => page.locator('.strip canvas').count()).toBe(new Set(asked).size);
  const near = await page.locator('.strip canvas').count();
  expect(near).toBeGreaterThan(0);
  expect(near).toBeLessThan(20);

  const before = await drawings();
  // The first row is hot; its figure changes on the page, its strip does not.
  for (let index = 0; index < 60; index++)
    await app.intake.push({
      topic: `takewell/v1/node-${index}/readings`,
      payload: new TextEncoder().encode(JSON.stringify({ temperature: 31.7, humidity: 95, probe: 'a' })),
      arrivalMs: clock.nowMs(),
      retained: false,
    });
  await page.getByText('31.7').first().waitFor();
  expect(await drawings()).toBe(before);
}, 120_000);
