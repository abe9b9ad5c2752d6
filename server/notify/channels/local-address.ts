// Keeps alerts from being used to reach this machine's own services or link-local ones (instance metadata): addresses come from people.
import dns from 'node:dns';
import { BlockList, isIP, type LookupFunction } from 'node:net';
import { networkInterfaces } from 'node:os';

/** The error of a look-up that ended at an address that is not allowed. */
export class LocalAddressError extends Error {}

const localRanges = new BlockList();
localRanges.addSubnet('0.0.0.0', 8); // RFC 1122 §3.2.1.3: this host on this network
localRanges.addSubnet('127.0.0.0', 8); // RFC 1122 §3.2.1.3: loopback
localRanges.addSubnet('169.254.0.0', 16); // RFC 3927: link-local
localRanges.addSubnet('fe80::', 10, 'ipv6'); // RFC 4291 §2.5.6: link-local
localRanges.addSubnet('::', 96, 'ipv6'); // RFC 4291 §2.5: unspecified, loopback, IPv4-compatible
localRanges.addSubnet('64:ff9b::7f00:0', 104, 'ipv6'); // RFC 6052: loopback behind the IPv4 translation prefix
localRanges.addSubnet('64:ff9b::a9fe:0', 112, 'ipv6'); // RFC 6052: link-local behind it

/** True for an address that is link-local or names this machine, in either notation of IPv4. Private networks are not local in this sense. */
export function isLocalAddress(address: string): boolean {
  const bare = address.replace(/%.*$/, '');
  const family = isIP(bare) === 6 ? 'ipv6' : 'ipv4';
  return localRanges.check(bare, family) || ownAddresses().check(bare, family);
}

function ownAddresses(): BlockList {
  const own = new BlockList();
  for (const one of Object.values(networkInterfaces()).flatMap((list) => list ?? []))
    own.addAddress(one.address.replace(/%.*$/, ''), one.family === 'IPv6' ? 'ipv6' : 'ipv4');
  return own;
}

/** True when the host of an address is itself a local address. A name says nothing yet: it is checked when it is looked up. */
export function namesLocalAddress(url: URL): boolean {
  const host = url.hostname.replace(/^\[|\]$/g, '');
  return isIP(host) !== 0 && isLocalAddress(host);
}

/**
 * A look-up for a connection that fails with LocalAddressError if any address of the name is local. Because the connection itself
 * uses it, the address that was checked is the address that is called.
 */
export const lookUpForeign: LookupFunction = (hostname, options, callback) => {
  dns.lookup(hostname, { ...options, all: true }, (error, addresses) => {
    const [first] = addresses ?? [];
    if (error !== null || first === undefined) return callback(error ?? new Error(`${hostname} has no address`), []);
    if (addresses.some((one) => isLocalAddress(one.address))) return callback(new LocalAddressError(hostname), []);
    if (options.all === true) return callback(null, addresses);
    return callback(null, first.address, first.family);
  });
};
