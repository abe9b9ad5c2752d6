// The log of an older database: answers, moves and corrections were sentences in its notes and become data, wherever they are exactly such.
import { join } from 'node:path';
import type { Database } from 'better-sqlite3';
import { expect, it, onTestFinished } from 'vitest';
import { describeLogLine } from '../../../server/record/describe-log.ts';
import { readMigrations } from '../../../server/store/migrate.ts';
import { openDatabase } from '../../../server/store/open-database.ts';
import { openStore } from '../../../server/store/open-store.ts';
import { profileDocumentSchema } from '../../../shared/healing/profile.ts';
import { filmWet } from '../../../shared/healing/standard-checks.ts';
import { standardProfiles } from '../../../shared/healing/standard-profiles.ts';
import { makeTestFolder } from '../../support/open-test-app.ts';

const shipped = readMigrations();
const number = shipped.findIndex(({ name }) => name.endsWith('-log-as-data.sql'));
const wet = 'Is the film wet?';
const ask = (id: string, question: string) => ({ ...filmWet, id, question });
const plan = profileDocumentSchema.parse({
  ...standardProfiles[0]?.document,
  checks: [
    ask('film-wet', wet),
    ask('up', 'Do they stand?'),
    ask('up-again', 'Do they stand?'),
    ask('own', 'Say "yes; no": right?'),
    ask('short', 'Dry'),
    ask('long', 'Dry no: still'),
  ],
});
const laterPlan = { ...plan, checks: [ask('later', 'Is it another question?')] };
const answered = (id: string, answer: string) => ({ check: { id, checkId: null, answer } });
const changed = (
  ...changes: readonly (readonly [field: string, before: string | number, after: string | number])[]
) => ({
  changes: changes.map(([field, before, after]) => ({ field, before, after })),
});

/** kind, note as it stood, what it became, note that is left. */
const lines: readonly (readonly [kind: string, note: string, about: object | null, left: string])[] = [
  ['check', `${wet} yes`, answered('film-wet', 'yes'), ''],
  [
    'check',
    `${wet} no: dry at the door: all of it\nyes`,
    answered('film-wet', 'no'),
    'dry at the door: all of it\nyes',
  ],
  ['check', 'Do they stand? no', answered('up', 'no'), ''],
  ['check', 'Say "yes; no": right? yes', answered('own', 'yes'), ''],
  ['check', 'Dry no: still yes: so', null, 'Dry no: still yes: so'],
  ['check', `${wet} perhaps`, null, `${wet} perhaps`],
  ['check', `${wet} yes: `, null, `${wet} yes: `],
  ['check', `${wet} yesterday`, null, `${wet} yesterday`],
  ['check', 'Is it another question? yes', null, 'Is it another question? yes'],
  ['note', `${wet} yes`, null, `${wet} yes`],
  ['moved-on', 'venting', { stage: 'venting' }, ''],
  ['moved-on', 'elsewhere', null, 'elsewhere'],
  ['note', 'venting', null, 'venting'],
  ['corrected', 'plants: 1000 → 980', changed(['plants', 1000, 980]), ''],
  [
    'corrected',
    'code: "T-1" → T: 2; scion: (empty) → C; closed: 2026-02-28T12:00:00Z → 2026-02-28T13:00:00.250Z',
    changed(
      ['code', '"T-1"', 'T: 2'],
      ['scion', '', 'C'],
      ['closedAt', '2026-02-28T12:00:00Z', '2026-02-28T13:00:00.250Z'],
    ),
    '',
  ],
  ['corrected', 'scion: A → B → C', null, 'scion: A → B → C'],
  ['corrected', 'scion: A; B → C', null, 'scion: A; B → C'],
  ['corrected', 'plants: many → 980', null, 'plants: many → 980'],
  ['corrected', 'closed: noon → 2026-02-28T13:00:00Z', null, 'closed: noon → 2026-02-28T13:00:00Z'],
  ['corrected', 'colour: red → blue', null, 'colour: red → blue'],
  ['corrected', 'by telephone', null, 'by telephone'],
  ['hold', 'loading', null, 'loading'],
  ['finished', '', null, ''],
];

function fill(db: Database): void {
  const put = (document: object, version: number) =>
    db.prepare("INSERT INTO profile_versions VALUES ('p', ?, ?, 0, 'An')").run(version, JSON.stringify(document));
  put(plan, 1);
  put(laterPlan, 2);
  db.exec(`INSERT INTO batches (id, code, chamber_id, profile_id, profile_version, scion, rootstock, method, trays, plants, opened_ms)
    VALUES ('b', 'T-1', 'c', 'p', 1, '', '', '', 0, 0, 0)`);
  const add = db.prepare(`INSERT INTO log_entries (id, batch_id, at_ms, kind, gap_percent, note, person)
    VALUES (?, 'b', 0, ?, NULL, ?, 'An')`);
  for (const [index, [kind, note]] of lines.entries()) add.run(String(index).padStart(3, '0'), kind, note);
}

it.each(shipped.slice(0, number).map(({ name }, index) => [name, index + 1] as const))(
  'the log of a database made up to %s has its sentences as data where they are exactly such, and says them in the record as it did',
  async (_name, count) => {
    const file = join(await makeTestFolder(), 'takewell.sqlite');
    const old = openDatabase({ file, nowMs: 1, migrations: shipped.slice(0, count) });
    fill(old);
    old.close();
    const store = openStore({ file, nowMs: 2 });
    onTestFinished(() => store.close());
    const log = await store.batches.log('b');
    expect(log.map(({ kind, about, note }) => [kind, about, note])).toEqual(
      lines.map(([kind, , about, left]) => [kind, about, left]),
    );
    expect(log.map((line) => describeLogLine(line, plan).note)).toEqual(lines.map(([, note]) => note));
  },
);
