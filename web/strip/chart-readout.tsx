// The values at the cross-hair, or the last ones heard, above the chart; with what happened there and what is expected there.
import {
  humidityLimitText,
  humidityText,
  temperatureLimitText,
  temperatureText,
  withTemperature,
} from '../quantities.ts';
import { words } from '../strings.ts';
import { dayAndTime } from '../when.ts';
import { eventsWithin, eventWords } from './event-words.ts';
import { forecastAt } from './forecast-at.ts';
import { type Column, heardIndex, type StripData } from './strip-data.ts';
import type { Window } from './zoom.ts';

interface Props {
  readonly data: StripData | undefined;
  readonly shown: Window;
  readonly atSec: number | null;
  readonly zone: string;
  readonly nowMs: number;
  /** The cross-hair was moved by keys: what stands there is to be read out. */
  readonly isSpoken: boolean;
}

/** Marks nearer to the cross-hair than this share of the window count as under it. */
const nearShare = 1 / 80;
const mostEvents = 3;

function lastHeardIndex(data: StripData): number {
  return data.series.temperature.mean.findLastIndex((value) => value !== null);
}

/** The index of the bucket that holds an instant; −1 when it is outside. */
export function bucketAt(data: StripData, atSec: number): number {
  const index = Math.floor((atSec - data.fromSec) / data.bucketSeconds);
  return index >= 0 && index < data.starts.length ? index : -1;
}

function Measured({
  data,
  index,
  atSec,
}: {
  readonly data: StripData;
  readonly index: number;
  readonly atSec: number;
}) {
  const { temperature, humidity, badShare, forecast, houseHumidity, houseTemperature } = data.series;
  const heard = heardIndex(data, index);
  const at = (column: Column) => column[heard ?? index] ?? null;
  const foreseen = forecastAt(forecast, atSec);
  const isHeard = heard !== null;
  const isAhead = data.nowSec !== null && (data.starts[index] ?? 0) > data.nowSec;
  const doubted = Math.round((at(badShare) ?? 0) * 100);
  return (
    <>
      {isHeard && (
        <>
          <span class="read-temperature">
            {words.chart.readTemperature(
              withTemperature(at(temperature.mean)),
              temperatureText(at(temperature.min)),
              temperatureText(at(temperature.max)),
            )}
          </span>
          <span class="read-humidity">
            {words.chart.readHumidity(
              humidityText(at(humidity.mean)),
              humidityText(at(humidity.min)),
              humidityText(at(humidity.max)),
            )}
          </span>
        </>
      )}
      {!isHeard && isAhead && foreseen !== null && (
        <span class="read-temperature">
          {words.chart.readForecast(
            withTemperature(foreseen.middle),
            temperatureText(foreseen.low),
            temperatureText(foreseen.high),
          )}
        </span>
      )}
      {!isHeard && !isAhead && <span>{words.chart.readGap}</span>}
      {doubted > 0 && <span>{words.chart.readDoubted(doubted)}</span>}
      {at(houseHumidity) !== null && (
        <span class="read-house">
          {words.chart.readHouse(withTemperature(at(houseTemperature)), humidityText(at(houseHumidity)))}
        </span>
      )}
    </>
  );
}

function Plan({ data, index }: { readonly data: StripData; readonly index: number }) {
  const { humidity, temperature } = data.series.corridor;
  const at = (column: Column) => column[index] ?? null;
  if (at(humidity.low) === null) return null;
  const climate = words.chart.range(
    temperatureLimitText(at(temperature.low)),
    temperatureLimitText(at(temperature.high)),
  );
  const damp = words.chart.range(humidityLimitText(at(humidity.low)), humidityLimitText(at(humidity.high)));
  return <span>{words.chart.readPlan(climate, damp)}</span>;
}

type HappenedProps = Omit<Props, 'isSpoken'> & { readonly data: StripData; readonly atSec: number };

function Happened({ data, atSec, shown, zone, nowMs }: HappenedProps) {
  const near = ((shown.toMs - shown.fromMs) / 1000) * nearShare;
  const events = eventsWithin(data.series.events, atSec - near, atSec + near);
  if (events.length === 0) return null;
  const said = [...new Set(events.map((event) => eventWords(event, nowMs, zone)))];
  const rest = said.length - mostEvents;
  return (
    <span class="read-events">
      {said.slice(0, mostEvents).join(' · ')}
      {rest > 0 && ` ${words.chart.andMore(rest)}`}
    </span>
  );
}

export function ChartReadout({ data, shown, atSec, zone, nowMs, isSpoken }: Props) {
  if (data === undefined) return <p class="readout">{words.chart.loading}</p>;
  const index = atSec === null ? lastHeardIndex(data) : bucketAt(data, atSec);
  if (index < 0) return <p class="readout">{words.chart.none}</p>;
  const instant = atSec ?? data.starts[index] ?? 0;
  return (
    <p class="readout" aria-live={isSpoken ? 'polite' : 'off'}>
      <b>{words.chart.readout(dayAndTime((data.starts[index] ?? 0) * 1000, nowMs, zone))}</b>
      <Measured data={data} index={index} atSec={instant} />
      <Plan data={data} index={index} />
      {atSec !== null && <Happened data={data} atSec={instant} shown={shown} zone={zone} nowMs={nowMs} />}
    </p>
  );
}
