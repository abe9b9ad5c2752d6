// The window of a chart and everything that moves it. A chosen span follows the time; a window moved by hand stays where it was put.
import { useState } from 'preact/hooks';
import type { ChamberView } from '../../shared/api/chambers.ts';
import { DAY_MS, HOUR_MS } from '../../shared/units.ts';
import { keepInside, lastHours, pan, type Window, zoom } from './zoom.ts';
import type { ZoomActs, ZoomChoice } from './zoom-buttons.tsx';

const firstChoice = 6;
const panShare = 0.25;
const emptyChamberMs = 7 * DAY_MS;

/** All there is to show: from the opening of the batch to its planned end, or the last week. */
export function wholeWindow(batch: ChamberView['batch'], nowMs: number): Window {
  if (batch === null) return { fromMs: nowMs - emptyChamberMs, toMs: nowMs + HOUR_MS };
  const endMs = batch.endsAt === null ? nowMs + DAY_MS : Date.parse(batch.endsAt);
  return { fromMs: Math.min(Date.parse(batch.openedAt), nowMs - HOUR_MS), toMs: Math.max(endMs, nowMs + HOUR_MS) };
}

function windowOf(choice: ZoomChoice, nowMs: number, whole: Window): Window {
  return choice === 'whole' ? whole : keepInside(lastHours(nowMs, choice), whole);
}

export function useChartWindow(batch: ChamberView['batch'], nowMs: number) {
  const whole = wholeWindow(batch, nowMs);
  const [choice, setChoice] = useState<ZoomChoice | null>(firstChoice);
  const [moved, setMoved] = useState<Window>(whole);
  const shown = choice === null ? moved : windowOf(choice, nowMs, whole);
  const move = (next: Window) => {
    setChoice(null);
    setMoved(keepInside(next, whole));
  };
  const isNowShown = nowMs >= shown.fromMs && nowMs <= shown.toMs;
  const anchorMs = isNowShown ? nowMs : (shown.fromMs + shown.toMs) / 2;
  const spanMs = shown.toMs - shown.fromMs;
  const acts: ZoomActs = {
    earlier: () => move(pan(shown, -panShare, whole)),
    later: () => move(pan(shown, panShare, whole)),
    closer: () => move(zoom(shown, 0.5, anchorMs, whole)),
    wider: () => move(zoom(shown, 2, anchorMs, whole)),
    toStart: () => move({ fromMs: whole.fromMs, toMs: whole.fromMs + spanMs }),
    toNow: () => move(lastHours(nowMs, spanMs / HOUR_MS)),
    reset: () => setChoice(firstChoice),
  };
  return { shown, whole, choice, choose: setChoice, move, acts };
}

/** Keys that move a chart: arrows, plus and minus, Home for the beginning, End for now, 0 for how it was; with shift the arrows move the cross-hair. */
export function onChartKey(acts: ZoomActs, stepCrossHair: (by: -1 | 1) => void): (event: KeyboardEvent) => void {
  const keys: Record<string, () => void> = {
    ...{ ArrowLeft: acts.earlier, ArrowRight: acts.later, '+': acts.closer, '=': acts.closer, '-': acts.wider },
    ...{ Home: acts.toStart, End: acts.toNow, '0': acts.reset },
  };
  const shifted: Record<string, () => void> = {
    ArrowLeft: () => stepCrossHair(-1),
    ArrowRight: () => stepCrossHair(1),
  };
  return (event) => {
    const act = (event.shiftKey ? shifted[event.key] : undefined) ?? keys[event.key];
    if (act === undefined || event.ctrlKey || event.metaKey || event.altKey) return;
    event.preventDefault();
    act();
  };
}
