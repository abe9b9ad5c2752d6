// Settings of the site.
import { siteSettingsSchema } from '../../../shared/api/telling.ts';
import { validZone } from '../../../shared/healing/batch-clock.ts';
import { Problem } from '../../../shared/problem.ts';
import type { HttpParts, Routes } from '../http-parts.ts';

export function settingRoutes(app: Routes, { site, followMappings }: HttpParts): void {
  app.get('/settings', { config: { role: 'viewer' }, schema: { response: { 200: siteSettingsSchema } } }, async () =>
    site.current(),
  );
  app.put(
    '/settings',
    { config: { role: 'manager' }, schema: { body: siteSettingsSchema, response: { 200: siteSettingsSchema } } },
    async ({ body }) => {
      if (!validZone(body.zone)) {
        throw new Problem('bad-input', ({ problems }) => problems.unknownZone(body.zone));
      }
      await site.change(body);
      await followMappings();
      return site.current();
    },
  );
}
