// What became of sending is kept as a text of the catalogue; what was kept before that, or by another version, is shown as it was written.
import { join } from 'node:path';
import { expect, it, onTestFinished } from 'vitest';
import { readMigrations } from '../../../server/store/migrate.ts';
import { openDatabase } from '../../../server/store/open-database.ts';
import { openStore } from '../../../server/store/open-store.ts';
import { type Finding, finding, sayFinding } from '../../../shared/finding.ts';
import { wordsOf } from '../../../shared/words/words-of.ts';
import { sampleAlarm } from '../../support/notice-samples.ts';
import { makeTestFolder } from '../../support/open-test-app.ts';
import { openTestStore } from '../../support/open-test-store.ts';

const person = { id: 'ada', name: 'Ada', role: 'crew', passwordHash: 'none', createdMs: 0 } as const;
const endpoint = 'https://push.example/1';
const phone = { id: 'p1', personId: 'ada', name: 'Red', endpoint, p256dh: 'a', auth: 'b', pushKey: null, createdMs: 0 };

it('comes back as it was kept, to be said in any language, and stands in the file in English too', async () => {
  const { store, db } = await openTestStore();
  await store.people.add(person);
  await store.phones.put(phone);
  const failed = finding('pushInTrouble', 503);
  await store.commit({
    targetResults: [{ targetId: 'p1', delivered: false, finding: failed, atMs: 7 }],
    phoneResults: [{ phoneId: 'p1', kind: 'failed', finding: failed, atMs: 7 }],
  });
  expect(await store.targetResults.all()).toEqual([{ targetId: 'p1', delivered: false, finding: failed, atMs: 7 }]);
  expect(await store.phones.get('p1')).toMatchObject({ lastResult: failed, lastResultMs: 7, refusals: 0 });
  expect(db.prepare('SELECT text FROM target_results').pluck().get()).toBe('the push service is in trouble (503)');
  const kept = await store.phones.get('p1');
  if (kept === null) throw new Error('the phone is gone');
  await store.phones.lose(kept, finding('phoneTakesNoMore', 410), 8, []);
  expect(await store.phones.lost('ada')).toMatchObject([{ id: 'p1', reason: finding('phoneTakesNoMore', 410) }]);
});

/** A file as the version before findings left it. */
async function makeOlderFile(): Promise<string> {
  const file = join(await makeTestFolder(), 'takewell.sqlite');
  const shipped = readMigrations();
  const migrations = shipped.slice(
    0,
    shipped.findIndex(({ name }) => name.endsWith('-findings.sql')),
  );
  const db = openDatabase({ file, nowMs: 0, migrations });
  const lost = {
    ...sampleAlarm,
    chamberId: 'takewell',
    rule: 'broker-lost',
    service: { trouble: 'The broker is gone.' },
  };
  db.exec(`INSERT INTO people (id, name, role, password_hash, created_ms) VALUES ('ada', 'Ada', 'crew', 'none', 0);
    INSERT INTO phones (id, person_id, name, endpoint, p256dh, auth, created_ms, last_result, last_result_ms)
      VALUES ('p1', 'ada', 'Red', '${endpoint}', 'a', 'b', 0, 'accepted by push.example (201)', 7);
    INSERT INTO lost_phones VALUES ('p0', 'ada', 'Old', 'it is gone', 6);
    INSERT INTO target_results VALUES ('p1', 1, 'accepted by push.example (201)', 7)`);
  const alarm = JSON.stringify(lost);
  db.prepare("INSERT INTO alarms VALUES (?, 'takewell', NULL, 'unacknowledged', 5, ?)").run(lost.id, alarm);
  db.prepare("INSERT INTO watch_entries VALUES ('takewell', 'broker-lost', ?)").run(`{"alarm":${alarm}}`);
  db.close();
  return file;
}

it('from before findings is shown as it was written, in every language', async () => {
  const store = openStore({ file: await makeOlderFile(), nowMs: 1 });
  onTestFinished(() => store.close());
  const accepted = finding('asWritten', 'accepted by push.example (201)');
  expect(await store.phones.get('p1')).toMatchObject({ lastResult: accepted });
  expect(await store.phones.lost('ada')).toMatchObject([{ reason: finding('asWritten', 'it is gone') }]);
  expect(await store.targetResults.all()).toMatchObject([{ finding: accepted }]);
  expect(sayFinding(accepted, wordsOf.nl)).toBe('accepted by push.example (201)');
  const service = { trouble: finding('asWritten', 'The broker is gone.') };
  expect(await store.alarms.get(sampleAlarm.id)).toMatchObject({ service });
  expect(await store.alarms.watches()).toMatchObject([{ entries: { 'broker-lost': { alarm: { service } } } }]);
});

it('that this version has no text for is shown as it was written', async () => {
  const { store, db } = await openTestStore();
  const text = 'said by another version';
  db.prepare('INSERT INTO target_results VALUES (?, 0, ?, 7, ?)').run('p1', text, '{"key":"later","args":[1]}');
  const expected: Finding = finding('asWritten', text);
  expect(await store.targetResults.all()).toMatchObject([{ finding: expected }]);
});
