// The record as one JSON document, streamed: the record with its readings, in order of time, as its last member.
import type { Reading } from '../../shared/readings/reading.ts';
import type { Store } from '../store/store.ts';
import { changedByCalibration } from './calibration-rule.ts';
import type { GatheredRecord } from './gather-record.ts';
import { mergeReadings } from './merge-readings.ts';
import { makeTimeTexts } from './time-texts.ts';

/** The text of `batchRecordDocumentSchema`, in pieces; one reading a line. Memory does not grow with the number of readings. */
export async function* recordJson(
  store: Pick<Store, 'readings'>,
  { record, sources }: GatheredRecord,
): AsyncGenerator<string> {
  yield `${JSON.stringify(record).slice(0, -1)},"readings":[`;
  const { utc } = makeTimeTexts(record.site.zone);
  const { utc: utcOfArrival } = makeTimeTexts(record.site.zone);
  const labels = new Map(sources.map((source) => [source, JSON.stringify(source.label)]));
  let separator = '\n';
  for await (const block of mergeReadings(store, sources)) {
    let text = '';
    for (const { source, reading, raw } of block) {
      text += `${separator}{"time":"${utc(reading.timeMs)}","probe":${labels.get(source) ?? '""'},${valuesText(reading)},`;
      text += `"receivedAt":"${utcOfArrival(reading.receivedMs)}","late":${reading.late}${rawText(reading, raw)}}`;
      separator = ',\n';
    }
    yield text;
  }
  yield '\n]}\n';
}

// Put together by hand, since there may be a million of them: apart from the probe's name, written once, nothing in it ever needs escaping.
function valuesText({ temperature, humidity, temperatureFlag, humidityFlag }: Reading): string {
  return `"temperature":${temperature},"humidity":${humidity},"temperatureFlag":${temperatureFlag},"humidityFlag":${humidityFlag}`;
}

function rawText(reading: Reading, raw: Reading): string {
  if (raw === reading) return '';
  const { temperature, humidity } = changedByCalibration(reading, raw);
  const warmth = temperature === null ? '' : `,"rawTemperature":${temperature}`;
  return humidity === null ? warmth : `${warmth},"rawHumidity":${humidity}`;
}
