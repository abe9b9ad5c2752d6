// Probes, nodes and refused messages as they are sent to people.
import type { BatteryView, NodeView, ProbeView, RefusedView } from '../../shared/api/probes.ts';
import { calibrate } from '../../shared/readings/calibration.ts';
import { sayRefusal } from '../../shared/readings/say-refusal.ts';
import { MINUTE_MS, utcText } from '../../shared/units.ts';
import type { SharedWords } from '../../shared/words/shared-words.ts';
import type { Node, Refused } from '../store/store.ts';
import type { ProbeState } from '../watch/probe-book.ts';
import { timeText } from './alarm-view.ts';

/** `more`: what is not in the state of the probe. */
export function viewProbe(
  { probe, newest, calibrations }: ProbeState,
  more: Pick<ProbeView, 'battery' | 'hoursAbove90Rh'>,
): ProbeView {
  const { id, nodeId, address, name, placement, silenceMs, outOfService, discoveredMs } = probe;
  return {
    ...{ id, nodeId, address, name, outOfService },
    chamberId: placement?.chamberId ?? null,
    place: placement?.place ?? null,
    silenceMinutes: silenceMs / MINUTE_MS,
    discoveredAt: utcText(discoveredMs),
    ...more,
    last: newest === null ? null : viewReading(newest, calibrations),
  };
}

function viewReading(
  newest: NonNullable<ProbeState['newest']>,
  calibrations: ProbeState['calibrations'],
): NonNullable<ProbeView['last']> {
  const { timeMs, temperature, humidity, temperatureFlag, humidityFlag } = calibrate(newest, calibrations);
  const raw = { rawTemperature: newest.temperature, rawHumidity: newest.humidity };
  return { at: utcText(timeMs), temperature, humidity, ...raw, temperatureFlag, humidityFlag };
}

/** Null where it has not told. */
export function viewBattery({ batteryLevel, batteryUnit, batteryMs }: Node): BatteryView | null {
  if (batteryLevel == null || batteryUnit == null || batteryMs == null) return null;
  return { level: batteryLevel, unit: batteryUnit, at: utcText(batteryMs) };
}

export function viewNode(node: Node): NodeView {
  const { id, status, statusMs, passwordHash, discoveredMs } = node;
  const hasCredentials = passwordHash !== null;
  const shown = { id, status, statusAt: timeText(statusMs), hasCredentials, discoveredAt: utcText(discoveredMs) };
  return { ...shown, battery: viewBattery(node) };
}

/** What an earlier version refused is said as it was kept, in English. */
export function viewRefused(refused: Refused, words: SharedWords): RefusedView {
  const { id, atMs, topic, reason, sentence, where, payloadStart } = refused;
  return {
    ...{ id, at: utcText(atMs), topic, where },
    reason: reason === null ? sentence : sayRefusal(reason, words),
    payloadStart: Buffer.from(payloadStart).toString('utf8'),
  };
}
