// The settings of the site that people change while the service runs: name, time zone, altitude, mappings. Kept in the store.
import { type SiteSettings, siteSettingsSchema } from '../shared/api/telling.ts';
import type { Store } from './store/store.ts';

const fallback: SiteSettings = {
  siteName: 'Our nursery',
  zone: Intl.DateTimeFormat().resolvedOptions().timeZone,
  altitudeM: 0,
  temperatureUnit: '°C',
  mappings: [],
};

export interface Site {
  current(): SiteSettings;
  change(settings: SiteSettings): Promise<void>;
}

/** Reads the site's settings once; `change` writes them before they count. */
export async function openSite(store: Store): Promise<Site> {
  const stored = await store.settings.get('site');
  let settings = stored === undefined ? fallback : siteSettingsSchema.parse(stored);
  return {
    current: () => settings,
    async change(next) {
      await store.settings.put('site', next);
      settings = next;
    },
  };
}
