// Watches the fixed headers of an MQTT byte stream and says when a packet is declared larger than allowed: the broker's parser would
// hold all of it in memory, even before the client has signed in.

export interface FrameGuard {
  /** False when a packet in this chunk is too large; the connection is to be closed then. */
  accept(chunk: Uint8Array): boolean;
}

/** MQTT 3.1.1 §2.2.3: the remaining length is a little-endian base-128 number of at most four bytes. */
export function createFrameGuard(mostBytes: number): FrameGuard {
  let bodyLeft = 0;
  // -1 = waiting for the first byte of a packet; otherwise the index of the next length byte.
  let lengthByte = -1;
  let length = 0;

  const takeHeaderByte = (byte: number): boolean => {
    if (lengthByte === -1) {
      lengthByte = 0;
      length = 0;
      return true;
    }
    length += (byte & 127) * 128 ** lengthByte;
    lengthByte += 1;
    if ((byte & 128) !== 0) return lengthByte < 4;
    lengthByte = -1;
    bodyLeft = length;
    return length <= mostBytes;
  };

  return {
    accept(chunk) {
      for (let at = 0; at < chunk.length; ) {
        const skipped = Math.min(bodyLeft, chunk.length - at);
        bodyLeft -= skipped;
        at += skipped;
        if (at < chunk.length && !takeHeaderByte(chunk[at++] ?? 0)) return false;
      }
      return true;
    },
  };
}
