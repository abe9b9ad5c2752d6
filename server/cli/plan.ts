// `plan`: a profile laid out in time for one closing: stages, checks and hourly limits.
import { describePlan, type HealingPlan, type PlannedLimits } from '../../shared/healing/healing-plan.ts';
import { validZone } from '../../shared/healing/time-of-day.ts';
import { makeTimeTexts } from '../record/time-texts.ts';
import { type Command, print } from './command.ts';
import { findProfile } from './find-profiles.ts';
import { misuse, parseOptions, readTime, requireOption } from './parse-options.ts';

const usage = `Usage: npm run takewell -- plan --profile ID --closed-at TIME --zone ZONE [--json]

Lays out the healing of a batch: when its stages begin and end, which checks are due, and the limits of every hour.

  --profile     id of a profile; "profile list" shows them
  --closed-at   when the chamber was closed, RFC 3339, for example 2026-03-02T15:30:00Z
  --zone        time zone of the site, for example Europe/Amsterdam
  --json        one JSON value; times in UTC
`;

export const plan: Command = {
  usage,
  async run(args, terminal) {
    const { options } = parseOptions(args, { profile: 'text', 'closed-at': 'text', zone: 'text', json: 'flag' });
    const id = requireOption(options.profile, 'profile');
    const closedMs = readTime(requireOption(options['closed-at'], 'closed-at'), 'closed-at');
    const zone = requireOption(options.zone, 'zone');
    if (!validZone(zone)) throw misuse(`--zone must be a time zone like Europe/Amsterdam; "${zone}" is not one.`);
    const { document } = await findProfile(id, terminal);
    const healing = describePlan(document, { closedMs, zone });
    await print(terminal, options.json === true, healing, sayPlan(healing, zone));
    return 0;
  },
};

function sayPlan({ stages, checks, limits }: HealingPlan, zone: string): string[] {
  const texts = makeTimeTexts(zone);
  const local = (time: string) => texts.local(Date.parse(time)).slice(0, 16);
  return [
    `Times in ${zone}.`,
    '',
    ...stages.map(({ stage, startsAt, endsAt }) => `${stage.padEnd(12)}${local(startsAt)} to ${local(endsAt)}`),
    '',
    ...checks.map(({ check, dueAt }) => `${local(dueAt)}  ${check}`),
    '',
    ...limits.filter(isChange).map((row) => `${local(row.at)}  ${sayLimits(row)}`),
  ];
}

/** A reader wants the hours at which something changes. */
function isChange(row: PlannedLimits, index: number, rows: readonly PlannedLimits[]): boolean {
  const before = rows[index - 1];
  return before === undefined || sayLimits(before) !== sayLimits(row);
}

function sayLimits({ temperature, humidity }: PlannedLimits): string {
  const outer = temperature.highHigh === null ? '' : `, critical ${shown(temperature.highHigh)}`;
  return `${shown(temperature.low)} to ${shown(temperature.high)} °C${outer}; ${shown(humidity.low)} to ${shown(humidity.high)} %RH`;
}

function shown(value: number): string {
  return value.toFixed(1);
}
