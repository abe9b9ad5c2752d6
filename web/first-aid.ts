// What to do first after a check was answered "no". Kept by batch until somebody closes it, so that it stands wherever the batch is shown,
// also when its row moves to another place of the overview.
import { signal } from '@preact/signals';
import type { NextDue } from './chamber-state.ts';

export type FirstAid = Pick<NextDue, 'question' | 'ifNo'>;

const kept = signal<ReadonlyMap<string, FirstAid>>(new Map());

/** The advice that stands for a batch. */
export function firstAidOf(batchId: string): FirstAid | undefined {
  return kept.value.get(batchId);
}

/** Takes the advice away. */
export function closeFirstAid(batchId: string): void {
  kept.value = new Map([...kept.value].filter(([id]) => id !== batchId));
}

/** Notes an answer: "no" brings the advice of its check, "yes" takes away what stood there. */
export function noteAnswer(batchId: string, { question, ifNo }: FirstAid, answer: 'yes' | 'no'): void {
  if (answer === 'yes') closeFirstAid(batchId);
  else kept.value = new Map(kept.value).set(batchId, { question, ifNo });
}
