// The names nodes and probes may have on the wire. It never changes a name: `Canopy` and `canopy` are two probes.

const MAX_LENGTH = 64;

const senmlNamePattern = /^[A-Za-z0-9][A-Za-z0-9:./_-]*$/;
const nodeNamePattern = /^[A-Za-z0-9._-]+$/;

/** Node names that would collide with what Takewell itself publishes under `takewell/v1/`. */
const reservedNodeNames: ReadonlySet<string> = new Set(['chambers', 'service']);

/** What `isSenmlName` asks, as the end of a sentence. */
export const NAME_RULE =
  'may hold only the letters A–Z and a–z, digits and - : . / _, and must start with a letter or digit';

/** True for a name in the alphabet of SenML names (RFC 8428 §4.5.1), of any length. */
export function isSenmlName(name: string): boolean {
  return senmlNamePattern.test(name);
}

/** Why a probe's address on its node is not usable, or null. A SenML name of at most 64 characters. */
export function findProbeNameFault(name: string): string | null {
  if (name.length > MAX_LENGTH) return `is longer than ${MAX_LENGTH} characters; shorten it`;
  return isSenmlName(name) ? null : NAME_RULE;
}

/** Why a node's name is not usable, or null: 1–64 of A–Z a–z 0–9 . _ - and not one of Takewell's own words. */
export function findNodeNameFault(name: string): string | null {
  if (name === '') return 'is empty; give the node a name';
  if (name.length > MAX_LENGTH) return `is longer than ${MAX_LENGTH} characters; shorten it`;
  if (!nodeNamePattern.test(name)) return 'may hold only the letters A–Z and a–z, digits and . _ -';
  return reservedNodeNames.has(name) ? 'is reserved for what Takewell itself publishes; choose another' : null;
}
