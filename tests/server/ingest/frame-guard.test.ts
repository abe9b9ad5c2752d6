// The guard in front of the embedded broker's parser: what it lets through and what it stops, wherever the network cuts the bytes.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { createFrameGuard } from '../../../server/ingest/frame-guard.ts';
import { mqttFrame } from '../../support/mqtt-frame.ts';

const MOST = 1_000;
const FIRST_BYTE = 0x30;

describe('createFrameGuard', () => {
  it.each([
    ['nothing after the header', 0, true],
    ['the longest length of one byte', 127, true],
    ['the shortest length of two bytes', 128, true],
    ['exactly the limit', MOST, true],
    ['one byte above the limit', MOST + 1, false],
    ['the largest length that MQTT has', 268_435_455, false],
  ])('judges a packet by its declared length: %s', (_why, length, accepted) => {
    const header = mqttFrame(FIRST_BYTE, Buffer.alloc(0), length);
    expect(createFrameGuard(MOST).accept(header)).toBe(accepted);
  });

  it('stops a length that does not end after four bytes', () => {
    const endless = Buffer.from([FIRST_BYTE, 0x80, 0x80, 0x80, 0x80]);
    expect(createFrameGuard(Number.MAX_SAFE_INTEGER).accept(endless)).toBe(false);
  });

  it('stops a large packet by its header alone, before a byte of its body has come', () => {
    const header = mqttFrame(FIRST_BYTE, Buffer.alloc(0), MOST + 1);
    const guard = createFrameGuard(MOST);
    const answers = [...header].map((byte) => guard.accept(Uint8Array.of(byte)));
    expect(answers).toEqual([...Array(header.length - 1).fill(true), false]);
  });

  it('judges every cut of the stream into two pieces the same', () => {
    const stream = Buffer.concat([frame(0), frame(200), frame(1), frame(127), frame(MOST + 1)]);
    for (let at = 0; at <= stream.length; at += 1) {
      expect(acceptsAll([stream.subarray(0, at), stream.subarray(at)]), `cut at byte ${at}`).toBe(false);
    }
    const sound = stream.subarray(0, stream.length - (MOST + 1) - 3);
    for (let at = 0; at <= sound.length; at += 1) {
      expect(acceptsAll([sound.subarray(0, at), sound.subarray(at)]), `cut at byte ${at}`).toBe(true);
    }
  });

  it('accepts any run of packets up to the limit and stops at the first above it, however they are cut', () => {
    const lengths = fc.array(fc.integer({ min: 0, max: MOST + 50 }), { maxLength: 12 });
    const cuts = fc.infiniteStream(fc.integer({ min: 1, max: 400 }));
    fc.assert(
      fc.property(lengths, cuts, (bodies, pieceLengths) => {
        const stream = Buffer.concat(bodies.map(frame));
        expect(acceptsAll(cut(stream, pieceLengths))).toBe(bodies.every((length) => length <= MOST));
      }),
    );
  });
});

function frame(length: number): Buffer {
  return mqttFrame(FIRST_BYTE, Buffer.alloc(length, 0xff));
}

function acceptsAll(pieces: Iterable<Buffer>): boolean {
  const guard = createFrameGuard(MOST);
  return [...pieces].every((piece) => guard.accept(piece));
}

function* cut(stream: Buffer, lengths: Iterator<number>): Generator<Buffer> {
  for (let at = 0; at < stream.length; ) {
    const length: number = lengths.next().value;
    yield stream.subarray(at, at + length);
    at += length;
  }
}
