// A profile that is being written has a fault exactly where a stored one would be refused, and at the same place.
import { describe, expect, it } from 'vitest';
import { draftFaults } from '../../../shared/healing/draft-faults.ts';
import type { ProfileDocument } from '../../../shared/healing/profile.ts';
import { findProfileFaults } from '../../../shared/healing/profile-faults.ts';
import { standardProfiles } from '../../../shared/healing/standard-profiles.ts';

/** A copy of the first shipped profile after `change`. */
function draft(change: (document: Mutable) => void): ProfileDocument {
  const copy = structuredClone(standardProfiles[0]?.document) as Mutable;
  change(copy);
  return copy;
}

type Mutable = { -readonly [Key in keyof ProfileDocument]: ProfileDocument[Key] };
type Stage = ProfileDocument['stages'][number];
type Check = ProfileDocument['checks'][number];

const stage = (document: Mutable, index: number): Stage => document.stages[index] as Stage;
const check = (document: Mutable): Check => document.checks[0] as Check;

describe('what a form may hold and a profile may not', () => {
  it.each<[why: string, where: string, change: (document: Mutable) => void]>([
    ['a plan needs a name', '/name', (d) => Object.assign(d, { name: '' })],
    ['a crop has at most 80 letters', '/crop', (d) => Object.assign(d, { crop: 'x'.repeat(81) })],
    ['a note ends somewhere', '/note', (d) => Object.assign(d, { note: 'x'.repeat(1001) })],
    ['a field was emptied', '/endsAfterHours', (d) => Object.assign(d, { endsAfterHours: Number.NaN })],
    ['nothing heals for a quarter of a year', '/endsAfterHours', (d) => Object.assign(d, { endsAfterHours: 2001 })],
    ['a silence of nothing joins nothing', '/silenceMinutes', (d) => Object.assign(d, { silenceMinutes: 0 })],
    ['a silence has an end', '/silenceMinutes', (d) => Object.assign(d, { silenceMinutes: 241 })],
    [
      'a grace of nothing never tightens',
      '/grace/humidityPerHour',
      (d) => Object.assign(d.grace, { humidityPerHour: 0 }),
    ],
    ['a number has a source', '/grace/basis', (d) => Object.assign(d.grace, { basis: '' })],
    [
      'a stage begins at an hour',
      '/stages/2/afterHours',
      (d) => Object.assign(stage(d, 2), { afterHours: Number.NaN }),
    ],
    [
      'an hour of the day has two digits',
      '/stages/2/notBefore',
      (d) => Object.assign(stage(d, 2), { notBefore: '7:00' }),
    ],
    ['the day has 24 hours', '/endsNotBefore', (d) => Object.assign(d, { endsNotBefore: '24:00' })],
    [
      'a limit was emptied',
      '/stages/1/humidity/low/value',
      (d) => Object.assign(stage(d, 1).humidity.low, { value: Number.NaN }),
    ],
    [
      'a limit has a source',
      '/stages/1/humidity/low/basis',
      (d) => Object.assign(stage(d, 1).humidity.low, { basis: '' }),
    ],
    [
      'half a step is none',
      '/stages/2/humidity/low/steps',
      (d) => Object.assign(stage(d, 2).humidity.low, { steps: 2.5 }),
    ],
    ['no step is none', '/stages/2/humidity/low/steps', (d) => Object.assign(stage(d, 2).humidity.low, { steps: 0 })],
    [
      'nobody opens 49 times',
      '/stages/2/humidity/low/steps',
      (d) => Object.assign(stage(d, 2).humidity.low, { steps: 49 }),
    ],
    [
      'house level needs a number to fall back on',
      '/stages/2/humidity/low/to/fallback',
      (d) => Object.assign(stage(d, 2).humidity.low, { to: { houseOffset: 0, fallback: Number.NaN } }),
    ],
    [
      'drying power is above nothing',
      '/stages/1/vpdKpa/high',
      (d) => Object.assign(stage(d, 1), { vpdKpa: { high: 0, basis: 'ours' } }),
    ],
    [
      'drying power of 6 kPa is a slip',
      '/stages/1/vpdKpa/high',
      (d) => Object.assign(stage(d, 1), { vpdKpa: { high: 6, basis: 'ours' } }),
    ],
    ['a check asks something', '/checks/0/question', (d) => Object.assign(check(d), { question: 'x' })],
    ['a check says what to do', '/checks/0/ifNo', (d) => Object.assign(check(d), { ifNo: '' })],
    ['a check is known by a plain id', '/checks/0/id', (d) => Object.assign(check(d), { id: 'Film?' })],
    ['a repeat is longer than nothing', '/checks/0/everyHours', (d) => Object.assign(check(d), { everyHours: 0 })],
    ['overdue comes after due', '/checks/0/overdueMinutes', (d) => Object.assign(check(d), { overdueMinutes: 0 })],
  ])('%s: %s', (_, where, change) => {
    const document = draft(change);
    expect(draftFaults(document).map((fault) => fault.where)).toContain(where);
    // The API sends numbers that are missing as null.
    const sent: unknown = JSON.parse(JSON.stringify(document));
    expect(findProfileFaults(sent).faults.map((fault) => fault.where)).toContain(where);
  });

  it('finds nothing in the profiles that are shipped', () => {
    expect(standardProfiles.flatMap(({ document }) => draftFaults(document))).toEqual([]);
  });

  it('says of an impossible plan what the rules say, as data', () => {
    const crossing = draft((d) => Object.assign(stage(d, 1).temperature.low, { value: 30 }));
    expect(draftFaults(crossing)).toContainEqual({
      ...{ where: '/stages/1/temperature/low', kind: 'crossing', lower: 'low', upper: 'high', quantity: 'temperature' },
      ...{ below: 30, above: 28, percent: 0 },
    });
    const overlapping = draft((d) => Object.assign(stage(d, 3), { afterHours: 90 }));
    expect(draftFaults(overlapping)).toContainEqual({
      ...{ where: '/stages/3/afterHours', kind: 'stage-hours', latest: 96, hours: 90 },
    });
  });

  it('still finds the other faults of a plan with an empty field', () => {
    const both = draft((d) => {
      Object.assign(stage(d, 1).humidity.low, { value: Number.NaN });
      Object.assign(d, { endsAfterHours: 100 });
    });
    expect(draftFaults(both).map(({ kind }) => kind)).toEqual(['no-number', 'end-hours']);
  });
});
