// The values behind a chart as a real table, at most sixty rows, with what happened under it.
import { humidityLimitText, humidityText, temperatureLimitText, temperatureText } from '../quantities.ts';
import { words } from '../strings.ts';
import { temperatureUnit } from '../temperature-unit.ts';
import { dayAndTime } from '../when.ts';
import { eventsWithin, eventTime, eventWords } from './event-words.ts';
import type { StripData } from './strip-data.ts';
import { type TableRow, type Triple, tableRows } from './table-rows.ts';
import type { Window } from './zoom.ts';

interface Props {
  readonly data: StripData;
  readonly shown: Window;
  readonly zone: string;
  readonly nowMs: number;
}

function triple({ min, mean, max }: Triple, isGap: boolean, text: (value: number | null) => string): string {
  if (mean === null) return isGap ? words.chart.readGap : words.units.none;
  return words.chart.meanMinMax(text(mean), text(min), text(max));
}

function ClimateRow({ row, time }: { readonly row: TableRow; readonly time: string }) {
  return (
    <tr>
      <th scope="row">{time}</th>
      <td>{triple(row.temperature, row.isGap, temperatureText)}</td>
      <td>
        {row.temperatureHigh === null
          ? ''
          : words.chart.range(temperatureLimitText(row.temperatureLow), temperatureLimitText(row.temperatureHigh))}
      </td>
      <td>{triple(row.humidity, row.isGap, humidityText)}</td>
      <td>
        {row.humidityLow === null
          ? ''
          : words.chart.range(humidityLimitText(row.humidityLow), humidityLimitText(row.humidityHigh))}
      </td>
      <td>{words.chart.pair(temperatureText(row.houseTemperature), humidityText(row.house))}</td>
      <td>{row.badShare === null ? '' : words.chart.share(Math.round(row.badShare * 100))}</td>
    </tr>
  );
}

export function ClimateTable({ data, shown, zone, nowMs }: Props) {
  const [fromSec, toSec] = [shown.fromMs / 1000, shown.toMs / 1000];
  const rows = tableRows(data, 60, { fromSec, toSec });
  const time = (seconds: number) => dayAndTime(seconds * 1000, nowMs, zone);
  const { columns } = words.chart;
  const unit = temperatureUnit.value;
  const happened = eventsWithin(data.series.events, fromSec, toSec);
  return (
    <div class="table-box">
      <table>
        <caption>{words.chart.tableCaption(time(fromSec), time(toSec))}</caption>
        <thead>
          <tr>
            {[
              ...[columns.time, columns.temperature(unit), columns.tempPlan(unit), columns.humidity, columns.corridor],
              ...[columns.house(unit), columns.bad],
            ].map((name) => (
              <th key={name} scope="col">
                {name}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => (
            <ClimateRow key={row.startSec} row={row} time={time(row.startSec)} />
          ))}
        </tbody>
      </table>
      {happened.length > 0 && (
        <>
          <h3>{words.chart.events}</h3>
          <ul class="plain-list">
            {happened.map((event) => (
              <li key={`${event.at} ${event.kind} ${event.what} ${event.label}`}>
                <time dateTime={event.at}>{eventTime(event, nowMs, zone)}</time> {eventWords(event, nowMs, zone)}
              </li>
            ))}
          </ul>
        </>
      )}
    </div>
  );
}
