// The climate of a chamber now in three figures, each with today's limits. An old value is greyed and carries its time.
import type { ChamberView } from '../../shared/api/chambers.ts';
import { isOld, spanWords } from '../age.ts';
import { beyondPlan } from '../beyond-plan.ts';
import { silenceMsOf } from '../chamber-state.ts';
import { humidityText, temperatureLimitText, temperatureText, vpdText } from '../quantities.ts';
import { words } from '../strings.ts';
import { temperatureUnit } from '../temperature-unit.ts';

interface FigureProps {
  readonly name: string;
  readonly value: string;
  readonly unit: string;
  /** What stands under the number. */
  readonly below: string | null;
  readonly isBeyond?: boolean;
}

function Figure({ name, value, unit, below, isBeyond = false }: FigureProps) {
  return (
    <div class={isBeyond ? 'figure is-beyond' : 'figure'}>
      <dt class="unseen">{name}</dt>
      <dd>
        <span>
          <span class="number">{value}</span>
          <span class="unit"> {unit}</span>
          {isBeyond && <span class="unseen"> {words.quantities.beyond}</span>}
        </span>
        {below !== null && <small>{below}</small>}
      </dd>
    </div>
  );
}

interface Props {
  readonly chamber: ChamberView;
  readonly nowMs: number;
}

type Band = NonNullable<ChamberView['limits']>['temperature'];

function rangeWords(band: Band | undefined, text: (value: number) => string): string | null {
  return band === undefined ? null : words.quantities.limits(text(band.low), text(band.high));
}

export function ClimateFigures({ chamber, nowMs }: Props) {
  const { climate, limits } = chamber;
  const isStale = isOld(climate.at, nowMs, silenceMsOf(climate));
  const beyond = beyondPlan(chamber);
  return (
    <div class={isStale ? 'figures is-stale' : 'figures'}>
      <dl>
        <Figure
          name={words.quantities.temperature}
          value={temperatureText(climate.temperature)}
          unit={temperatureUnit.value}
          below={rangeWords(limits?.temperature, temperatureLimitText)}
          isBeyond={!isStale && beyond.temperature !== null}
        />
        <Figure
          name={words.quantities.humidity}
          value={humidityText(climate.humidity)}
          unit={words.units.humidity}
          below={rangeWords(limits?.humidity, humidityText)}
          isBeyond={!isStale && beyond.humidity !== null}
        />
        <Figure
          name={words.quantities.vpd}
          value={vpdText(climate.vpdKpa)}
          unit={words.units.kpa}
          below={words.quantities.vpdShort}
        />
      </dl>
      {isStale && climate.at !== null && climate.temperature !== null && (
        <p class="old-note">{words.state.old(spanWords(nowMs - Date.parse(climate.at)))}</p>
      )}
    </div>
  );
}
