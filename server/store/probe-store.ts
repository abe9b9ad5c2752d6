// Nodes, probes, where a probe stood and when, and messages that were refused.
import type { Database } from 'better-sqlite3';
import type { Battery } from '../../shared/readings/battery.ts';
import { readReason } from '../../shared/readings/read-reason.ts';
import type { Node, Placement, Probe, Refused, Store } from './store.ts';
import { guarded } from './store-problem.ts';

interface ProbeRow {
  number: number;
  nodeId: string;
  address: string;
  name: string;
  silenceMs: number;
  outOfService: number;
  discoveredMs: number;
  chamberId: string | null;
  place: Placement['place'] | null;
  fromMs: number | null;
}

const probesSql = `
  SELECT p.number, node_id nodeId, address, name, silence_ms silenceMs, out_of_service outOfService, discovered_ms discoveredMs,
    l.chamber_id chamberId, l.place, l.from_ms fromMs
  FROM probes p LEFT JOIN placements l ON l.probe = p.number AND l.to_ms IS NULL`;

// The end of a placement is its last instant too, unless the probe was put elsewhere in that very instant.
const placementColumns = `probe, chamber_id chamberId, place, from_ms fromMs, to_ms toMs,
  to_ms - EXISTS (SELECT 1 FROM placements n WHERE n.probe = p.probe AND n.id > p.id AND n.from_ms = p.to_ms) lastMs`;

/** Writes what a message brought to light; call inside the transaction. */
export function prepareDiscovery(db: Database) {
  const node = db.prepare('INSERT OR IGNORE INTO nodes (id, discovered_ms) VALUES (?, ?)');
  const probe = db.prepare(`INSERT OR IGNORE INTO probes (number, node_id, address, name, silence_ms, discovered_ms)
    VALUES (?, ?, ?, ?, ?, ?)`);
  const status =
    db.prepare(`INSERT INTO nodes (id, status, status_ms, discovered_ms) VALUES (@nodeId, @status, @atMs, @atMs)
    ON CONFLICT (id) DO UPDATE SET status = excluded.status, status_ms = excluded.status_ms`);
  // The newest counts, in whatever order messages come; a repeat writes nothing.
  const battery = db.prepare(`UPDATE nodes SET battery_level = @level, battery_unit = @unit, battery_ms = @atMs
    WHERE id = @nodeId AND (battery_ms IS NULL OR battery_ms <= @atMs)`);
  return {
    setBattery(row: Battery & { nodeId: string; atMs: number }): void {
      battery.run(row);
    },
    addProbe(row: Probe): void {
      node.run(row.nodeId, row.discoveredMs);
      probe.run(row.number, row.nodeId, row.address, row.name, row.silenceMs, row.discoveredMs);
    },
    setStatus(row: { nodeId: string; status: string; atMs: number }): void {
      status.run(row);
    },
  };
}

/** Keeps the last 200 refusals; call inside the transaction. */
export function prepareRefusals(db: Database) {
  const add = db.prepare(
    'INSERT INTO refused (at_ms, topic, reason, reason_data, place, payload_start) VALUES (?, ?, ?, ?, ?, ?)',
  );
  const trim = db.prepare('DELETE FROM refused WHERE id <= (SELECT max(id) FROM refused) - 200');
  return (rows: readonly Omit<Refused, 'id'>[]): void => {
    for (const { atMs, topic, sentence, reason, where, payloadStart } of rows)
      add.run(atMs, topic, sentence, JSON.stringify(reason), where, payloadStart);
    if (rows.length > 0) trim.run();
  };
}

export function openProbeStore(db: Database): Store['probes'] {
  const discovery = prepareDiscovery(db);
  const nodes = db.prepare<[], Node>(
    `SELECT id, status, status_ms statusMs, password_hash passwordHash, discovered_ms discoveredMs,
       battery_level batteryLevel, battery_unit batteryUnit, battery_ms batteryMs FROM nodes ORDER BY id`,
  );
  const addNode = db.prepare('INSERT INTO nodes (id, status, discovered_ms) VALUES (?, ?, ?)');
  const setPassword = db.prepare('UPDATE nodes SET password_hash = ? WHERE id = ?');
  const list = db.prepare<[], ProbeRow>(`${probesSql} ORDER BY p.number`);
  const one = db.prepare<[number], ProbeRow>(`${probesSql} WHERE p.number = ?`);
  const standingIn = db.prepare<[string], ProbeRow>(`${probesSql} WHERE l.chamber_id = ? ORDER BY p.number`);
  const update = db.prepare(`UPDATE probes SET name = coalesce(?, name), silence_ms = coalesce(?, silence_ms),
    out_of_service = coalesce(?, out_of_service) WHERE number = ?`);
  const endPlacement = db.prepare('UPDATE placements SET to_ms = ? WHERE probe = ? AND to_ms IS NULL');
  const startPlacement = db.prepare('INSERT INTO placements (probe, chamber_id, place, from_ms) VALUES (?, ?, ?, ?)');
  const placements = db.prepare<[{ chamberId: string | null; fromMs: number; toMs: number }], Placement>(
    `SELECT ${placementColumns} FROM placements p
     WHERE chamber_id IS @chamberId AND from_ms < @toMs AND coalesce(lastMs, @toMs) >= @fromMs ORDER BY probe, from_ms`,
  );
  const placementsOf = db.prepare<[number], Placement>(
    `SELECT ${placementColumns} FROM placements p WHERE probe = ? ORDER BY from_ms, id`,
  );
  const refused = db.prepare<[], RefusedRow>(
    `SELECT id, at_ms atMs, topic, reason sentence, reason_data reason, place "where", payload_start payloadStart
     FROM refused ORDER BY id DESC LIMIT 200`,
  );
  const place = db.transaction(
    (number: number, to: { chamberId: string | null; place: string } | null, atMs: number) => {
      endPlacement.run(atMs, number);
      if (to !== null) startPlacement.run(number, to.chamberId, to.place, atMs);
    },
  );
  const add = db.transaction((probe: Probe) => discovery.addProbe(probe));
  return {
    nodes: async () => guarded(() => nodes.all()),
    async addNode(node) {
      guarded(() => addNode.run(node.id, node.status, node.discoveredMs));
    },
    setNodePassword: async (nodeId, hash) => guarded(() => setPassword.run(hash, nodeId).changes > 0),
    list: async () => guarded(() => list.all().map(toProbe)),
    async get(id) {
      const row = guarded(() => one.get(numberOf(id)));
      return row === undefined ? null : toProbe(row);
    },
    standingIn: async (chamberId) => guarded(() => standingIn.all(chamberId).map(toProbe)),
    async add(probe) {
      guarded(() => add.immediate(probe));
    },
    async update(number, { name, silenceMs, outOfService }) {
      const out = outOfService === undefined ? null : Number(outOfService);
      guarded(() => update.run(name ?? null, silenceMs ?? null, out, number));
    },
    async place(number, to, atMs) {
      guarded(() => place.immediate(number, to, atMs));
    },
    placements: async (chamberId, fromMs, toMs) => guarded(() => placements.all({ chamberId, fromMs, toMs })),
    placementsOf: async (probe) => guarded(() => placementsOf.all(probe)),
    refused: async () => guarded(() => refused.all().map(toRefused)),
  };
}

const stillThere = { toMs: null, lastMs: null };
const ID_START = 'p';

/** −1, which no probe has, for an id that is none. */
function numberOf(id: string): number {
  const number = Number(id.slice(ID_START.length));
  return id.startsWith(ID_START) && Number.isSafeInteger(number) ? number : -1;
}

type RefusedRow = Omit<Refused, 'reason'> & { readonly reason: string | null };

function toRefused(row: RefusedRow): Refused {
  return { ...row, reason: readReason(JSON.parse(row.reason ?? 'null')) };
}

function toProbe(row: ProbeRow): Probe {
  const { number, nodeId, address, name, silenceMs, discoveredMs, chamberId, place, fromMs } = row;
  const placement =
    place === null || fromMs === null ? null : { probe: number, chamberId, place, fromMs, ...stillThere };
  const id = `${ID_START}${number}`;
  return {
    number,
    id,
    nodeId,
    address,
    name,
    silenceMs,
    outOfService: row.outOfService === 1,
    discoveredMs,
    placement,
  };
}
