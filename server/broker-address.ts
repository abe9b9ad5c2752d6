// How a node reaches the broker, as people must be told it. Passwords in an outside broker's address are never passed on.
import type { BrokerAddress } from '../shared/api/probes.ts';
import { isLoopback } from './ingest/embedded-broker.ts';
import type { Settings } from './settings.ts';

const everywhere = ['0.0.0.0', '::', ''];

/** `port` is the one the embedded broker listens on. `host` is null where it listens on every address: then it is reached by that of the page. */
export function brokerAddress({ url, host, tls }: Settings['mqtt'], port: number | null): BrokerAddress {
  if (url !== null) {
    const outside = new URL(url);
    return {
      ...{ isEmbedded: false, isThisMachineOnly: isLoopback(outside.hostname), needsCredentials: false },
      ...{ scheme: outside.protocol.slice(0, -1), host: outside.hostname },
      port: outside.port === '' ? null : Number(outside.port),
    };
  }
  const isOpen = isLoopback(host);
  return {
    ...{ isEmbedded: true, isThisMachineOnly: isOpen, needsCredentials: !isOpen },
    ...{ scheme: tls === null ? 'mqtt' : 'mqtts', host: everywhere.includes(host) ? null : host, port },
  };
}
