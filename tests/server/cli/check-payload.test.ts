// The `check-payload` command says what admission would do, also by the mappings of the data folder.
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { openStore } from '../../../server/store/open-store.ts';
import { runForJson, runTakewell, temporaryFolder } from './run-takewell.ts';

const topic = ['--topic', 'takewell/v1/tent-2/readings'];
const now = ['--now', '2026-03-02T07:00:00Z'];

describe('check-payload', () => {
  it('shows the readings of a file that would be admitted', async () => {
    const file = join(temporaryFolder(), 'payload.json');
    writeFileSync(
      file,
      '{"temperature": 21.4, "humidity": 93.1, "time": "2026-03-02T08:00:00+01:00", "probe": "canopy-1"}',
    );
    expect(await runForJson(['check-payload', ...topic, file, ...now])).toEqual({
      admitted: [
        { node: 'tent-2', probe: 'canopy-1', time: '2026-03-02T07:00:00Z', temperature: 21.4, humidity: 93.1 },
      ],
      refused: [],
    });
  });

  it('takes the payload from standard input, and the time it is told for one without', async () => {
    const stdin = '[{"bn":"urn:dev:ow:1/","n":"temperature","u":"Cel","v":23.1}]';
    expect(await runForJson(['check-payload', ...topic, '-', ...now], { stdin })).toMatchObject({
      admitted: [{ probe: 'urn:dev:ow:1', time: '2026-03-02T07:00:00Z', temperature: 23.1, humidity: null }],
    });
  });

  const refusals: [string, string[], string, number, string][] = [
    ['what is not JSON', topic, 'hello', 0, ''],
    [
      'an element of a list, and admits the rest',
      topic,
      '[{"temperature":20},{"temperature":"warm"}]',
      1,
      '/1/temperature',
    ],
    [
      'a reading dated more than five minutes ahead',
      topic,
      '{"temperature":20,"time":"2026-03-02T07:05:01Z"}',
      0,
      '/time',
    ],
    ['a topic that nobody reads', ['--topic', 'barn/air'], '{"temperature":20}', 0, ''],
  ];
  it.each(refusals)(
    'refuses %s, with the reason and the place, exit code 1',
    async (_, where, stdin, admitted, place) => {
      const { code, stdout, stderr } = await runTakewell(['check-payload', ...where, '-', ...now, '--json'], { stdin });
      expect({ code, stderr }).toEqual({ code: 1, stderr: '' });
      const said = JSON.parse(stdout) as { admitted: unknown[]; refused: { reason: string; where: string }[] };
      expect(said.admitted).toHaveLength(admitted);
      expect(said.refused).toEqual([{ reason: expect.stringMatching(/^.{10,}$/), where: place }]);
    },
  );

  it('admits a reading dated exactly five minutes ahead', async () => {
    const { code } = await runTakewell(['check-payload', ...topic, '-', ...now], {
      stdin: '{"temperature":20,"time":"2026-03-02T07:05:00Z"}',
    });
    expect(code).toBe(0);
  });

  it('reads another topic by the mapping in the settings of the data folder', async () => {
    const dataDir = temporaryFolder();
    const store = openStore({ file: join(dataDir, 'takewell.sqlite'), nowMs: 0 });
    const mapping = { filter: 'barn/+/air', node: 'level:1', temperature: { pointer: '/t', unit: 'degF' } };
    const site = {
      siteName: 'Lindehof',
      zone: 'Europe/Amsterdam',
      altitudeM: 0,
      temperatureUnit: '°C',
      mappings: [mapping],
    };
    await store.settings.put('site', site);
    await store.close();
    const printed = await runForJson(['check-payload', '--topic', 'barn/north/air', '-', ...now], {
      stdin: '{"t": 68}',
      dataDir,
    });
    expect(printed).toMatchObject({ admitted: [{ node: 'north', temperature: 20 }], refused: [] });
  });

  it('says a refusal to a reader in a line', async () => {
    const { stdout } = await runTakewell(['check-payload', ...topic, '-'], { stdin: '{"temperature":"warm"}' });
    expect(stdout).toMatch(/^refused {3}\/temperature: .+\n$/);
  });
});
