// The quality flags of a probe's last reading in words. Pure.
import type { ProbeView } from '../shared/api/probes.ts';
import { FLAG } from '../shared/readings/reading.ts';
import { words } from './late-strings.ts';

const { quality } = words.sensors;

function flagWords(what: string, flag: number): string | null {
  switch (flag) {
    case FLAG.pass:
      return null;
    case FLAG.suspect:
      return quality.suspect(what);
    case FLAG.fail:
      return quality.fail(what);
    case FLAG.missing:
      return quality.missing(what);
    default:
      return quality.notTested(what);
  }
}

/** One line about how far the last reading can be trusted (QARTOD flags). */
export function qualityWords(last: Pick<NonNullable<ProbeView['last']>, 'temperatureFlag' | 'humidityFlag'>): string {
  const found = [
    flagWords(words.quantities.temperature, last.temperatureFlag),
    flagWords(words.quantities.humidity, last.humidityFlag),
  ].filter((text) => text !== null);
  return found.length === 0 ? quality.good : found.join('; ');
}
