// The channels of the site: how alerts leave it.
import { nanoid } from 'nanoid';
import { channelsChangeSchema, channelsViewSchema } from '../../../shared/api/channels.ts';
import { Problem } from '../../../shared/problem.ts';
import { changeChannels, viewChannels } from '../../../shared/telling/change-channels.ts';
import type { HttpParts, Routes } from '../http-parts.ts';

export function channelRoutes(app: Routes, { telling }: HttpParts): void {
  const manager = { role: 'manager' } as const;
  app.get('/channels', { config: manager, schema: { response: { 200: channelsViewSchema } } }, async () =>
    viewChannels(telling.channels()),
  );
  app.put(
    '/channels',
    { config: manager, schema: { body: channelsChangeSchema, response: { 200: channelsViewSchema } } },
    async ({ body }) => {
      const changed = changeChannels(telling.channels(), body, () => nanoid(10));
      if ('faults' in changed) throw refuse(changed.faults);
      await telling.changeChannels(changed.channels);
      return viewChannels(changed.channels);
    },
  );
}

function refuse(faults: Problem['faults']): Problem {
  const [first] = faults;
  return new Problem('bad-input', (words) => `${first?.where}: ${first?.reason(words)}`, { faults });
}
