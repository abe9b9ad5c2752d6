// The healing strip of a chamber: asked for when it comes into view, and again each minute while it is seen.
import { useSignalEffect } from '@preact/signals';
import { useEffect, useMemo, useRef, useState } from 'preact/hooks';
import type { ChamberView, ClimateSeries } from '../../shared/api/chambers.ts';
import { MINUTE_MS } from '../../shared/units.ts';
import { ApiProblem } from '../api.ts';
import { calls } from '../calls.ts';
import { changes } from '../live.ts';
import { zone } from '../session.ts';
import { words } from '../strings.ts';
import { temperatureUnit } from '../temperature-unit.ts';
import { StripCanvas } from './strip-canvas.tsx';
import { stripData } from './strip-data.ts';
import { summarizeStrip } from './summary.ts';
import { useSeen } from './use-seen.ts';

const bucketsWanted = 400;

interface Props {
  readonly chamber: ChamberView;
  readonly marked?: readonly [number, number] | null;
}

function useStripSeries(chamberId: string, isSeen: boolean, batchKey: string) {
  const [series, setSeries] = useState<ClimateSeries>();
  const [isMissing, setMissing] = useState(false);
  const [round, setRound] = useState(0);
  useEffect(() => {
    if (!isSeen) return;
    let isCurrent = true;
    calls
      .climate(chamberId, `points=${bucketsWanted}`)
      .then((answer) => {
        if (!isCurrent) return;
        setSeries(answer);
        setMissing(false);
      })
      .catch((problem: unknown) => {
        if (!(problem instanceof ApiProblem)) throw problem;
        if (isCurrent) setMissing(true);
      });
    const timer = setTimeout(() => setRound((count) => count + 1), MINUTE_MS);
    return () => {
      isCurrent = false;
      clearTimeout(timer);
    };
  }, [chamberId, isSeen, round, batchKey]);
  const askAgain = () => setRound((count) => count + 1);
  useSignalEffect(() => {
    if (changes.all.value > 0) askAgain();
  });
  return { series, isMissing };
}

/** The strip of this chamber's batch, or of its last day when it is empty. */
export function HealingStrip({ chamber, marked = null }: Props) {
  const host = useRef<HTMLDivElement>(null);
  const isSeen = useSeen(host);
  const { batch } = chamber;
  const batchKey = `${batch?.id} ${batch?.stage} ${batch?.onHold} ${batch?.endsAt} ${chamber.nextDue?.checkId} ${chamber.alarms.length}`;
  const { series, isMissing } = useStripSeries(chamber.id, isSeen, batchKey);
  const closedAt = batch?.closedAt ?? null;
  const data = useMemo(() => series && stripData(series, closedAt), [series, closedAt]);
  const siteZone = zone.value;
  const unit = temperatureUnit.value;
  // Sixty rows are told of every reading; the words of a strip change only with what it shows.
  const label = useMemo(
    () => data && `${words.strip.name(chamber.name)}. ${summarizeStrip(data, siteZone)}`,
    [data, siteZone, chamber.name, unit],
  );
  // Empty until the series has come: the style keeps a quiet ground in its place.
  return (
    <div class="strip" ref={host}>
      {data !== undefined && label !== undefined && (
        <StripCanvas data={data} zone={siteZone} marked={marked} label={label} />
      )}
      {data === undefined && isMissing && <p class="strip-missing">{words.strip.missing}</p>}
    </div>
  );
}
