// Puts the invented nursery into an empty store: site, people, chambers, probes in place, batches and what the crew has logged. No readings.
import { nanoid } from 'nanoid';
import type { SiteSettings } from '../../shared/api/telling.ts';
import type { Batch } from '../../shared/healing/batch.ts';
import { findStandardProfile } from '../../shared/healing/standard-profiles.ts';
import { DEFAULT_SILENCE_MS } from '../../shared/readings/silence.ts';
import { standardEscalation } from '../../shared/telling/escalation.ts';
import { hashPassword } from '../people/passwords.ts';
import { hashSecret, makeSecret } from '../people/secrets.ts';
import type { LogRow, Placement, Store } from '../store/store.ts';
import { demoRota } from './demo-rota.ts';
import type { DemoChamber, DemoNursery } from './demo-scenario.ts';

/** The password of every invented person. */
export const DEMO_PASSWORD = 'grafting demo';

/** The plan that every batch of the nursery follows. */
const PROFILE_ID = 'tomato-common-practice';

/** A tent of the nursery as it is stored. */
export interface StoredTent {
  readonly tent: DemoChamber;
  readonly chamberId: string;
  readonly batchId: string;
  /** What its node signs in with. */
  readonly secret: string;
}

export interface StoredNursery {
  readonly nursery: DemoNursery;
  readonly tents: readonly StoredTent[];
  readonly houseSecret: string;
  /** When the first of the batches was opened, ms: nothing in the store is older. */
  readonly fromMs: number;
}

/** Stores the nursery. */
export async function storeNursery(store: Store, nursery: DemoNursery): Promise<StoredNursery> {
  const fromMs = Math.min(...nursery.chambers.map(({ batch }) => batch.openedMs));
  await storeSite(store, nursery, fromMs);
  const tents: StoredTent[] = [];
  // Chambers are listed in the order in which they were made.
  for (const [index, tent] of nursery.chambers.entries()) tents.push(await storeTent(store, tent, fromMs + index));
  const { node, probe } = nursery.house;
  const placed = [{ ...probe, chamberId: null }];
  const houseSecret = await storeNode(store, node, placed, fromMs);
  return { nursery, tents, houseSecret, fromMs };
}

/** The people of the nursery, who all sign in with `DEMO_PASSWORD`, and their times of duty. */
export async function storePeople(store: Store, { people }: DemoNursery, createdMs: number): Promise<void> {
  const passwordHash = await hashPassword(DEMO_PASSWORD);
  const stored = people.map((person) => ({ ...person, id: nanoid(10), passwordHash, createdMs }));
  for (const person of stored) await store.people.add(person);
  await store.duty.write(demoRota(stored), { ...standardEscalation, order: [] });
}

async function storeSite(store: Store, { name, zone }: DemoNursery, fromMs: number): Promise<void> {
  const site: SiteSettings = { siteName: name, zone, altitudeM: 0, temperatureUnit: '°C', mappings: [] };
  await store.settings.put('site', site);
  // The other shipped profiles come with the service; this one must be older than the batches that follow it.
  const profile = findStandardProfile(PROFILE_ID);
  if (profile === null) throw new Error(`the profile ${PROFILE_ID} is not shipped any more`);
  await store.profiles.addVersion(PROFILE_ID, profile.document, fromMs, 'Takewell');
}

async function storeTent(store: Store, tent: DemoChamber, createdMs: number): Promise<StoredTent> {
  const { openedMs } = tent.batch;
  const chamberId = nanoid(10);
  await store.chambers.add({ id: chamberId, name: tent.name, createdMs });
  const placed = tent.probes.map((probe) => ({ ...probe, chamberId }));
  const secret = await storeNode(store, tent.node, placed, openedMs);
  const batchId = await storeBatch(store, tent, chamberId);
  return { tent, chamberId, batchId, secret };
}

type Placed = DemoChamber['probes'][number] & Pick<Placement, 'chamberId'>;

async function storeNode(store: Store, nodeId: string, placed: readonly Placed[], fromMs: number): Promise<string> {
  let number = (await store.probes.list()).length;
  for (const { address, name, place, chamberId } of placed) {
    number += 1;
    const known = { silenceMs: DEFAULT_SILENCE_MS, outOfService: false, discoveredMs: fromMs, placement: null };
    await store.probes.add({ number, id: `p${number}`, nodeId, address, name, ...known });
    await store.probes.place(number, { chamberId, place }, fromMs);
  }
  const secret = makeSecret();
  await store.probes.setNodePassword(nodeId, hashSecret(secret));
  return secret;
}

async function storeBatch(store: Store, { batch, log }: DemoChamber, chamberId: string): Promise<string> {
  const id = nanoid(10);
  const plan = { profileId: PROFILE_ID, profileVersion: 1 };
  const open = { finishedMs: null, takenPlants: null, holds: [], moves: [] };
  const row: Batch = { id, chamberId, ...plan, ...batch, ...open };
  await store.batches.add(row);
  const opener = log[0]?.person ?? '';
  await addLog(store, id, { kind: 'opened', atMs: batch.openedMs, person: opener });
  await addLog(store, id, { kind: 'closed', atMs: batch.closedMs, person: opener });
  for (const entry of log) await addLog(store, id, entry);
  return id;
}

type Entry = Pick<LogRow, 'kind' | 'atMs' | 'person'> & Partial<Pick<LogRow, 'gapPercent' | 'about' | 'note'>>;

/** Writes a line into the log of a batch. */
export async function addLog(store: Store, batchId: string, entry: Entry): Promise<void> {
  await store.batches.addLog({ id: nanoid(12), batchId, gapPercent: null, note: '', ...entry });
}
