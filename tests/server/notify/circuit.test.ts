import { describe, expect, test } from 'vitest';
import { type Circuit, createCircuit } from '../../../server/notify/circuit.ts';

const SECOND_MS = 1_000;

function failing(times: number, nowMs = 0): Circuit {
  const circuit = createCircuit();
  for (let time = 0; time < times; time += 1) circuit.note('webhook', true, nowMs);
  return circuit;
}

test.each([
  ['two failures in a row are not enough to stop sending', 2, null],
  ['after three it is left alone for 30 s', 3, 30 * SECOND_MS],
])('%s', (_, failures, untilMs) => {
  expect(failing(failures).ask('webhook', 0)).toBe(untilMs);
});

test('an answer in between begins the count anew', () => {
  const circuit = failing(2);
  circuit.note('webhook', false, 0);
  circuit.note('webhook', true, 0);
  expect(circuit.ask('webhook', 0)).toBeNull();
});

test('another service goes on', () => {
  expect(failing(9).ask('push', 0)).toBeNull();
});

test('failures that were under way when the pause began do not make it longer', () => {
  expect(failing(16).ask('webhook', 0)).toBe(30 * SECOND_MS);
});

describe('after the pause', () => {
  test('one goes first, the others wait for it', () => {
    const circuit = failing(3);
    expect(circuit.ask('webhook', 30 * SECOND_MS - 1)).toBe(30 * SECOND_MS);
    expect(circuit.ask('webhook', 30 * SECOND_MS)).toBeNull();
    expect(circuit.ask('webhook', 30 * SECOND_MS)).toBe(42 * SECOND_MS);
  });

  test('when that one gets through, all may go', () => {
    const circuit = failing(3);
    circuit.ask('webhook', 30 * SECOND_MS);
    circuit.note('webhook', false, 31 * SECOND_MS);
    expect(circuit.ask('webhook', 31 * SECOND_MS)).toBeNull();
  });

  test('when it fails the pause doubles, up to five minutes', () => {
    const circuit = failing(3);
    let untilMs = 30 * SECOND_MS;
    for (const pauseS of [60, 120, 240, 300, 300]) {
      expect(circuit.ask('webhook', untilMs)).toBeNull();
      circuit.note('webhook', true, untilMs);
      expect(circuit.ask('webhook', untilMs)).toBe(untilMs + pauseS * SECOND_MS);
      untilMs += pauseS * SECOND_MS;
    }
  });
});
