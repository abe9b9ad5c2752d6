// Resolves a SenML pack (RFC 8428 §4): base fields and relative times worked into every record, the RFC's own rules checked.
// It knows nothing of probes: what a name and a unit mean to us stands in senml.ts.
import { asNumber, asText, describeValue, isJsonObject, type JsonObject, quoteText } from './json-object.ts';
import { pointerToken } from './json-pointer.ts';
import { isSenmlName } from './probe-name.ts';
import type { Refusal } from './reading.ts';
import { because, type Reason } from './reason.ts';

/** A record with nothing left to look up. `unit` is null when the pack gives none, `value` when it is not a number. */
export interface ResolvedRecord {
  readonly where: string;
  readonly name: string;
  readonly unit: string | null;
  readonly timeMs: number;
  readonly value: number | null;
}

/** The highest SenML version understood: that of RFC 8428 itself. */
const HIGHEST_VERSION = 10;
/** RFC 8428 §4.5.3: smaller times are counted from now, all others from 1970. */
const RELATIVE_BELOW_S = 2 ** 28;

type Field = readonly [name: string, type: 'text' | 'number'];
const baseFields: readonly Field[] = [
  ['bn', 'text'],
  ['bu', 'text'],
  ['bt', 'number'],
  ['bv', 'number'],
];
const recordFields: readonly Field[] = [
  ['n', 'text'],
  ['u', 'text'],
  ['t', 'number'],
  ['v', 'number'],
];
const otherValueFields = ['vs', 'vb', 'vd', 's'] as const;

interface Base {
  readonly bn: string;
  readonly bu: string | null;
  readonly bt: number;
  readonly bv: number | null;
}

/**
 * Resolves every record of a parsed pack against its arrival (ms since the epoch), in the order of the pack.
 * A faulty record is refused by itself; a faulty base field ends the reading of the pack, since all that follows builds
 * on it. A record of base fields alone gives nothing. Sums (`bs`, `s`) and the update time (`ut`) are left aside.
 */
export function resolveSenml(pack: readonly unknown[], arrivalMs: number): readonly (ResolvedRecord | Refusal)[] {
  const resolved: (ResolvedRecord | Refusal)[] = [];
  let base: Base = { bn: '', bu: null, bt: 0, bv: null };
  for (const [index, record] of pack.entries()) {
    const where = `/${index}`;
    if (!isJsonObject(record)) {
      resolved.push({ reason: because('recordNoObject', describeValue(record)), where });
      continue;
    }
    const baseFault = findBaseFault(record, where);
    if (baseFault !== null) return [...resolved, endPack(baseFault, pack.length - index - 1)];
    base = advanceBase(base, record);
    if (!hasRecordField(record)) continue;
    resolved.push(findRecordFault(record, where) ?? resolveRecord(record, base, where, arrivalMs));
  }
  return resolved;
}

function resolveRecord(record: JsonObject, base: Base, where: string, arrivalMs: number): ResolvedRecord | Refusal {
  const { n, t, u } = record;
  const name = base.bn + (asText(n) ?? '');
  if (!isSenmlName(name)) return { reason: describeNameFault(name), where };
  const timeS = base.bt + (asNumber(t) ?? 0);
  const timeMs = Math.round(timeS * 1000) + (timeS < RELATIVE_BELOW_S ? arrivalMs : 0);
  return { where, name, unit: asText(u) ?? base.bu, timeMs, value: resolveValue(record, base.bv) };
}

/** RFC 8428 §4.5.4: a missing value counts as zero beside a base value, unless the record carries another kind of value. */
function resolveValue(record: JsonObject, baseValue: number | null): number | null {
  const { v } = record;
  const own = asNumber(v);
  if (own !== null) return own + (baseValue ?? 0);
  return otherValueFields.some((field) => record[field] !== undefined) ? null : baseValue;
}

function advanceBase(base: Base, record: JsonObject): Base {
  const { bn, bu, bt, bv } = record;
  return {
    bn: asText(bn) ?? base.bn,
    bu: asText(bu) ?? base.bu,
    bt: asNumber(bt) ?? base.bt,
    bv: asNumber(bv) ?? base.bv,
  };
}

function findBaseFault(record: JsonObject, where: string): Refusal | null {
  const { bver: version } = record;
  if (version !== undefined && !(typeof version === 'number' && version <= HIGHEST_VERSION)) {
    const reason = because('senmlVersion', describeValue(version), HIGHEST_VERSION);
    return { reason, where: `${where}/bver` };
  }
  return findTypeFault(record, where, baseFields) ?? findUnknownDuty(record, where, true);
}

function findRecordFault(record: JsonObject, where: string): Refusal | null {
  return findTypeFault(record, where, recordFields) ?? findUnknownDuty(record, where, false);
}

function findTypeFault(record: JsonObject, where: string, fields: readonly Field[]): Refusal | null {
  for (const [field, type] of fields) {
    const value = record[field];
    if (value === undefined || (type === 'text' ? asText(value) : asNumber(value)) !== null) continue;
    const reason = because(type === 'text' ? 'fieldNoText' : 'fieldNoNumber', field, describeValue(value));
    return { reason, where: `${where}/${field}` };
  }
  return null;
}

/** RFC 8428 §4.4: an unknown field is ignored unless its name ends in "_"; base fields are those that begin with "b". */
function findUnknownDuty(record: JsonObject, where: string, inBase: boolean): Refusal | null {
  const field = Object.keys(record).find((key) => key.endsWith('_') && key.startsWith('b') === inBase);
  if (field === undefined) return null;
  return { reason: because('fieldUnknown', quoteText(field)), where: `${where}/${pointerToken(field)}` };
}

function endPack(fault: Refusal, after: number): Refusal {
  return after === 0 ? fault : { reason: because('packEnds', fault.reason, after), where: fault.where };
}

function describeNameFault(name: string): Reason {
  if (name === '') return because('recordUnnamed');
  return because('recordName', quoteText(name), because('nameLetters'));
}

function hasRecordField(record: JsonObject): boolean {
  return Object.keys(record).some((key) => !key.startsWith('b'));
}
