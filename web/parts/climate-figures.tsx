// The climate of a chamber now in three figures, each with today's limits. An old value is greyed and carries its time.
import type { ChamberView } from '../../shared/api/chambers.ts';
import { isOld, spanWords } from '../age.ts';
import { humidityText, limitText, temperatureText, vpdText } from '../quantities.ts';
import { words } from '../strings.ts';

interface FigureProps {
  readonly name: string;
  readonly value: string;
  readonly unit: string;
  readonly limits: string | null;
  readonly isBeyond: boolean;
}

function Figure({ name, value, unit, limits, isBeyond }: FigureProps) {
  return (
    <div class={isBeyond ? 'figure is-beyond' : 'figure'}>
      <dt class="unseen">{name}</dt>
      <dd>
        <span class="number">{value}</span>
        <span class="unit"> {unit}</span>
        {isBeyond && <span class="unseen"> {words.quantities.beyond}</span>}
        {limits !== null && <small>{limits}</small>}
      </dd>
    </div>
  );
}

interface Props {
  readonly chamber: ChamberView;
  readonly nowMs: number;
  readonly silenceMs: number;
}

export function ClimateFigures({ chamber, nowMs, silenceMs }: Props) {
  const { climate, limits } = chamber;
  const isStale = isOld(climate.at, nowMs, silenceMs);
  const { temperature, humidity } = limits ?? { temperature: null, humidity: null };
  const range = (band: typeof temperature, text: (value: number) => string) =>
    band === null ? null : words.quantities.limits(text(band.low), text(band.high));
  const isBeyond = (value: number | null, band: typeof temperature) =>
    value !== null && band !== null && (value < band.low || value > band.high);
  const hottest = climate.hottest ?? climate.temperature;
  const driest = climate.driest ?? climate.humidity;
  return (
    <div class={isStale ? 'figures is-stale' : 'figures'}>
      <dl>
        <Figure
          name={words.quantities.temperature}
          value={temperatureText(climate.temperature)}
          unit={words.units.celsius}
          limits={range(temperature, limitText)}
          isBeyond={!isStale && (isBeyond(climate.temperature, temperature) || isBeyond(hottest, temperature))}
        />
        <Figure
          name={words.quantities.humidity}
          value={humidityText(climate.humidity)}
          unit={words.units.humidity}
          limits={range(humidity, humidityText)}
          isBeyond={!isStale && (isBeyond(climate.humidity, humidity) || isBeyond(driest, humidity))}
        />
        <Figure
          name={words.quantities.vpd}
          value={vpdText(climate.vpdKpa)}
          unit={words.units.kpa}
          limits={null}
          isBeyond={false}
        />
      </dl>
      {isStale && climate.at !== null && climate.temperature !== null && (
        <p class="old-note">{words.state.old(spanWords(nowMs - Date.parse(climate.at)))}</p>
      )}
    </div>
  );
}
