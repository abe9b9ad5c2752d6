import type { LookupAddress, LookupOptions } from 'node:dns';
import dns from 'node:dns';
import { networkInterfaces } from 'node:os';
import { expect, test } from 'vitest';
import {
  isLocalAddress,
  LocalAddressError,
  lookUpForeign,
  namesLocalAddress,
} from '../../../../server/notify/channels/local-address.ts';

test.each([
  ['loopback', '127.0.0.1', true],
  ['the end of loopback', '127.255.255.255', true],
  ['just after loopback', '128.0.0.0', false],
  ['just before loopback', '126.255.255.255', false],
  ['this host', '0.0.0.0', true],
  ['link-local, where clouds keep their metadata', '169.254.169.254', true],
  ['just after link-local', '169.255.0.0', false],
  ['IPv6 loopback', '::1', true],
  ['IPv6 unspecified', '::', true],
  ['IPv6 link-local', 'fe80::1', true],
  ['IPv6 link-local with its interface', 'fe80::1%eth0', true],
  ['the end of IPv6 link-local', 'febf:ffff::1', true],
  ['just after IPv6 link-local', 'fec0::1', false],
  ['loopback written as IPv6', '::ffff:127.0.0.1', true],
  ['loopback written as IPv6 in hex', '::ffff:7f00:1', true],
  ['link-local written as IPv6', '::ffff:169.254.1.1', true],
  ['loopback in the old IPv4-compatible form', '::7f00:1', true],
  ['loopback behind the translation prefix', '64:ff9b::7f00:1', true],
  ['another address behind the translation prefix', '64:ff9b::808:808', false],
  ['an address of the internet', '192.0.2.7', false],
  ['an address of the internet written as IPv6', '::ffff:192.0.2.7', false],
  ['an IPv6 address of the internet', '2001:db8::7', false],
  // 10.255.255.254 stands for a webhook program in the same building: that is what webhooks are for.
  ['a private network', '10.255.255.254', false],
])('%s (%s)', (_, address, isLocal) => {
  expect(isLocalAddress(address)).toBe(isLocal);
});

test('every address that this machine has now is local, whatever network it belongs to', () => {
  const own = Object.values(networkInterfaces()).flatMap((list) => list ?? []);
  expect(own.length).toBeGreaterThan(0);
  expect(own.filter((one) => !isLocalAddress(one.address))).toEqual([]);
});

test.each([
  ['http://127.0.0.1:80/hook', true],
  ['http://[::1]/hook', true],
  ['http://2130706433/hook', true],
  ['http://0x7f.1/hook', true],
  ['https://192.0.2.7/hook', false],
  ['http://localhost/hook', false],
])('the host of %s is an address of this machine: %s (a name is judged when it is looked up)', (url, isLocal) => {
  expect(namesLocalAddress(new URL(url))).toBe(isLocal);
});

function lookUp(name: string, options: LookupOptions): Promise<string | LookupAddress[]> {
  return new Promise((resolve, reject) => {
    lookUpForeign(name, options, (error, address) => (error === null ? resolve(address) : reject(error)));
  });
}

test('a name that leads to this machine is refused at the look-up', async () => {
  await expect(lookUp('localhost', {})).rejects.toThrow(LocalAddressError);
  await expect(lookUp('localhost', { all: true })).rejects.toThrow(LocalAddressError);
});

test('a name that leads elsewhere is looked up in both forms that a connection asks for', async () => {
  const expected = await dns.promises.lookup('192.0.2.7', { all: true });
  await expect(lookUp('192.0.2.7', {})).resolves.toBe('192.0.2.7');
  await expect(lookUp('192.0.2.7', { all: true })).resolves.toEqual(expected);
});
