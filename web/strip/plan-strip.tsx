// A profile as a strip, without anything measured: for reading a profile, and as the preview while one is edited.

import { useMemo, useRef } from 'preact/hooks';
import type { ProfileDocument } from '../../shared/healing/profile.ts';
import { HOUR_MS } from '../../shared/units.ts';
import { planText } from '../plan-text.ts';
import { words } from '../strings.ts';
import { temperatureUnit } from '../temperature-unit.ts';
import { planLayout, rowLayout } from './lanes.ts';
import { planSeries } from './plan-series.ts';
import type { PlotInput } from './plot.ts';
import { stripData } from './strip-data.ts';
import { summarizePlan } from './summary.ts';
import { usePlot } from './use-plot.ts';

interface Props {
  /**
   * A profile without faults (`profileFaults` of shared/healing/profile-faults.ts finds none). While a draft has faults, go on giving the last
   * whole one: the strip keeps showing it. Another object is another drawing, so keep the object while nothing has changed.
   */
  readonly document: ProfileDocument;
  /** Brackets round the part that is being edited, hours after closing; null for none. */
  readonly marked?: readonly [number, number] | null;
  /** With the scales of its values, about 260 px high; without, a row of about 130 px. The height is given by the style of what is around it. */
  readonly hasScales?: boolean;
}

/**
 * The plan from closing to its end: the corridor with its steps, the checks, the stages. Times of day (`notBefore`) and holds belong to a batch and
 * are not in it; house level is drawn at the number the profile falls back on. It redraws in place when the document changes.
 */
export function PlanStrip({ document, marked = null, hasScales = false }: Props) {
  const host = useRef<HTMLDivElement>(null);
  const unit = temperatureUnit.value;
  const data = useMemo(() => {
    const series = planSeries(document);
    return stripData(series, series.startsAt, true);
  }, [document]);
  const [fromHour, toHour] = marked ?? [null, null];
  const input = useMemo<PlotInput>(
    () => ({
      ...{ data, unit, zone: 'UTC', layout: hasScales ? planLayout : rowLayout },
      window: [data.fromSec, data.toSec],
      marked: fromHour === null || toHour === null ? null : [secondsOf(fromHour), secondsOf(toHour)],
    }),
    [data, unit, hasScales, fromHour, toHour],
  );
  usePlot(host, input);
  const label = useMemo(
    () => `${words.strip.planName(planText(document.name))}. ${summarizePlan(data)}`,
    [document, data],
  );
  return <div class="strip-canvas" role="img" aria-label={label} ref={host} />;
}

/** The plan begins at the epoch. */
function secondsOf(hours: number): number {
  return (hours * HOUR_MS) / 1000;
}
