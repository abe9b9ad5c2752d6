// The climate of a chamber for the window of a chart: asked anew when the window moves and while it shows the present.
import { useEffect, useState } from 'preact/hooks';
import type { ChamberView, ClimateSeries } from '../../shared/api/chambers.ts';
import { HOUR_MS, MINUTE_MS, SECOND_MS } from '../../shared/units.ts';
import { ApiProblem } from '../api.ts';
import { calls } from '../calls.ts';
import type { Window } from './zoom.ts';

const settleMs = 150;
const points = 500;

/** How long an answer stands before the present is asked for again: short for a short window, a minute for a long one. */
function refreshMs(window: Window): number {
  return window.toMs - window.fromMs <= 2 * HOUR_MS ? 10 * SECOND_MS : MINUTE_MS / 2;
}

/** Windows are asked for a little wider than shown, so that dragging does not meet an empty edge. */
function queryOf(window: Window, whole: Window): string {
  const spare = (window.toMs - window.fromMs) / 4;
  const time = (ms: number) => new Date(Math.round(ms / 1000) * 1000).toISOString();
  return `from=${time(Math.max(whole.fromMs, window.fromMs - spare))}&to=${time(Math.min(whole.toMs, window.toMs + spare))}&points=${points}`;
}

export function useClimate(chamber: ChamberView, window: Window, whole: Window) {
  const [series, setSeries] = useState<ClimateSeries>();
  const [isMissing, setMissing] = useState(false);
  const [round, setRound] = useState(0);
  const askAgain = () => setRound((count) => count + 1);
  // A window that follows the time moves all the while; it is asked for anew by its own round, not at each step.
  const spanMs = window.toMs - window.fromMs;
  const coarse = Math.round(window.fromMs / Math.max(SECOND_MS, spanMs / 24));
  const { batch } = chamber;
  const batchKey = `${batch?.id} ${batch?.stage} ${batch?.onHold} ${chamber.nextDue?.checkId} ${chamber.alarms.length}`;
  useEffect(() => {
    let isCurrent = true;
    const ask = async () => {
      try {
        const answer = await calls.climate(chamber.id, queryOf(window, whole));
        if (!isCurrent) return;
        setSeries(answer);
        setMissing(false);
      } catch (problem) {
        if (!(problem instanceof ApiProblem)) throw problem;
        if (isCurrent) setMissing(true);
      }
    };
    const settle = setTimeout(() => void ask(), settleMs);
    const refresh = setTimeout(askAgain, refreshMs(window));
    return () => {
      isCurrent = false;
      clearTimeout(settle);
      clearTimeout(refresh);
    };
  }, [chamber.id, coarse, spanMs, round, batchKey]);
  return { series, isMissing, askAgain };
}
