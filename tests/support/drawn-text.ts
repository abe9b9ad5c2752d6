// What a page writes on its canvases, since no one can ask a canvas for its text: each drawing from one clearing to the next is kept.
import type { Page } from 'playwright-core';

type Drawn = { drawnText?: WeakMap<HTMLCanvasElement, string[]> };

/** Begins to listen; call before the page is opened. */
export async function keepDrawnText(page: Page): Promise<void> {
  await page.addInitScript(() => {
    const texts = new WeakMap<HTMLCanvasElement, string[]>();
    (globalThis as Drawn).drawnText = texts;
    const { clearRect, fillText } = CanvasRenderingContext2D.prototype;
    CanvasRenderingContext2D.prototype.clearRect = function (...box) {
      texts.set(this.canvas, []);
      clearRect.apply(this, box);
    };
    CanvasRenderingContext2D.prototype.fillText = function (...given) {
      texts.get(this.canvas)?.push(given[0]);
      fillText.apply(this, given);
    };
  });
}

/** What stands on the canvas inside `selector`, in the order in which it was written. */
export async function drawnText(page: Page, selector: string): Promise<readonly string[]> {
  return page.locator(`${selector} canvas`).evaluate((canvas) => {
    const texts = (globalThis as Drawn).drawnText;
    return texts?.get(canvas as HTMLCanvasElement) ?? [];
  });
}
