// A strip as one picture: the canvas, and the same in words for those who do not see it.
import { useMemo, useRef } from 'preact/hooks';
import { temperatureUnit } from '../temperature-unit.ts';
import { rowLayout } from './lanes.ts';
import type { PlotInput } from './plot.ts';
import type { StripData } from './strip-data.ts';
import { usePlot } from './use-plot.ts';

interface Props {
  readonly data: StripData;
  readonly zone: string;
  readonly label: string;
  readonly marked?: readonly [number, number] | null;
}

export function StripCanvas({ data, zone, label, marked = null }: Props) {
  const host = useRef<HTMLDivElement>(null);
  const unit = temperatureUnit.value;
  const input = useMemo<PlotInput>(
    () => ({ data, layout: rowLayout, zone, unit, window: [data.fromSec, data.toSec], marked }),
    [data, zone, unit, marked?.[0], marked?.[1]],
  );
  usePlot(host, input);
  return <div class="strip-canvas" role="img" aria-label={label} ref={host} />;
}
