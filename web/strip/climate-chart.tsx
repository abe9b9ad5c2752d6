// The live chart of a chamber: moved by buttons first, then keys and dragging; the same values as a table on demand.
import { useEffect, useMemo, useState } from 'preact/hooks';
import type { ChamberView } from '../../shared/api/chambers.ts';
import { slowNowMs } from '../clock.ts';
import { zone } from '../session.ts';
import { words } from '../strings.ts';
import { ChartPicture } from './chart-picture.tsx';
import { ChartReadout } from './chart-readout.tsx';
import { ClimateTable } from './climate-table.tsx';
import { type StripData, stripData } from './strip-data.ts';
import { onChartKey, useChartWindow } from './use-chart-window.ts';
import { useClimate } from './use-climate.ts';
import { useCrossHair } from './use-cross-hair.ts';
import type { Window } from './zoom.ts';
import { ZoomButtons } from './zoom-buttons.tsx';

interface Props {
  readonly chamber: ChamberView;
  /** Told which window is shown, so that the strip above can mark it. */
  readonly onWindow: (window: Window) => void;
}

function Failed({ onAgain }: { readonly onAgain: () => void }) {
  return (
    <p class="chart-note" role="alert">
      {words.chart.failed}{' '}
      <button type="button" class="quiet" onClick={onAgain}>
        {words.chart.again}
      </button>
    </p>
  );
}

export function ClimateChart({ chamber, onWindow }: Props) {
  const nowMs = slowNowMs.value;
  const siteZone = zone.value;
  const { shown, whole, choice, choose, move, acts } = useChartWindow(chamber.batch, nowMs);
  const { series, isMissing, askAgain } = useClimate(chamber, shown, whole);
  const [isTable, setTable] = useState(false);
  const closedAt = chamber.batch?.closedAt ?? null;
  const data = useMemo<StripData | undefined>(() => series && stripData(series, closedAt), [series, closedAt]);
  const { atSec, isSpoken, point, step } = useCrossHair(data, shown);
  useEffect(() => onWindow(shown), [shown.fromMs, shown.toMs]);
  return (
    <section class="chart" aria-labelledby="chart-title">
      <div class="chart-head">
        <h2 id="chart-title">{words.chart.title}</h2>
        <ZoomButtons choice={choice} onChoose={choose} acts={acts} hasBatch={chamber.batch !== null} />
      </div>
      <ChartReadout {...{ data, shown, atSec, isSpoken, nowMs }} zone={siteZone} />
      <div class="chart-box" hidden={isTable}>
        <ChartPicture
          {...{ data, shown, whole, atSec, zone: siteZone }}
          onMove={move}
          onKeyDown={onChartKey(acts, step)}
          onPoint={point}
        />
      </div>
      {isMissing && <Failed onAgain={askAgain} />}
      {isTable && data !== undefined && <ClimateTable data={data} shown={shown} zone={siteZone} nowMs={nowMs} />}
      <button type="button" class="quiet" onClick={() => setTable(!isTable)}>
        {isTable ? words.chart.asChart : words.chart.asTable}
      </button>
    </section>
  );
}
