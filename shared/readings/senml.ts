// What SenML records mean to Takewell: names that end in temperature or humidity, in their units, are readings.
// Records of anything else (position, signal) are none of our business: neither admitted nor refused. The battery is read in battery.ts.
import type { Sample } from './admit-samples.ts';
import { quoteText } from './json-object.ts';
import { percentFromRatio } from './percent-from-ratio.ts';
import { findProbeNameFault } from './probe-name.ts';
import type { Refusal } from './reading.ts';
import { because, type Reason } from './reason.ts';
import { type ResolvedRecord, resolveSenml } from './resolve-senml.ts';

/** Two records (temperature and humidity) to each of 10,000 readings. */
const MAX_RECORDS = 20_000;

type Quantity = 'temperature' | 'humidity';
const quantities: readonly Quantity[] = ['temperature', 'humidity'];
const separators = '/:.-_';

/**
 * Reads a parsed SenML pack. A name is `temperature`, `humidity`, or ends in one of them after `/ : . - _`; what stands
 * before that separator, base name included, is the probe's address on its node (`''` when nothing does).
 * Temperature must be in `Cel`, humidity in `%RH` or as a ratio in `/`. No unit is guessed.
 */
export function readSenml(pack: readonly unknown[], arrivalMs: number): readonly (Sample | Refusal)[] {
  if (pack.length > MAX_RECORDS) return [{ reason: because('packTooLong', pack.length), where: '' }];
  const items: (Sample | Refusal)[] = [];
  for (const record of resolveSenml(pack, arrivalMs)) {
    const item = 'reason' in record ? record : readRecord(record);
    if (item !== null) items.push(item);
  }
  return items;
}

function readRecord(record: ResolvedRecord): Sample | Refusal | null {
  const quantity = quantities.find((word) => record.name.endsWith(word));
  if (quantity === undefined) return null;
  const { where, timeMs } = record;
  const probe = readProbe(record.name.slice(0, -quantity.length), quantity);
  if ('fault' in probe) return { reason: probe.fault, where };
  const value = quantity === 'temperature' ? readTemperature(record) : readHumidity(record);
  if (typeof value === 'object') return { reason: value, where };
  const empty = { where, probe: probe.address, timeMs, temperature: null, humidity: null };
  return { ...empty, [quantity]: value };
}

function readProbe(head: string, quantity: Quantity): { readonly address: string } | { readonly fault: Reason } {
  if (!separators.includes(head.slice(-1))) {
    return { fault: because('noSeparator', quoteText(head + quantity), quantity) };
  }
  const address = head.slice(0, -1);
  const fault = address === '' ? null : findProbeNameFault(address);
  return fault === null ? { address } : { fault: because('probeAddress', quoteText(address), fault) };
}

/** °C, or the reason why not. */
function readTemperature({ unit, value }: ResolvedRecord): number | Reason {
  if (value === null) return because('temperatureMissing');
  if (unit === 'Cel') return value;
  if (unit === null) return because('temperatureNoUnit');
  return unit === 'degF' ? because('temperatureFahrenheit') : because('temperatureUnit', quoteText(unit));
}

/** %RH, or the reason why not. */
function readHumidity({ unit, value }: ResolvedRecord): number | Reason {
  if (value === null) return because('humidityMissing');
  if (unit === '%RH') return value;
  if (unit === '/') return percentFromRatio(value);
  return unit === null ? because('humidityNoUnit') : because('humidityUnit', quoteText(unit));
}
