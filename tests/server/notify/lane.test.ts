import { expect, test } from 'vitest';
import { createLane } from '../../../server/notify/lane.ts';
import { oneAtATime } from '../../../server/notify/one-at-a-time.ts';

function openGate(): { readonly passed: Promise<void>; readonly open: () => void } {
  const { promise, resolve } = Promise.withResolvers<void>();
  return { passed: promise, open: resolve };
}

test('a lane runs no more at once than it is wide, and takes the next when one ends', async () => {
  const lane = createLane(2);
  const gates = [openGate(), openGate(), openGate()];
  const begun: number[] = [];
  const jobs = gates.map((gate, index) =>
    lane(async () => {
      begun.push(index);
      await gate.passed;
    }),
  );
  await Promise.resolve();
  expect(begun).toEqual([0, 1]);
  gates[1]?.open();
  await jobs[1];
  await Promise.resolve();
  expect(begun).toEqual([0, 1, 2]);
  for (const gate of gates) gate.open();
  await Promise.all(jobs);
});

test('a job that fails gives its place free', async () => {
  const lane = createLane(1);
  await expect(lane(() => Promise.reject(new Error('broken')))).rejects.toThrow('broken');
  await expect(lane(async () => undefined)).resolves.toBeUndefined();
});

test('turns never overlap, and however often they are asked for in one turn, one more follows', async () => {
  const gates = [openGate(), openGate()];
  const steps: string[] = [];
  let turns = 0;
  const ask = oneAtATime(async () => {
    const turn = turns;
    turns += 1;
    steps.push(`begin ${turn}`);
    await gates[turn]?.passed;
    steps.push(`end ${turn}`);
  });
  const first = ask();
  await Promise.resolve();
  const later = [ask(), ask(), ask()];
  gates[1]?.open();
  gates[0]?.open();
  await Promise.all([first, ...later]);
  expect(steps).toEqual(['begin 0', 'end 0', 'begin 1', 'end 1']);
});
