// Which page an address means. Pure; navigation.ts holds the browser's history.

export type PageName =
  | 'overview'
  | 'chamber'
  | 'alarms'
  | 'batches'
  | 'profiles'
  | 'sensors'
  | 'people'
  | 'settings'
  | 'sign-in'
  | 'set-up'
  | 'join'
  | 'wall'
  | 'nothing';

export interface Route {
  readonly page: PageName;
  /** The chamber of a chamber page, else ''. */
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
  ['/settings', 'settings'],
  ['/sign-in', 'sign-in'],
  ['/set-up', 'set-up'],
  ['/join', 'join'],
  ['/wall', 'wall'],
]);

function chamberIn(path: string): string {
  const segment = /^\/chambers\/([A-Za-z0-9._~-]+)$/.exec(path)?.[1];
  return segment ?? '';
}

/** The route of a path and query; an unknown path is the page `nothing`. A slash at the end does not matter. */
export function matchRoute(path: string, search: string): Route {
  const plainPath = path.length > 1 ? path.replace(/\/+$/, '') || '/' : path;
  const query = new URLSearchParams(search);
  const id = chamberIn(plainPath);
  return {
    page: id === '' ? (plainPages.get(plainPath) ?? 'nothing') : 'chamber',
    id,
    alarmId: query.get('alarm') ?? '',
    code: query.get('code') ?? '',
  };
}

/** The address of a chamber's page. */
export function chamberPath(id: string): string {
  return `/chambers/${id}`;
}
