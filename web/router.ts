// Which page an address means. Pure; navigation.ts holds the browser's history.

export type PageName =
  | 'overview'
  | 'chamber'
  | 'alarms'
  | 'batches'
  | 'profiles'
  | 'profile'
  | 'profile-edit'
  | 'profile-copy'
  | 'sensors'
  | 'people'
  | 'my-alerts'
  | 'channels'
  | 'settings'
  | 'sign-in'
  | 'set-up'
  | 'first-batch'
  | 'join'
  | 'wall'
  | 'nothing';

export interface Route {
  readonly page: PageName;
  /** The chamber or profile of its page, else ''. */
  readonly id: string;
  /** The alarm an alert pointed to, else ''. */
  readonly alarmId: string;
  /** The set-up code in a set-up address, else ''. */
  readonly code: string;
}

const plainPages = new Map<string, PageName>([
  ['/', 'overview'],
  ['/alarms', 'alarms'],
  ['/batches', 'batches'],
  ['/profiles', 'profiles'],
  ['/sensors', 'sensors'],
  ['/people', 'people'],
  ['/my-alerts', 'my-alerts'],
  ['/channels', 'channels'],
  ['/settings', 'settings'],
  ['/sign-in', 'sign-in'],
  ['/set-up', 'set-up'],
  ['/first-batch', 'first-batch'],
  ['/join', 'join'],
  ['/wall', 'wall'],
]);

/** Pages about one thing: its id stands in the address. */
const innerPages: readonly (readonly [pattern: RegExp, page: PageName])[] = [
  [/^\/chambers\/([A-Za-z0-9._~-]+)$/, 'chamber'],
  [/^\/profiles\/([A-Za-z0-9._~-]+)$/, 'profile'],
  [/^\/profiles\/([A-Za-z0-9._~-]+)\/edit$/, 'profile-edit'],
  [/^\/profiles\/([A-Za-z0-9._~-]+)\/copy$/, 'profile-copy'],
];

function pageIn(path: string): { readonly page: PageName; readonly id: string } {
  for (const [pattern, page] of innerPages) {
    const id = pattern.exec(path)?.[1];
    if (id !== undefined) return { page, id };
  }
  return { page: plainPages.get(path) ?? 'nothing', id: '' };
}

/** The route of a path and query; an unknown path is the page `nothing`. A slash at the end does not matter. */
export function matchRoute(path: string, search: string): Route {
  const plainPath = path.length > 1 ? path.replace(/\/+$/, '') || '/' : path;
  const query = new URLSearchParams(search);
  return {
    ...pageIn(plainPath),
    alarmId: query.get('alarm') ?? '',
    code: query.get('code') ?? '',
  };
}

/** Sections that stood on the page of people once, and where they stand now: addresses in notices and bookmarks stay good. */
const movedSections = new Map([
  ['#mine', '/my-alerts'],
  ['#phones', '/my-alerts'],
  ['#push-needs', '/my-alerts'],
  ['#my-language', '/my-alerts'],
  ['#email', '/channels'],
  ['#webhooks', '/channels'],
  ['#outside', '/channels'],
]);

/** The present address of a section that has moved; null when nothing has. */
export function movedPath(path: string, hash: string): string | null {
  const page = path === '/people' ? movedSections.get(hash) : undefined;
  return page === undefined ? null : page + hash;
}

/** The address of a chamber's page. */
export function chamberPath(id: string): string {
  return `/chambers/${id}`;
}

/** The address of a profile's page. */
export function profilePath(id: string): string {
  return `/profiles/${id}`;
}
