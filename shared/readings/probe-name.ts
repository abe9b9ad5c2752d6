// The names nodes and probes may have on the wire. It never changes a name: `Canopy` and `canopy` are two probes.
import { because, type Reason } from './reason.ts';

const MAX_LENGTH = 64;

const senmlNamePattern = /^[A-Za-z0-9][A-Za-z0-9:./_-]*$/;
const nodeNamePattern = /^[A-Za-z0-9._-]+$/;

/** Node names that would collide with what Takewell itself publishes under `takewell/v1/`. */
const reservedNodeNames: ReadonlySet<string> = new Set(['chambers', 'service']);

/** True for a name in the alphabet of SenML names (RFC 8428 §4.5.1), of any length. */
export function isSenmlName(name: string): boolean {
  return senmlNamePattern.test(name);
}

/** Why a probe's address on its node is not usable, as the end of a sentence, or null. A SenML name of at most 64 characters. */
export function findProbeNameFault(name: string): Reason | null {
  if (name.length > MAX_LENGTH) return because('nameTooLong', MAX_LENGTH);
  return isSenmlName(name) ? null : because('nameLetters');
}

/** Why a node's name is not usable, as the end of a sentence, or null: 1–64 of A–Z a–z 0–9 . _ - and not one of Takewell's own words. */
export function findNodeNameFault(name: string): Reason | null {
  if (name === '') return because('nameEmpty');
  if (name.length > MAX_LENGTH) return because('nameTooLong', MAX_LENGTH);
  if (!nodeNamePattern.test(name)) return because('nodeNameLetters');
  return reservedNodeNames.has(name) ? because('nameReserved') : null;
}
