// The exposure of a batch as rows and cells in words. Pure.
import type { ExposurePart, ExposureView } from '../../shared/api/exposure.ts';
import { humidityText, numberText, temperatureLimitText, temperatureText } from '../quantities.ts';
import { words } from '../strings.ts';
import { differenceInUnit, temperatureUnit } from '../temperature-unit.ts';

const { columns } = words.exposure;

interface NamedPart {
  readonly name: string;
  readonly part: ExposurePart;
}

/** Stages, then days, then the whole. */
export function namedParts({ stages, days, whole }: ExposureView): readonly NamedPart[] {
  return [
    ...stages.map((part) => ({ name: words.exposure.stages[part.stage], part })),
    ...days.map((part) => ({ name: words.exposure.day(part.day), part })),
    ...(whole === null ? [] : [{ name: words.exposure.whole, part: whole }]),
  ];
}

function spread(one: ExposurePart['temperature'], text: (value: number | null) => string): string {
  return one.mean === null ? words.units.none : words.chart.meanMinMax(text(one.mean), text(one.min), text(one.max));
}

/** The cells of a part in the order of the columns, in the reader's unit. */
export function cellsOf(part: ExposurePart): readonly (readonly [string, string])[] {
  const unit = temperatureUnit.value;
  const above = (celsius: number) => `${temperatureLimitText(celsius)} ${unit}`;
  const { share } = part.insideCorridor.humidity;
  return [
    [columns.temperature(unit), spread(part.temperature, temperatureText)],
    [columns.humidity, spread(part.humidity, humidityText)],
    [columns.inside, share === null ? words.units.none : words.chart.share(Math.round(100 * share))],
    [columns.minutes(above(28)), numberText(part.minutesAbove['28'] ?? 0, 0)],
    [columns.minutes(above(29)), numberText(part.minutesAbove['29'] ?? 0, 0)],
    [columns.degreeHours(above(28)), numberText(differenceInUnit(part.degreeHoursAbove['28'] ?? 0, unit), 1)],
    [columns.vpd, numberText(part.vpdKpaHours, 1)],
    [columns.unknown, numberText(part.unknownHours, 1)],
  ];
}
