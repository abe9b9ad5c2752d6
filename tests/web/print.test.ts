// What is printed: overview and batch on A4, upright, whole, in few pages. The printer is Chromium's own.
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { MINUTE_MS } from '../../shared/units.ts';
import { openBrowser, openPage, phone, signInOn, wallScreen } from '../support/browser.ts';
import { comeToRest } from '../support/look-at-page.ts';
import { DEMO_MANAGER, openStillDemo } from '../support/still-demo.ts';

const screens = join(import.meta.dirname, '../screens');

/** Pages and their size in points, as the file says it of each. */
function pagesOf(pdf: Buffer): { readonly count: number; readonly sizes: readonly string[] } {
  const text = pdf.toString('latin1');
  const boxes = [...text.matchAll(/\/MediaBox\s*\[0 0 ([\d.]+) ([\d.]+)\]/g)];
  return {
    count: [...text.matchAll(/\/Type\s*\/Page\b/g)].length,
    sizes: [...new Set(boxes.map(([, wide, high]) => `${Math.round(Number(wide))}×${Math.round(Number(high))}`))],
  };
}

it.each([
  { name: 'the wall screen', screen: wallScreen },
  { name: 'a phone', screen: phone },
])(
  'overview and batch print on A4 from $name',
  async ({ screen }) => {
    const demo = await openStillDemo();
    await demo.goOnTo(3 * MINUTE_MS);
    const page = await openPage(await openBrowser(), demo.url, screen);
    await page.goto('/');
    await signInOn(page, DEMO_MANAGER);
    mkdirSync(screens, { recursive: true });
    const tents = new Map((await demo.chambers()).map(({ name, id }) => [name, id]));
    for (const [name, path, most] of [
      ['overview', '/', 2],
      ['batch', `/chambers/${tents.get('Tent 3')}`, 3],
    ] as const) {
      await page.goto(path);
      await comeToRest(page);
      const pdf = await page.pdf({ preferCSSPageSize: true, printBackground: false });
      writeFileSync(join(screens, `print-${name}-${screen.width}.pdf`), pdf);
      const { count, sizes } = pagesOf(pdf);
      await page.emulateMedia({ media: 'print' });
      expect(count, `pages of ${name}`).toBeGreaterThan(0);
      expect(count, `pages of ${name}`).toBeLessThanOrEqual(most);
      // A4 is 210 × 297 mm (ISO 216), in points of 1/72 inch.
      expect(sizes, `size of ${name}`).toEqual(['595×842']);
      expect(await page.getByRole('button').filter({ visible: true }).count()).toBe(0);
      await page.getByText(/, as of 8 Apr 12:0\d/).waitFor();
      await page.emulateMedia({ media: null });
      await page.setViewportSize(screen);
    }
  },
  120_000,
);
