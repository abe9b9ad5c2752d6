// Sixty chambers in every state there is: in order, hot, silent, on hold, over, being filled, empty, each a few times.
import type { BatchView } from '../../shared/api/batches.ts';
import { DAY_MS, HOUR_MS, SECOND_MS, utcText } from '../../shared/units.ts';
import { openTestApp } from './open-test-app.ts';
import { createTestClock } from './test-clock.ts';

const START_MS = Date.parse('2026-04-08T10:00:00Z');
const COUNT = 60;
const HOT = 8;
const SILENT = 4;
/** Half a minute between readings, over which heat becomes an alarm and silence is noticed. */
const ROUNDS = 24;

type Kind = 'hot' | 'silent' | 'hold' | 'over' | 'loading' | 'empty' | 'order';

function kindOf(index: number): Kind {
  if (index < HOT) return 'hot';
  if (index < HOT + SILENT) return 'silent';
  const rest = ['hold', 'hold', 'over', 'over', 'loading', 'empty', 'empty'] as const;
  return rest[index - HOT - SILENT] ?? 'order';
}

export async function openBigNursery() {
  const clock = createTestClock(START_MS);
  const { app, api } = await openTestApp({ clock });
  await api.put('/settings', {
    ...{ siteName: 'Big nursery', zone: 'Europe/Amsterdam', altitudeM: 0, temperatureUnit: '°C', mappings: [] },
  });
  const measure = (index: number, temperature: number) =>
    app.intake.push({
      topic: `takewell/v1/node-${index}/readings`,
      payload: new TextEncoder().encode(JSON.stringify({ temperature, humidity: 95, probe: 'a' })),
      arrivalMs: clock.nowMs(),
      retained: false,
    });
  for (let index = 0; index < COUNT; index++) await addChamber(index);
  for (let round = 0; round < ROUNDS; round++) {
    const heard = Array.from({ length: COUNT }, (_, index) => index).filter((index) => kindOf(index) !== 'silent');
    await Promise.all(heard.map((index) => measure(index, kindOf(index) === 'hot' ? 31 : 22 + (index % 5) / 2)));
    await app.tick();
    clock.advance(30 * SECOND_MS);
  }
  return { app, api, clock };

  async function addChamber(index: number): Promise<void> {
    const kind = kindOf(index);
    const chamber = await api.post<{ id: string }>('/chambers', { name: `Tent ${index + 1}` });
    const chamberId = chamber.body.id;
    await api.post('/probes', { nodeId: `node-${index}`, address: 'a', chamberId, place: 'canopy' });
    await measure(index, 22);
    if (kind === 'empty') return;
    const ageMs = kind === 'over' ? 12 * DAY_MS : (6 + (index % 6) * 24) * HOUR_MS;
    const closedAt = kind === 'loading' ? {} : { closedAt: utcText(START_MS - ageMs) };
    const names = { code: `B-${index + 1}`, scion: 'S-21', rootstock: 'R-7', trays: 20, plants: 1000 };
    const profileId = 'tomato-common-practice';
    const batch = await api.post<BatchView>('/batches', { chamberId, profileId, ...names, ...closedAt });
    if (kind === 'hold') await api.post(`/batches/${batch.body.id}/hold`, { reason: 'Scions not ready' });
  }
}
