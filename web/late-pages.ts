// Pages whose code is fetched when they are first opened: what a phone in the greenhouse is opened for must come first.
import type { ComponentType } from 'preact';
import { loadLateWords } from './load-words.ts';

const loads = {
  batches: () => import('./pages/batches-page.tsx').then(({ BatchesPage }) => BatchesPage),
  profiles: () => import('./pages/profiles-page.tsx').then(({ ProfilesPage }) => ProfilesPage),
  profile: () => import('./pages/profile-page.tsx').then(({ ProfilePage }) => ProfilePage),
  'profile-edit': () => import('./editor/profile-editor-page.tsx').then(({ ProfileEditorPage }) => ProfileEditorPage),
  'profile-copy': () => import('./editor/profile-editor-page.tsx').then(({ ProfileCopyPage }) => ProfileCopyPage),
  'first-batch': () => import('./guide/first-batch-page.tsx').then(({ FirstBatchPage }) => FirstBatchPage),
  sensors: () => import('./pages/sensors-page.tsx').then(({ SensorsPage }) => SensorsPage),
  people: () => import('./pages/people-page.tsx').then(({ PeoplePage }) => PeoplePage),
  'my-alerts': () => import('./pages/my-alerts-page.tsx').then(({ MyAlertsPage }) => MyAlertsPage),
  channels: () => import('./pages/channels-page.tsx').then(({ ChannelsPage }) => ChannelsPage),
  settings: () => import('./pages/settings-page.tsx').then(({ SettingsPage }) => SettingsPage),
  'set-up': () => import('./pages/set-up-page.tsx').then(({ SetUpPage }) => SetUpPage),
  join: () => import('./pages/join-page.tsx').then(({ JoinPage }) => JoinPage),
  wall: () => import('./pages/wall-page.tsx').then(({ WallPage }) => WallPage),
} satisfies Record<string, () => Promise<ComponentType>>;

export type LatePageName = keyof typeof loads;

const fetched = new Map<LatePageName, ComponentType>();

/** The page, where it was fetched before. */
export function fetchedPage(name: LatePageName): ComponentType | undefined {
  return fetched.get(name);
}

/** Fetches the page's code, its words before it, since its modules keep parts of them; rejects when one of the two cannot be had. */
export async function fetchPage(name: LatePageName): Promise<ComponentType> {
  await loadLateWords();
  const page = await loads[name]();
  fetched.set(name, page);
  return page;
}
