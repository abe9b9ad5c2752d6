// The store on SQLite: the parts put together, and the one transaction that a turn of the watch is written in.
import type { Database } from 'better-sqlite3';
import { openAcknowledgeLinkStore, prepareLinkWriter } from './acknowledge-link-store.ts';
import { openAlarmStore, prepareAlarmWriter } from './alarm-store.ts';
import { openBatchStore } from './batch-store.ts';
import { openCalibrationStore } from './calibration-store.ts';
import { openChamberStore } from './chamber-store.ts';
import { prepareCheckpointWriter } from './checkpoint-store.ts';
import { openDutyStore } from './duty-store.ts';
import { openInvitationStore } from './invitation-store.ts';
import { openNoticeStore, prepareNoticeMover, prepareNoticeWriter, prepareOutcomeWriter } from './notice-store.ts';
import { type DatabaseOptions, openDatabase, openDatabaseToRead } from './open-database.ts';
import { openPeopleStore } from './people-store.ts';
import { openPhoneStore, preparePhoneResultWriter } from './phone-store.ts';
import { openProbeStore, prepareDiscovery, prepareRefusals } from './probe-store.ts';
import { openProfileStore } from './profile-store.ts';
import { openReadingStore, prepareReadingWriter } from './reading-store.ts';
import { openSettingStore, prepareSettingWriter } from './setting-store.ts';
import type { Commit, Store } from './store.ts';
import { guarded } from './store-problem.ts';
import { openTargetResultStore, prepareTargetResultWriter } from './target-result-store.ts';

/** Opens the store in a SQLite file, made and migrated as needed. Problems as `openDatabase`. */
export function openStore(options: DatabaseOptions): Store {
  return storeOn(openDatabase(options));
}

/** Opens an existing store for reading only, while the service may be writing it. */
export function openStoreToRead(file: string): Store {
  // A file that an older version wrote has not all the tables: that is said when the statements are prepared.
  return guarded(() => storeOn(openDatabaseToRead(file)));
}

function storeOn(db: Database): Store {
  const commit = prepareCommit(db);
  const touch = db.prepare("INSERT OR REPLACE INTO settings (name, value) VALUES ('opened', '1')");
  return {
    commit: async (work) => guarded(() => ({ stored: commit.immediate(work) })),
    async checkHealth() {
      guarded(() => touch.run());
    },
    async close() {
      guarded(() => db.close());
    },
    readings: openReadingStore(db),
    chambers: openChamberStore(db),
    probes: openProbeStore(db),
    calibrations: openCalibrationStore(db),
    profiles: openProfileStore(db),
    batches: openBatchStore(db),
    alarms: openAlarmStore(db),
    people: openPeopleStore(db),
    invitations: openInvitationStore(db),
    phones: openPhoneStore(db),
    duty: openDutyStore(db),
    notices: openNoticeStore(db),
    targetResults: openTargetResultStore(db),
    acknowledgeLinks: openAcknowledgeLinkStore(db),
    settings: openSettingStore(db),
  };
}

function prepareCommit(db: Database) {
  const discovery = prepareDiscovery(db);
  const writeReadings = prepareReadingWriter(db);
  const writeCheckpoints = prepareCheckpointWriter(db);
  const writeRefusals = prepareRefusals(db);
  const writeAlarms = prepareAlarmWriter(db);
  const writeNotices = prepareNoticeWriter(db);
  const writeOutcomes = prepareOutcomeWriter(db);
  const writeTargetResult = prepareTargetResultWriter(db);
  const writePhoneResult = preparePhoneResultWriter(db);
  const writeLink = prepareLinkWriter(db);
  const moveNotices = prepareNoticeMover(db);
  const writeSetting = prepareSettingWriter(db);
  return db.transaction((work: Commit): boolean[] => {
    for (const probe of work.discovered ?? []) discovery.addProbe(probe);
    for (const battery of work.batteries ?? []) discovery.setBattery(battery);
    for (const status of work.nodeStatus ?? []) discovery.setStatus(status);
    writeRefusals(work.refused ?? []);
    const stored = writeReadings(work);
    writeCheckpoints(work);
    if (work.watch !== undefined) {
      writeAlarms(work.watch);
      writeNotices(work.watch.notices);
    }
    // After the notices: one that was told while nothing could be stored is written with what became of it.
    writeOutcomes(work.outcomes ?? []);
    for (const result of work.targetResults ?? []) writeTargetResult(result);
    for (const result of work.phoneResults ?? []) writePhoneResult(result);
    for (const link of work.links ?? []) writeLink(link);
    for (const { name, value } of work.settings ?? []) writeSetting(name, value);
    if (work.clockMoved !== undefined) moveNotices(work.clockMoved);
    return stored;
  });
}
