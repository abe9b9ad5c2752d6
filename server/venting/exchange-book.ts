// The fit of each batch, kept: it costs far more than an answer may, so that it is made anew only when the gap changes or has stood for a while.
import type { Batch } from '../../shared/healing/batch.ts';
import { MINUTE_MS } from '../../shared/units.ts';
import { gapChanges, type VentLogEntry } from '../../shared/venting/cut-windows.ts';
import { type ExchangeResult, fitExchangeStepwise } from '../../shared/venting/fit-exchange.ts';
import type { Store } from '../store/store.ts';
import { gatherExchange } from './gather-exchange.ts';

/** How long a fit stands while the gap is not changed. */
const STANDS_MS = 10 * MINUTE_MS;

export interface FittedExchange {
  readonly result: ExchangeResult;
  readonly fittedMs: number;
}

export interface ExchangeBook {
  /** The fit of a batch; the log is its own, in any order. Rejects with the store's Problems. */
  fitOf(
    batch: Batch,
    log: readonly VentLogEntry[],
    now: { readonly altitudeM: number; readonly nowMs: number },
  ): Promise<FittedExchange>;
}

interface Kept {
  readonly changes: string;
  readonly fittedMs: number;
  readonly fitted: Promise<FittedExchange>;
}

export function createExchangeBook(store: Store): ExchangeBook {
  const kept = new Map<string, Kept>();
  return {
    fitOf(batch, log, now) {
      const known = kept.get(batch.id);
      const changes = [now.altitudeM, ...gapChanges(log).map(({ atMs, gapPercent }) => `${atMs} ${gapPercent}`)].join();
      const isFresh = known?.changes === changes && Math.abs(now.nowMs - known.fittedMs) < STANDS_MS;
      if (known !== undefined && isFresh) return known.fitted;
      const fitted = fitNow(store, batch, log, now);
      const entry = { changes, fittedMs: now.nowMs, fitted };
      kept.set(batch.id, entry);
      // A fit that failed is not kept: the next who asks tries again. The failure itself is the caller's.
      fitted.catch(() => {
        if (kept.get(batch.id) === entry) kept.delete(batch.id);
      });
      return fitted;
    },
  };
}

async function fitNow(
  store: Store,
  batch: Batch,
  log: readonly VentLogEntry[],
  now: { readonly altitudeM: number; readonly nowMs: number },
): Promise<FittedExchange> {
  const work = fitExchangeStepwise(await gatherExchange(store, batch, log, now));
  for (let step = work.next(); ; step = work.next()) {
    if (step.done === true) return { result: step.value, fittedMs: now.nowMs };
    // A window takes up to some tens of milliseconds: readings that arrive meanwhile do not wait for all of them.
    await new Promise((resolve) => setImmediate(resolve));
  }
}
