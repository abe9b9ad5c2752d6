// What admission makes of a message on `takewell/v1/<node>/readings`: tells the form, reads it, applies the shared rules.
// It never throws and decides nothing about stored probes.
import { admitSamples } from './admit-samples.ts';
import { type Battery, plainBattery, senmlBattery } from './battery.ts';
import { isJsonObject } from './json-object.ts';
import { parsePayload } from './parse-payload.ts';
import { placeInPlainJson, readPlainJson } from './plain-json.ts';
import type { Admission } from './reading.ts';
import { readSenml } from './senml.ts';

interface IncomingMessage {
  readonly node: string;
  readonly payload: Uint8Array;
  /** When the message came in, ms since the epoch: the time of readings that carry none. */
  readonly arrivalMs: number;
}

/**
 * Decodes a reading pack, SenML JSON (RFC 8428) or plain JSON, at most 1 MiB. A message may be admitted in part; each
 * refusal says why in one sentence and where as a JSON Pointer. Any bytes are answered, none throw.
 */
export function decodePayload(message: IncomingMessage): Admission {
  const parsed = parsePayload(message.payload);
  if ('refusal' in parsed) return { admitted: [], refused: [parsed.refusal] };
  const { value } = parsed;
  return isSenmlPack(value)
    ? withBattery(
        admitSamples(readSenml(value, message.arrivalMs), message, (sample) => sample.where),
        senmlBattery(value, message.arrivalMs),
      )
    : withBattery(
        admitSamples(readPlainJson(value, message.arrivalMs), message, placeInPlainJson),
        plainBattery(value),
      );
}

function withBattery(admission: Admission, battery: Battery | null): Admission {
  return battery === null ? admission : { ...admission, battery };
}

/** The labels every SenML pack has some of; `t` and `s` alone are as likely somebody's own short names. */
const senmlLabels = ['n', 'bn', 'v', 'vs', 'vb', 'vd', 'u', 'bu', 'bt', 'bv', 'bver'] as const;
const plainFields = ['temperature', 'humidity'] as const;

/** A list in which something has a SenML label and nothing has a field of the plain form. */
function isSenmlPack(value: unknown): value is readonly unknown[] {
  if (!Array.isArray(value)) return false;
  return (
    !value.some((element) => hasAny(element, plainFields)) && value.some((element) => hasAny(element, senmlLabels))
  );
}

function hasAny(element: unknown, fields: readonly string[]): boolean {
  return isJsonObject(element) && fields.some((field) => Object.hasOwn(element, field));
}
