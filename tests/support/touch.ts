// Fingers on a page, as the browser itself would report them: through its debugging protocol, so that scrolling and touch-action take part.
import type { CDPSession, Page } from 'playwright-core';

type Place = readonly [x: number, y: number];

const STEPS = 12;

/** Puts a finger down at the beginning of each path, moves all of them together in a dozen steps to its end, and lifts them. */
export async function moveFingers(
  page: Page,
  paths: readonly { readonly from: Place; readonly to: Place }[],
): Promise<void> {
  const session = await page.context().newCDPSession(page);
  const at = (share: number) =>
    paths.map(({ from, to }, id) => ({
      ...{ id, radiusX: 4, radiusY: 4 },
      x: from[0] + (to[0] - from[0]) * share,
      y: from[1] + (to[1] - from[1]) * share,
    }));
  await send(session, 'touchStart', at(0));
  for (let step = 1; step <= STEPS; step++) await send(session, 'touchMove', at(step / STEPS));
  await send(session, 'touchEnd', []);
  await session.detach();
}

async function send(
  session: CDPSession,
  type: 'touchStart' | 'touchMove' | 'touchEnd',
  touchPoints: { x: number; y: number; id: number; radiusX: number; radiusY: number }[],
): Promise<void> {
  await session.send('Input.dispatchTouchEvent', { type, touchPoints });
}
