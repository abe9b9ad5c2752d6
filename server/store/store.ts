// The store port: what the program asks of its memory, whatever database stands behind it. Everything is asynchronous.
// Errors: a Problem with code store-full or store-unavailable; an act that breaks a rule of the data is a Problem of code conflict.
import type { Alarm, Priority } from '../../shared/alarms/alarm.ts';
import type { AlarmStep } from '../../shared/alarms/alarm-statistics.ts';
import type { ChamberWatch, Effect, WatchEntry } from '../../shared/alarms/watch-state.ts';
import type { Place } from '../../shared/api/probes.ts';
import type { Role } from '../../shared/api/session.ts';
import type { Finding } from '../../shared/finding.ts';
import type { Batch } from '../../shared/healing/batch.ts';
import type { LogAbout } from '../../shared/healing/batch-log.ts';
import type { Profile, ProfileDocument, StageName } from '../../shared/healing/profile.ts';
import type { Language } from '../../shared/languages.ts';
import type { Battery } from '../../shared/readings/battery.ts';
import type { Calibration } from '../../shared/readings/calibration.ts';
import type { QualityCheckpoint } from '../../shared/readings/quality/quality-run.ts';
import type { Flag, Reading } from '../../shared/readings/reading.ts';
import type { Reason } from '../../shared/readings/reason.ts';
import type { DutySpan } from '../../shared/telling/duty.ts';
import type { NoticeDraft } from '../../shared/telling/notice.ts';
import type { TargetResult } from '../../shared/telling/reach.ts';

export interface Chamber {
  readonly id: string;
  readonly name: string;
  readonly createdMs: number;
}

export interface Node {
  readonly id: string;
  readonly status: 'online' | 'offline' | 'unknown';
  readonly statusMs: number | null;
  readonly passwordHash: string | null;
  readonly discoveredMs: number;
  /** What is left in its battery, in the unit it told last; null = it has not told. */
  readonly batteryLevel?: number | null;
  readonly batteryUnit?: Battery['unit'] | null;
  readonly batteryMs?: number | null;
}

export interface Probe {
  /** Key of its readings; `id` is `p<number>`. */
  readonly number: number;
  readonly id: string;
  readonly nodeId: string;
  readonly address: string;
  readonly name: string;
  readonly silenceMs: number;
  readonly outOfService: boolean;
  readonly discoveredMs: number;
  /** Where it stands now; null = not placed yet. */
  readonly placement: Placement | null;
}

export interface Placement {
  readonly probe: number;
  readonly chamberId: string | null;
  readonly place: Place;
  /** The first instant that belongs to it. */
  readonly fromMs: number;
  /** When it ended; null = it stands there. */
  readonly toMs: number | null;
  /**
   * The last instant that belongs to it; null = it stands there. Every reading belongs to one placement at most: one dated at the very instant of a
   * move belongs where the probe was put, one at the instant in which it was taken away to where it had stood until then.
   */
  readonly lastMs: number | null;
}

/** What the quality tests of a probe remembered before its first reading of a slot. */
export type StoredCheckpoint = QualityCheckpoint;

export interface StoredCalibration {
  readonly id: number;
  readonly probe: number;
  readonly correction: Calibration;
  readonly note: string;
  readonly person: string;
  readonly enteredMs: number;
}

export interface NewPerson {
  readonly id: string;
  readonly name: string;
  readonly role: Role;
  readonly passwordHash: string;
  readonly createdMs: number;
}

/** How a person is reached and spoken to; null = not told. Quiet hours are times of day on the clock of the site, as HH:MM. */
export interface PersonDetails {
  readonly email: string | null;
  readonly phoneNumber: string | null;
  readonly language: Language | null;
  readonly temperatureUnit: '°C' | '°F' | null;
  readonly quietFrom: string | null;
  readonly quietTo: string | null;
}

export interface Person extends NewPerson, PersonDetails {}

export interface Invitation {
  readonly id: string;
  /** Proposed; '' = none. */
  readonly name: string;
  readonly role: Role;
  readonly madeBy: string | null;
  readonly createdMs: number;
  readonly expiresMs: number;
}

export interface Token {
  readonly id: string;
  readonly name: string;
  readonly scope: 'read' | 'full';
  readonly createdMs: number;
}

export interface LogRow {
  readonly id: string;
  readonly batchId: string;
  readonly atMs: number;
  readonly kind: string;
  readonly gapPercent: number | null;
  /** How long work in the tent was said to take; only of kind `working`. */
  readonly minutes?: number | null;
  /** What the program knows of it; null = nothing but the note, or a line that was written before it was kept as data. */
  readonly about?: LogAbout | null;
  /** What the person wrote. */
  readonly note: string;
  readonly person: string;
}

export interface CheckAnswer {
  readonly batchId: string;
  readonly checkId: string;
  readonly answer: 'yes' | 'no';
  readonly atMs: number;
  readonly person: string;
  readonly note: string;
}

export interface NewPhone {
  readonly id: string;
  readonly personId: string;
  readonly name: string;
  readonly endpoint: string;
  readonly p256dh: string;
  readonly auth: string;
  /** The public key that it subscribed with; null = the first of the site. */
  readonly pushKey: string | null;
  readonly createdMs: number;
}

export interface Phone extends NewPhone {
  readonly lastResult: Finding | null;
  readonly lastResultMs: number | null;
  /** Pushes refused in a row, and since when. */
  readonly refusals: number;
  readonly refusedSinceMs: number | null;
  /** When it last said that it has shown a notice. */
  readonly confirmedMs: number | null;
}

/** A phone that was dropped because it takes no more alerts. */
export interface LostPhone {
  readonly id: string;
  readonly personId: string;
  readonly name: string;
  readonly reason: Finding;
  readonly lostMs: number;
}

/** What became of the last push to a phone. `refused`: not for a fault that passes by itself. */
export interface PhoneResult {
  readonly phoneId: string;
  readonly kind: 'accepted' | 'failed' | 'refused';
  readonly finding: Finding;
  readonly atMs: number;
}

/** A link that acknowledges one alarm, once. `personId` null = made for a program; `saidBy` is who has it then. */
export interface AcknowledgeLink {
  readonly tokenHash: string;
  readonly alarmId: string;
  readonly personId: string | null;
  readonly saidBy: string;
  readonly expiresMs: number;
  readonly usedMs: number | null;
}

export interface NewLink extends Omit<AcknowledgeLink, 'usedMs'> {
  readonly madeMs: number;
}

export interface Notice extends NoticeDraft {
  readonly attempts: number;
  readonly state: 'waiting' | 'sent' | 'given-up';
  readonly result: string | null;
  readonly resultMs: number | null;
  /** When the device said that it has shown it. */
  readonly confirmedMs: number | null;
}

/** What became of one try to tell a notice. */
export interface NoticeOutcome {
  readonly noticeId: string;
  /** `waiting`: it is to be tried again. */
  readonly state: Notice['state'];
  readonly result: string;
  readonly atMs: number;
  /** Counts only while it waits. */
  readonly nextTryMs: number;
}

export interface Refused {
  readonly id: number;
  readonly atMs: number;
  readonly topic: string;
  /** Null: another version kept it, as a sentence only or for a reason that is not known here. */
  readonly reason: Reason | null;
  /** The reason in English. */
  readonly sentence: string;
  readonly where: string;
  readonly payloadStart: Uint8Array;
}

export interface AlarmEvent {
  readonly alarmId: string;
  readonly atMs: number;
  readonly change: string;
  readonly fromState: string;
  readonly toState: string;
  /** Priority and limit as they were with this step. */
  readonly priority: Priority;
  readonly limit: number | null;
  readonly value: number | null;
  readonly person: string | null;
  readonly note: string;
}

export interface ProfileVersion extends Profile {
  readonly createdMs: number;
  readonly createdBy: string;
}

/** A bucket of a chart for one probe. Sums and counts, so that probes can be put together. */
export interface ClimateBucket {
  readonly index: number;
  readonly temperature: BucketValue | null;
  readonly humidity: BucketValue | null;
  readonly readings: number;
  readonly bad: number;
}

export interface BucketValue {
  readonly min: number;
  readonly max: number;
  readonly sum: number;
  readonly count: number;
}

/** Everything that one turn of the watch decides, or that one try to tell has come to: stored whole or not at all. */
export interface Commit {
  readonly readings?: readonly (Reading & { readonly probe: number })[];
  /** Readings whose flags a later one has changed. */
  readonly revised?: readonly { probe: number; timeMs: number; temperatureFlag: Flag; humidityFlag: Flag }[];
  readonly checkpoints?: readonly (StoredCheckpoint & { readonly probe: number })[];
  readonly discovered?: readonly Probe[];
  readonly batteries?: readonly (Battery & { nodeId: string; atMs: number })[];
  readonly nodeStatus?: readonly { nodeId: string; status: 'online' | 'offline'; atMs: number }[];
  readonly refused?: readonly Omit<Refused, 'id'>[];
  readonly watch?: {
    readonly entries: readonly { chamberId: string; key: string; entry: WatchEntry }[];
    readonly changes: readonly Extract<Effect, { type: 'alarm-changed' }>[];
    readonly notices: readonly NoticeDraft[];
  };
  readonly outcomes?: readonly NoticeOutcome[];
  /** The last result of each target, in place of the one before. */
  readonly targetResults?: readonly TargetResult[];
  readonly phoneResults?: readonly PhoneResult[];
  /** One counts from now on, unless its person was removed meanwhile; those that had expired when it was made are taken away. */
  readonly links?: readonly NewLink[];
  /** Settings written with it, one value a name. */
  readonly settings?: readonly { readonly name: string; readonly value: unknown }[];
  /** The machine's clock was moved by so much: what waits is told as if decided by the new one, and tried at once. */
  readonly clockMoved?: { readonly byMs: number; readonly nowMs: number };
}

export interface Page<T> {
  readonly items: readonly T[];
  readonly nextCursor: string | null;
}

export interface PageQuery {
  readonly limit: number;
  readonly cursor?: string | undefined;
}

export interface Store {
  /** One durable transaction: when the promise resolves, it survives a loss of power. `stored[i]` tells whether reading i was new or completed one. */
  commit(work: Commit): Promise<{ readonly stored: readonly boolean[] }>;
  /** Throws the Problem that the store has now, if any. Touches the disk. */
  checkHealth(): Promise<void>;
  close(): Promise<void>;

  readonly readings: {
    /** In time order, both ends included, paged by time so that memory stays flat. */
    range(probe: number, fromMs: number, toMs: number): AsyncIterable<Reading>;
    /** The newest, or the newest that is dated no later than `toMs`. */
    newest(probe: number, toMs?: number): Promise<Reading | null>;
    buckets(probe: number, query: { fromMs: number; bucketMs: number; count: number }): Promise<ClimateBucket[]>;
    /** Mean of the good readings, by minutes. */
    mean(probe: number, fromMs: number, toMs: number): Promise<{ temperature: number | null; humidity: number | null }>;
    /**
     * For how long in [fromMs, toMs), cut to whole minutes, the mean humidity of a minute was above a value, by good raw readings, ms; a minute stands until the next that
     * has humidity, at most for `heldMs`.
     */
    timeAbove(
      probe: number,
      humidity: number,
      span: { readonly fromMs: number; readonly toMs: number; readonly heldMs: number },
    ): Promise<number>;
    /** The last memory of the quality tests kept at or before an instant, if any, and all later ones, oldest first. */
    checkpoints(probe: number, atMs: number): Promise<StoredCheckpoint[]>;
    countAll(): Promise<number>;
  };
  readonly chambers: {
    /** Those in use. */
    list(): Promise<Chamber[]>;
    /** And those that only records and past alarms name any more. */
    listWithRetired(): Promise<Chamber[]>;
    /** null when there is none in use of this id. */
    get(id: string): Promise<Chamber | null>;
    add(chamber: Chamber): Promise<void>;
    rename(id: string, name: string): Promise<boolean>;
    /** Its name may be used again; what happened in it is kept. */
    retire(id: string, atMs: number): Promise<boolean>;
    /** Those that are retired, the last one first. */
    retired(): Promise<(Chamber & { readonly retiredMs: number })[]>;
    /** Puts a retired one into use again; false when none is retired under this id. */
    bringBack(id: string, name: string): Promise<boolean>;
    remove(id: string): Promise<boolean>;
  };
  readonly probes: {
    nodes(): Promise<Node[]>;
    addNode(node: Node): Promise<void>;
    setNodePassword(nodeId: string, hash: string): Promise<boolean>;
    list(): Promise<Probe[]>;
    get(id: string): Promise<Probe | null>;
    /** Those that stand in a chamber now. */
    standingIn(chamberId: string): Promise<Probe[]>;
    add(probe: Probe): Promise<void>;
    update(number: number, change: { name?: string; silenceMs?: number; outOfService?: boolean }): Promise<void>;
    /** Ends the placement that stands and begins another; null = taken away. */
    place(number: number, to: { chamberId: string | null; place: Place } | null, atMs: number): Promise<void>;
    /** Placements in a chamber (null = the house) that share an instant with a stretch of time, its end not included. */
    placements(chamberId: string | null, fromMs: number, toMs: number): Promise<Placement[]>;
    /** Everywhere a probe has stood, oldest first. */
    placementsOf(probe: number): Promise<Placement[]>;
    refused(): Promise<Refused[]>;
  };
  readonly calibrations: {
    /** Of all probes; those of one probe in the order in which they begin. */
    list(): Promise<StoredCalibration[]>;
    add(entry: Omit<StoredCalibration, 'id'>): Promise<StoredCalibration>;
  };
  readonly profiles: {
    list(): Promise<ProfileVersion[]>;
    get(id: string, version?: number): Promise<ProfileVersion | null>;
    /** Every version of one profile, newest first; empty when there is none. */
    versions(id: string): Promise<ProfileVersion[]>;
    addVersion(id: string, document: ProfileDocument, atMs: number, by: string): Promise<ProfileVersion>;
  };
  readonly batches: {
    page(query: PageQuery): Promise<Page<Batch>>;
    open(): Promise<Batch[]>;
    /** Batches whose time in a chamber overlaps a stretch, newest first. */
    inChamber(chamberId: string, fromMs: number, toMs: number): Promise<Batch[]>;
    get(id: string): Promise<Batch | null>;
    add(batch: Batch): Promise<void>;
    update(id: string, change: Partial<Batch>): Promise<void>;
    startHold(id: string, atMs: number): Promise<void>;
    endHold(id: string, atMs: number): Promise<void>;
    moveTo(id: string, stage: StageName, atMs: number): Promise<void>;
    log(id: string): Promise<LogRow[]>;
    addLog(row: LogRow): Promise<void>;
    answers(id: string): Promise<CheckAnswer[]>;
    answer(row: CheckAnswer): Promise<void>;
  };
  readonly alarms: {
    watches(): Promise<ChamberWatch[]>;
    get(id: string): Promise<Alarm | null>;
    page(query: PageQuery & { state?: string | undefined; chamberId?: string | undefined }): Promise<Page<Alarm>>;
    ofBatch(batchId: string): Promise<Alarm[]>;
    /** Those of a chamber that wait for somebody. */
    unacknowledgedIn(chamberId: string): Promise<Alarm[]>;
    events(alarmId: string): Promise<AlarmEvent[]>;
    /** Beginnings and ends, before `toMs`, of the alarms that had any step in the stretch or are not over; in order of time. */
    steps(fromMs: number, toMs: number): Promise<AlarmStep[]>;
  };
  readonly people: {
    list(): Promise<Person[]>;
    get(id: string): Promise<Person | null>;
    byName(name: string): Promise<Person | null>;
    add(person: NewPerson): Promise<void>;
    /** Adds the person only while there is none: the first manager is made once. */
    addFirst(person: NewPerson): Promise<boolean>;
    update(id: string, change: { role?: Role; passwordHash?: string }): Promise<boolean>;
    /** Fields that are not named stay. */
    setDetails(id: string, details: Partial<PersonDetails>): Promise<boolean>;
    remove(id: string): Promise<boolean>;
    addSession(row: { tokenHash: string; personId: string; createdMs: number; expiresMs: number }): Promise<void>;
    bySession(tokenHash: string, nowMs: number): Promise<Person | null>;
    endSession(tokenHash: string): Promise<void>;
    endSessionsOf(personId: string): Promise<void>;
    tokens(): Promise<Token[]>;
    addToken(token: Token, tokenHash: string): Promise<void>;
    byToken(tokenHash: string): Promise<Token | null>;
    removeToken(id: string): Promise<boolean>;
  };
  readonly invitations: {
    /** Those that can still be used. */
    list(nowMs: number): Promise<Invitation[]>;
    bySecret(secretHash: string, nowMs: number): Promise<Invitation | null>;
    add(invitation: Invitation, secretHash: string): Promise<void>;
    /** Adds the person and uses the invitation up, or neither; false when it cannot be used any more. */
    accept(secretHash: string, person: NewPerson): Promise<boolean>;
    remove(id: string): Promise<boolean>;
  };
  readonly phones: {
    ofPerson(personId: string): Promise<Phone[]>;
    all(): Promise<Phone[]>;
    get(id: string): Promise<Phone | null>;
    /** A subscription that is known already is taken over by the person who brings it. */
    put(phone: NewPhone): Promise<Phone>;
    remove(id: string): Promise<boolean>;
    confirm(id: string, atMs: number): Promise<void>;
    /** Drops a phone, remembers that and why, and writes the notices that say so: all or nothing. */
    lose(phone: Phone, reason: Finding, atMs: number, notices: readonly NoticeDraft[]): Promise<void>;
    lost(personId: string): Promise<LostPhone[]>;
    forgetLost(id: string, personId: string): Promise<boolean>;
  };
  readonly duty: {
    /** The weekly rota, and the plan of escalation beside it as it was written; undefined = none was. */
    read(): Promise<{ readonly spans: readonly DutySpan[]; readonly plan: unknown }>;
    /** Replaces both in one. */
    write(spans: readonly DutySpan[], plan: unknown): Promise<void>;
  };
  readonly notices: {
    due(nowMs: number, limit: number): Promise<Notice[]>;
    nextDueMs(): Promise<number | null>;
    /** What waits, since when the oldest of it does, and how many were given up since an instant. */
    summary(sinceMs: number): Promise<{ waiting: number; oldestMs: number | null; givenUp: number }>;
    ofAlarm(alarmId: string): Promise<Notice[]>;
    /** When the newest of a kind was decided; null = there is none. */
    newestMs(kind: NoticeDraft['kind']): Promise<number | null>;
    /** The device has shown it. Only the first time counts; false when there is no such notice. */
    confirm(id: string, atMs: number): Promise<boolean>;
    get(id: string): Promise<Notice | null>;
  };
  /** The last result of every target that something was sent to; a phone that is gone, or subscribed anew, has none. */
  readonly targetResults: {
    all(): Promise<TargetResult[]>;
  };
  readonly acknowledgeLinks: {
    get(tokenHash: string): Promise<AcknowledgeLink | null>;
    /** True for the one who used it first. */
    use(tokenHash: string, atMs: number): Promise<boolean>;
  };
  readonly settings: {
    get(name: string): Promise<unknown>;
    put(name: string, value: unknown): Promise<void>;
  };
}
