// Waiting for the service to be well, by what it says itself.
import { expect } from 'vitest';
import type { Health } from '../../shared/api/health.ts';
import type { ApiClient } from './api-client.ts';

/** Resolves when the service is ready: its store writes, its broker is reached, its watch goes round. */
export async function untilReady(api: ApiClient): Promise<void> {
  await expect
    .poll(async () => (await api.get<Health>('/health')).body, { timeout: 20_000 })
    .toMatchObject({ ready: true });
}
