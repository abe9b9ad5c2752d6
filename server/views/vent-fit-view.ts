// How good the fit behind a venting proposal is, as it is sent to people: a proposal without it would ask for blind trust.
import type { VentingView } from '../../shared/api/venting.ts';
import { utcText } from '../../shared/units.ts';
import type { ExchangeFit } from '../../shared/venting/fit-exchange.ts';
import { sayNoOpening } from '../../shared/venting/say-venting.ts';
import type { SharedWords } from '../../shared/words/shared-words.ts';
import type { FittedExchange } from '../venting/exchange-book.ts';

/** The fit, or none, and the changes of the gap that told nothing. */
export function viewFit(fitted: FittedExchange | null, words: SharedWords): Pick<VentingView, 'fit' | 'leftOut'> {
  if (fitted === null) return { fit: null, leftOut: [] };
  const { result, fittedMs } = fitted;
  const all = result.fit === null ? result.leftOut : result.fit.leftOut;
  const leftOut = all.map(({ gapPercent, atMs, refusal }) => {
    return { gapPercent, at: utcText(atMs), why: refusal.why, reason: sayNoOpening(refusal, words) };
  });
  return { fit: result.fit === null ? null : viewExchange(result.fit, fittedMs), leftOut };
}

function viewExchange({ readings, windows, r2, levels, source }: ExchangeFit, fittedMs: number): VentingView['fit'] {
  const { conductancePerHour, standardError, perHour, fromMs, toMs } = source;
  return {
    at: utcText(fittedMs),
    ...{ readings, windows, r2 },
    levels: [...levels],
    source: { ...{ conductancePerHour, standardError, perHour }, from: utcText(fromMs), to: utcText(toMs) },
  };
}
