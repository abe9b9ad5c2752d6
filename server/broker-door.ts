// Where the broker will be: what speaks through it is made before it is opened, because readings come in at once.
import { finding } from '../shared/finding.ts';
import type { Broker, BrokerVoice } from './ingest/broker.ts';

export interface BrokerDoor extends BrokerVoice {
  isOpen(): boolean;
  open(broker: Broker): void;
}

/** Until it is open nothing can be published: that fails as with a broker that is not reached, and what is told again then arrives. */
export function createBrokerDoor(): BrokerDoor {
  let opened: Broker | null = null;
  return {
    isOpen: () => opened !== null,
    trouble: () => (opened === null ? finding('brokerNotOpen') : opened.trouble()),
    async publish(topic, payload) {
      if (opened === null) throw new Error('the broker is not open yet');
      await opened.publish(topic, payload);
    },
    async hold(holding) {
      if (opened === null) throw new Error('the broker is not open yet');
      return opened.hold(holding);
    },
    open(broker) {
      opened = broker;
    },
  };
}
