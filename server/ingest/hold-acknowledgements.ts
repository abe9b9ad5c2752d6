// Lets an MQTT client read on while earlier messages are being stored, and sends the acknowledgement of each only when it is stored. Left alone, the
// library reads nothing behind a message whose handler has not called back: every message would be a transaction of its own, and while the
// store is in trouble the broker's answers to pings would go unread. On MQTT 3.1.1 it offers no other way, so its sender of packets is
// wrapped here, in the one place that reaches into it.
import type { IPublishPacket, MqttClient, Packet } from 'mqtt';

type SendPacket = (packet: Packet, callback?: () => void, ...rest: unknown[]) => void;

/** Set before the client reads its first packet. `store` resolves when a message is stored; when it rejects, the connection is broken and the broker sends the message again. */
export function holdAcknowledgements(client: MqttClient, store: (packet: IPublishPacket) => Promise<void>): void {
  const internals = client as unknown as { _sendPacket: SendPacket };
  const send = internals._sendPacket.bind(client);
  /** By packet id: what an acknowledgement that the library is about to send has to wait for. */
  const pending = new Map<number, Promise<void>>();
  client.on('close', () => pending.clear());
  client.handleMessage = (packet, done) => {
    const { stream } = client;
    const stored = store(packet);
    if (packet.messageId !== undefined) pending.set(packet.messageId, stored);
    stored.catch(() => stream.destroy());
    done();
  };
  internals._sendPacket = (packet, callback, ...rest) => {
    const stored = packet.cmd === 'puback' ? pending.get(packet.messageId ?? 0) : undefined;
    if (stored === undefined) return send(packet, callback, ...rest);
    pending.delete(packet.messageId ?? 0);
    const { stream } = client;
    // A packet id means something on its own connection only.
    const acknowledge = () => {
      if (client.stream === stream) send(packet, undefined, ...rest);
    };
    stored.then(acknowledge, () => undefined);
    callback?.();
  };
}
