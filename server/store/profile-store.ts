// Profiles and their versions. A version is never changed: a batch has pinned it.
import type { Database } from 'better-sqlite3';
import { type ProfileDocument, profileDocumentSchema } from '../../shared/healing/profile.ts';
import type { ProfileVersion, Store } from './store.ts';
import { guarded } from './store-problem.ts';

interface Row {
  id: string;
  version: number;
  document: string;
  createdMs: number;
  createdBy: string;
}

const columns =
  'SELECT profile_id id, version, document, created_ms createdMs, created_by createdBy FROM profile_versions';

export function openProfileStore(db: Database): Store['profiles'] {
  const list = db.prepare<[], Row>(
    `${columns} p WHERE version = (SELECT max(version) FROM profile_versions WHERE profile_id = p.profile_id) ORDER BY created_ms, id`,
  );
  const newest = db.prepare<[string], Row>(`${columns} WHERE profile_id = ? ORDER BY version DESC LIMIT 1`);
  const versions = db.prepare<[string], Row>(`${columns} WHERE profile_id = ? ORDER BY version DESC`);
  const exact = db.prepare<[string, number], Row>(`${columns} WHERE profile_id = ? AND version = ?`);
  const add = db.prepare(
    'INSERT INTO profile_versions (profile_id, version, document, created_ms, created_by) VALUES (?, ?, ?, ?, ?)',
  );
  const addVersion = db.transaction((id: string, document: ProfileDocument, atMs: number, by: string) => {
    const version = (newest.get(id)?.version ?? 0) + 1;
    add.run(id, version, JSON.stringify(document), atMs, by);
    return { id, version, document, createdMs: atMs, createdBy: by };
  });
  return {
    list: async () => guarded(() => list.all().map(toVersion)),
    async get(id, version) {
      const row = guarded(() => (version === undefined ? newest.get(id) : exact.get(id, version)));
      return row === undefined ? null : toVersion(row);
    },
    versions: async (id) => guarded(() => versions.all(id).map(toVersion)),
    addVersion: async (id, document, atMs, by) => guarded(() => addVersion.immediate(id, document, atMs, by)),
  };
}

function toVersion(row: Row): ProfileVersion {
  return { ...row, document: profileDocumentSchema.parse(JSON.parse(row.document)) };
}
