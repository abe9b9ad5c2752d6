// The window a chart shows, and how buttons, keys and dragging move it. Pure; all instants in ms.
import { HOUR_MS, MINUTE_MS } from '../../shared/units.ts';

export interface Window {
  readonly fromMs: number;
  readonly toMs: number;
}

export const shortestMs = 10 * MINUTE_MS;
/** Share of a "last hours" window that lies ahead of now, so that the next step of the corridor is seen before it comes. */
const aheadShare = 0.15;

/** A window of `hours` that ends a little after now. */
export function lastHours(nowMs: number, hours: number): Window {
  const span = hours * HOUR_MS;
  const toMs = nowMs + span * aheadShare;
  return { fromMs: toMs - span, toMs };
}

/** Moves a window into `whole` without changing its length, unless it is longer than `whole`. */
export function keepInside(window: Window, whole: Window): Window {
  const span = Math.min(window.toMs - window.fromMs, whole.toMs - whole.fromMs);
  const fromMs = Math.max(whole.fromMs, Math.min(window.fromMs, whole.toMs - span));
  return { fromMs, toMs: fromMs + span };
}

/** Moves by a share of its own length; negative is earlier. */
export function pan(window: Window, share: number, whole: Window): Window {
  const shift = (window.toMs - window.fromMs) * share;
  return keepInside({ fromMs: window.fromMs + shift, toMs: window.toMs + shift }, whole);
}

/** Makes the window `factor` times as long around an anchor instant; below 1 is closer. */
export function zoom(window: Window, factor: number, anchorMs: number, whole: Window): Window {
  const span = Math.max(shortestMs, (window.toMs - window.fromMs) * factor);
  const share = (anchorMs - window.fromMs) / (window.toMs - window.fromMs);
  const fromMs = anchorMs - span * share;
  return keepInside({ fromMs, toMs: fromMs + span }, whole);
}

/** Two fingers on a picture: where each is, CSS pixels from its left edge. */
export type Fingers = readonly [number, number];

/** Fingers closer than this have no distance to speak of. */
const nearestPx = 24;

/** The window after two fingers have moved: the instants that were under them are under them still. */
export function pinch(window: Window, before: Fingers, after: Fingers, widthPx: number, whole: Window): Window {
  const apart = (fingers: Fingers) => Math.max(nearestPx, Math.abs(fingers[1] - fingers[0]));
  const middle = (fingers: Fingers) => (fingers[0] + fingers[1]) / 2;
  const span = window.toMs - window.fromMs;
  const held = window.fromMs + (middle(before) / widthPx) * span;
  const longest = whole.toMs - whole.fromMs;
  const wanted = Math.min(longest, Math.max(shortestMs, (span * apart(before)) / apart(after)));
  const fromMs = held - (middle(after) / widthPx) * wanted;
  return keepInside({ fromMs, toMs: fromMs + wanted }, whole);
}
