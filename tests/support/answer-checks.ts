// A crew that has looked: every check due up to an instant is answered with yes, so that a test of something else hears of no check.
import type { CheckView } from '../../shared/api/batches.ts';
import type { ApiClient } from './api-client.ts';

export async function answerChecks(api: ApiClient, batchId: string, untilMs: number): Promise<void> {
  const { body } = await api.get<{ items: CheckView[] }>(`/batches/${batchId}/checks`);
  const due = body.items.filter(({ dueAt, status }) => Date.parse(dueAt) <= untilMs && status !== 'answered');
  for (const { checkId } of due) await api.post(`/batches/${batchId}/checks/${checkId}`, { answer: 'yes' });
}
