// Chambers and alarms as the service sends them, for the tests of the page's pure parts.
import type { AlarmView } from '../../shared/api/alarms.ts';
import type { ChamberView } from '../../shared/api/chambers.ts';

export const sampleNow = '2026-03-04T12:00:00Z';

/** An unacknowledged heat alarm, changed by `patch`. */
export function sampleAlarm(patch: Partial<AlarmView> = {}): AlarmView {
  return {
    ...{ id: 'a1', chamberId: 'c1', chamberName: 'Chamber 1', batchId: 'b1', batchCode: 'B-1', rule: 'heat' },
    ...{ probeId: null, probeName: null, state: 'unacknowledged', level: 1, priority: 'high' },
    ...{ since: sampleNow, occurredAt: sampleNow, limit: 28, value: 28.6, peak: 28.9, peakAt: sampleNow },
    ...{ acknowledgedAt: null, acknowledgedBy: null, returnedAt: null, shelvedUntil: null, shelvedReason: null },
    ...{ about: null, expected: null, service: null },
    ...{ sentence: '▲ Hot: 28.6 °C, limit 28 for 4 min', advice: 'Shade now.' },
    ...patch,
  };
}

export const sampleBatch: NonNullable<ChamberView['batch']> = {
  ...{ id: 'b1', code: 'B-1', scion: 'S-21', rootstock: 'R-7', trays: 14, plants: 1456 },
  ...{ openedAt: '2026-03-02T07:00:00Z', closedAt: '2026-03-02T11:00:00Z', endsAt: '2026-03-11T07:00:00Z' },
  ...{ healingDay: 3, stage: 'closed', onHold: false, gapPercent: 0 },
};

export const sampleCheck: NonNullable<ChamberView['nextDue']> = {
  ...{ checkId: 'look.1', question: 'Is the film wet?', ifNo: 'Mist the film.' },
  ...{ dueAt: '2026-03-04T15:00:00Z', status: 'to-come' },
};

/** A closed chamber on day 3 in which all is well, changed by `patch`. */
export function sampleChamber(patch: Partial<ChamberView> = {}): ChamberView {
  return {
    id: 'c1',
    name: 'Chamber 1',
    climate: {
      ...{ at: '2026-03-04T11:59:50Z', heardAt: '2026-03-04T11:59:50Z' },
      ...{ temperature: 22, humidity: 95, vpdKpa: 0.13, dewPoint: 21.2 },
      ...{ hottest: 22.1, coldest: 21.9, driest: 94, silenceMinutes: 15, healthyProbes: 2, canopyProbes: 2 },
      ...{ temperatureUncertainty: 0.2, humidityUncertainty: 2, vpdKpaUncertainty: 0.06, dewPointUncertainty: 0.5 },
      film: { expected: 'wet', margin: 1.2, basis: 'house air, an estimate' },
    },
    house: { temperature: 20, humidity: 60 },
    dryAhead: null,
    limits: {
      temperature: { lowLow: 16, low: 20, high: 28, highHigh: 29 },
      humidity: { lowLow: null, low: 90, high: 100, highHigh: null },
    },
    batch: sampleBatch,
    nextDue: sampleCheck,
    alarms: [],
    suppression: null,
    outOfService: [],
    ...patch,
  };
}
