// MQTT packets byte by byte, for tests that must send what no client library sends.

/** A control packet: its first byte, the remaining length as MQTT 3.1.1 §2.2.3 encodes it, the body. `declared` may lie about the length. */
export function mqttFrame(firstByte: number, body: Uint8Array, declared = body.byteLength): Buffer {
  const length: number[] = [];
  let rest = declared;
  do {
    const digit = rest % 128;
    rest = Math.floor(rest / 128);
    length.push(rest > 0 ? digit + 128 : digit);
  } while (rest > 0);
  return Buffer.concat([Buffer.from([firstByte, ...length]), body]);
}

/** CONNECT of MQTT 3.1.1 with a clean session. */
export function connectFrame(clientId: string): Buffer {
  const head = Buffer.from([0, 4, 0x4d, 0x51, 0x54, 0x54, 4, 2, 0, 60]);
  return mqttFrame(0x10, Buffer.concat([head, mqttText(clientId)]));
}

/** PUBLISH with QoS 1. */
export function publishFrame(topic: string, payload: Uint8Array, packetId: number): Buffer {
  return mqttFrame(0x32, Buffer.concat([mqttText(topic), Buffer.from([packetId >> 8, packetId & 255]), payload]));
}

function mqttText(text: string): Buffer {
  const bytes = Buffer.from(text);
  return Buffer.concat([Buffer.from([bytes.length >> 8, bytes.length & 255]), bytes]);
}
