// The values at the place pointed to, or the last ones heard, in one line above the chart.
import { humidityLimitText, humidityText, temperatureText, withTemperature } from '../quantities.ts';
import { words } from '../strings.ts';
import { dayAndTime } from '../when.ts';
import type { Column, StripData } from './strip-data.ts';

interface Props {
  readonly data: StripData | undefined;
  readonly atSec: number | null;
  readonly zone: string;
  readonly nowMs: number;
}

function lastHeardIndex(data: StripData): number {
  return data.series.temperature.mean.findLastIndex((value) => value !== null);
}

/** The index of the bucket that holds an instant; −1 when it is outside. */
export function bucketAt(data: StripData, atSec: number): number {
  const index = Math.floor((atSec - data.fromSec) / data.bucketSeconds);
  return index >= 0 && index < data.starts.length ? index : -1;
}

export function ChartReadout({ data, atSec, zone, nowMs }: Props) {
  if (data === undefined) return <p class="readout">{words.chart.loading}</p>;
  const index = atSec === null ? lastHeardIndex(data) : bucketAt(data, atSec);
  if (index < 0) return <p class="readout">{words.chart.none}</p>;
  const { temperature, humidity, corridor } = data.series;
  const at = (column: Column) => column[index] ?? null;
  const isHeard = at(temperature.mean) !== null || at(humidity.mean) !== null;
  const low = at(corridor.humidity.low);
  return (
    <p class="readout">
      <b>{words.chart.readout(dayAndTime((data.starts[index] ?? 0) * 1000, nowMs, zone))}</b>
      {isHeard ? (
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
      ) : (
        <span>{words.chart.readGap}</span>
      )}
      {low !== null && (
        <span>{words.chart.readPlan(humidityLimitText(low), humidityLimitText(at(corridor.humidity.high)))}</span>
      )}
    </p>
  );
}
