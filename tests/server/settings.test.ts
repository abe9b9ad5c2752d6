// Settings come from the environment alone: what they default to, and how a bad one is named.
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { databaseFile, readSettings, settingNames } from '../../server/settings.ts';
import { Problem } from '../../shared/problem.ts';

type Environment = Record<string, string | undefined>;

const read = (environment: Environment) => readSettings(environment, '/srv/takewell');

/** The line with which these settings are refused. */
function refusal(environment: Environment): string {
  try {
    read(environment);
  } catch (error) {
    if (error instanceof Problem && error.code === 'bad-setting') return error.message;
    throw error;
  }
  return expect.fail('these settings should have been refused');
}

describe('without any setting', () => {
  it('the service listens on this machine only and keeps its data in ./data', () => {
    expect(read({})).toEqual({
      dataDir: '/srv/takewell/data',
      http: { host: '127.0.0.1', port: 8420, tls: null, trustProxy: null },
      publicUrl: null,
      mqtt: { url: null, host: '127.0.0.1', port: 1883, tls: null },
      logLevel: 'info',
      setupCode: null,
    });
  });

  it('variables of other programs are none of its business', () => {
    expect(read({ PATH: '/bin', takewell_data_dir: 'x', TAKEWELL_DATA_DIR: undefined })).toEqual(read({}));
  });
});

describe('a setting that is given', () => {
  it('counts', () => {
    const settings = read({
      TAKEWELL_DATA_DIR: '/var/lib/takewell',
      TAKEWELL_HTTP_HOST: '0.0.0.0',
      TAKEWELL_HTTP_PORT: '0',
      TAKEWELL_TRUST_PROXY: '192.0.2.1, 198.51.100.0/24 ,loopback,2001:db8::/32',
      TAKEWELL_MQTT_URL: 'mqtts://broker.example:8883',
      TAKEWELL_MQTT_HOST: '::',
      TAKEWELL_MQTT_PORT: '65535',
      TAKEWELL_LOG_LEVEL: 'debug',
      TAKEWELL_SETUP_CODE: 'eight ch',
    });
    expect(settings).toEqual({
      dataDir: '/var/lib/takewell',
      http: {
        host: '0.0.0.0',
        port: 0,
        tls: null,
        trustProxy: ['192.0.2.1', '198.51.100.0/24', 'loopback', '2001:db8::/32'],
      },
      publicUrl: null,
      mqtt: { url: 'mqtts://broker.example:8883', host: '::', port: 65_535, tls: null },
      logLevel: 'debug',
      setupCode: 'eight ch',
    });
  });

  it.each([
    ['https://takewell.example', 'https://takewell.example'],
    ['https://takewell.example/', 'https://takewell.example'],
    ['http://192.0.2.7:8420//', 'http://192.0.2.7:8420'],
    ['https://nursery.example/takewell/', 'https://nursery.example/takewell'],
  ])('the public address %s is kept without a slash at its end', (given, kept) => {
    expect(read({ TAKEWELL_PUBLIC_URL: given }).publicUrl).toBe(kept);
  });

  it.each(['mqtt://a', 'mqtts://a:8883', 'ws://a/mqtt', 'wss://a/mqtt'])('%s is a broker', (url) => {
    expect(read({ TAKEWELL_MQTT_URL: url }).mqtt.url).toBe(url);
  });

  it('paths are absolute from then on, wherever the process goes', () => {
    const tls = { TAKEWELL_TLS_CERT: 'cert.pem', TAKEWELL_TLS_KEY: '/etc/key.pem' };
    const mqttTls = { TAKEWELL_MQTT_TLS_CERT: '/etc/m.pem', TAKEWELL_MQTT_TLS_KEY: 'm.key' };
    const settings = read({ TAKEWELL_DATA_DIR: 'd', ...tls, ...mqttTls });
    expect(settings.dataDir).toBe('/srv/takewell/d');
    expect(settings.http.tls).toEqual({ cert: '/srv/takewell/cert.pem', key: '/etc/key.pem' });
    expect(settings.mqtt.tls).toEqual({ cert: '/etc/m.pem', key: '/srv/takewell/m.key' });
    expect(databaseFile(settings.dataDir)).toBe(join('/srv/takewell/d', 'takewell.sqlite'));
  });
});

describe('a bad value is named in one line', () => {
  const port = 'is a port number from 0 to 65535 (0 = any free).';
  const proxies = 'lists addresses such as 192.0.2.1 or 192.0.2.0/24, separated by commas.';
  const address = 'is a web address such as https://takewell.example.';
  const broker = 'is a broker address such as mqtt://192.0.2.7:1883.';
  it.each([
    ['TAKEWELL_DATA_DIR', '', 'is empty: set it or leave it out.'],
    ['TAKEWELL_HTTP_HOST', '', 'is empty: set it or leave it out.'],
    ['TAKEWELL_HTTP_PORT', '', port],
    ['TAKEWELL_HTTP_PORT', ' ', port],
    ['TAKEWELL_HTTP_PORT', '65536', port],
    ['TAKEWELL_HTTP_PORT', '-1', port],
    ['TAKEWELL_HTTP_PORT', '80.5', port],
    ['TAKEWELL_HTTP_PORT', '0x50', port],
    ['TAKEWELL_HTTP_PORT', 'http', port],
    ['TAKEWELL_MQTT_PORT', '', port],
    ['TAKEWELL_MQTT_PORT', '1e3', port],
    ['TAKEWELL_PUBLIC_URL', 'takewell.example', address],
    ['TAKEWELL_PUBLIC_URL', 'ftp://takewell.example', address],
    ['TAKEWELL_PUBLIC_URL', '', address],
    ['TAKEWELL_TRUST_PROXY', '', 'is empty: set it or leave it out.'],
    ['TAKEWELL_TRUST_PROXY', 'true', proxies],
    ['TAKEWELL_TRUST_PROXY', '192.0.2.1,', proxies],
    ['TAKEWELL_TRUST_PROXY', '192.0.2.0/33', proxies],
    ['TAKEWELL_TRUST_PROXY', '192.0.2.0/0', proxies],
    ['TAKEWELL_TRUST_PROXY', '192.0.2.0/24/8', proxies],
    ['TAKEWELL_TRUST_PROXY', '2001:db8::/129', proxies],
    ['TAKEWELL_MQTT_URL', 'http://broker.example', broker],
    ['TAKEWELL_MQTT_URL', 'broker', broker],
    ['TAKEWELL_STORE_URL', 'mysql://db.example/x', 'is a database address such as postgresql://….'],
    [
      'TAKEWELL_STORE_URL',
      'postgresql://db.example/x',
      'is not supported by this version yet: leave it out to use the SQLite file in the data folder.',
    ],
    ['TAKEWELL_LOG_LEVEL', 'loud', 'is one of trace, debug, info, warn, error, fatal, silent.'],
    ['TAKEWELL_SETUP_CODE', '7 chars', 'needs at least 8 characters.'],
  ])('%s=%j', (name, value, fault) => {
    const line = refusal({ [name]: value });
    expect(line).toBe(`The setting ${name} ${fault}`);
    expect(line).not.toContain('\n');
  });

  it.each([
    ['TAKEWELL_TLS_CERT', 'TAKEWELL_TLS_KEY'],
    ['TAKEWELL_MQTT_TLS_CERT', 'TAKEWELL_MQTT_TLS_KEY'],
  ])('%s without %s, or the other way round', (cert, key) => {
    const line = `The setting ${key} goes together with ${cert}: set both or none.`;
    expect(refusal({ [cert]: 'c.pem' })).toBe(line);
    expect(refusal({ [key]: 'k.pem' })).toBe(line);
  });

  it('a name that is not known is most likely misspelt', () => {
    expect(refusal({ TAKEWELL_HTTP_PROT: '80' })).toBe(
      'The setting TAKEWELL_HTTP_PROT is not known: check its spelling.',
    );
  });

  it('of several faults the first is named', () => {
    expect(refusal({ TAKEWELL_HTTP_PORT: 'x', TAKEWELL_LOG_LEVEL: 'y' })).toMatch(/^The setting TAKEWELL_HTTP_PORT /);
  });
});

describe('the names of the settings', () => {
  it('are those of the contract', () => {
    expect([...settingNames].sort()).toEqual(
      [
        ...['TAKEWELL_DATA_DIR', 'TAKEWELL_HTTP_HOST', 'TAKEWELL_HTTP_PORT', 'TAKEWELL_PUBLIC_URL'],
        ...['TAKEWELL_TLS_CERT', 'TAKEWELL_TLS_KEY', 'TAKEWELL_TRUST_PROXY', 'TAKEWELL_MQTT_URL'],
        ...['TAKEWELL_MQTT_HOST', 'TAKEWELL_MQTT_PORT', 'TAKEWELL_MQTT_TLS_CERT', 'TAKEWELL_MQTT_TLS_KEY'],
        ...['TAKEWELL_STORE_URL', 'TAKEWELL_LOG_LEVEL', 'TAKEWELL_SETUP_CODE'],
      ].sort(),
    );
  });
});
