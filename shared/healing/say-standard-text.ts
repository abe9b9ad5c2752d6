// Texts of the shipped profiles in another language. A stored profile carries them in English; whoever changed one wrote words of their own,
// which are shown as they are.
import { type Saying, sayTemperatureRange } from '../saying.ts';
import { checks } from '../words/en/checks.ts';
import { profiles } from '../words/en/profiles.ts';
import { units } from '../words/en/units.ts';

/** Air that a crop wants in grafting room and tent, °C and %RH. */
export interface WantedAir {
  readonly temperature: readonly [low: number, high: number];
  readonly humidity: readonly [low: number, high: number];
}

/** Of the shipped profiles; the limits themselves stand in standard-profiles.ts. */
export const standardAirs = {
  tomato: { temperature: [21, 22], humidity: [80, 90] },
  solanaceous: { temperature: [24, 27], humidity: [80, 90] },
  cucurbit: { temperature: [25, 28], humidity: [80, 90] },
} as const satisfies Record<string, WantedAir>;

type AirSaying = Pick<Saying, 'temperatureUnit'> & { readonly words: Pick<Saying['words'], 'checks' | 'units'> };

/** As a profile that is stored asks. */
export const storedSaying: AirSaying = { words: { checks, units }, temperatureUnit: '°C' };

/** Asks whether the air is as wanted. */
export function askAir({ temperature, humidity }: WantedAir, saying: AirSaying): string {
  const { words } = saying;
  const wanted = `${humidity[0]}–${humidity[1]} ${words.units.humidity}`;
  return words.checks.airReady.question(sayTemperatureRange(temperature, saying.temperatureUnit), wanted);
}

type Reader = (saying: Saying) => string;

const { airReady, ...asked } = checks;

/** The texts of a table of `profiles`, each by itself. */
function readersOf<Table extends keyof typeof profiles>(table: Table): [string, Reader][] {
  const names = Object.keys(profiles[table]) as (keyof (typeof profiles)[Table])[];
  return names.map((name) => [String(profiles[table][name]), ({ words }) => String(words.profiles[table][name])]);
}

/** By the unchanged English text: how it is said. */
const readers = new Map<string, Reader>([
  ...Object.values(standardAirs).map((air): [string, Reader] => [
    askAir(air, storedSaying),
    (saying) => askAir(air, saying),
  ]),
  [airReady.ifNo, ({ words }) => words.checks.airReady.ifNo],
  ...(Object.keys(asked) as (keyof typeof asked)[]).flatMap((name): [string, Reader][] => [
    [asked[name].question, ({ words }) => words.checks[name].question],
    [asked[name].ifNo, ({ words }) => words.checks[name].ifNo],
  ]),
  ...readersOf('names'),
  ...readersOf('crops'),
  ...readersOf('notes'),
  ...readersOf('sources'),
]);

/** The text in the words of `saying` where it is one of the shipped profiles', else the text itself. */
export function sayStandardText(text: string, saying: Saying): string {
  return readers.get(text)?.(saying) ?? text;
}

/** The other way round: the stored text that `saying` says so; else the text itself. */
export function standardTextOf(text: string, saying: Saying): string {
  for (const [stored, say] of readers) if (say(saying) === text) return stored;
  return text;
}
