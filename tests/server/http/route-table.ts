// Every route of the API, written out by hand: who may call it. Not taken from the program.
import type { Role } from '../../../shared/api/session.ts';

export type Method = 'GET' | 'POST' | 'PUT' | 'PATCH' | 'DELETE';

export interface RouteRow {
  readonly method: Method;
  /** As in the OpenAPI document, without `/api/v1`. */
  readonly path: string;
  /** Least role; `public` = anybody. */
  readonly role: Role | 'public';
  /** A token is no person: it may not call this, whatever its scope. */
  readonly peopleOnly?: true;
}

const viewer: readonly [Method, string][] = [
  ['GET', '/chambers'],
  ['GET', '/chambers/{id}'],
  ['GET', '/chambers/{id}/climate'],
  ['GET', '/probes'],
  ['GET', '/probes/{id}/calibrations'],
  ['GET', '/refused'],
  ['GET', '/profiles'],
  ['GET', '/profiles/{id}'],
  ['GET', '/profiles/{id}/history'],
  ['POST', '/profiles/check'],
  ['GET', '/batches'],
  ['GET', '/batches/{id}'],
  ['GET', '/batches/{id}/checks'],
  ['GET', '/batches/{id}/venting'],
  ['GET', '/batches/{id}/exposure'],
  ['GET', '/batches/learning'],
  ['GET', '/batches/overlay'],
  ['GET', '/batches/{id}/record.json'],
  ['GET', '/batches/{id}/record.csv'],
  ['GET', '/alarms'],
  ['GET', '/alarms/statistics'],
  ['GET', '/settings'],
  ['GET', '/duty'],
  ['GET', '/stream'],
  ['POST', '/wall'],
];
const crew: readonly [Method, string][] = [
  ['POST', '/batches'],
  ['PATCH', '/batches/{id}'],
  ['POST', '/batches/{id}/close-chamber'],
  ['POST', '/batches/{id}/hold'],
  ['POST', '/batches/{id}/resume'],
  ['POST', '/batches/{id}/log'],
  ['POST', '/batches/{id}/finish'],
  ['POST', '/batches/{id}/checks/{checkId}'],
  ['POST', '/alarms/{id}/acknowledge'],
  ['POST', '/alarms/{id}/shelve'],
  ['POST', '/alarms/{id}/unshelve'],
];
const manager: readonly [Method, string][] = [
  ['GET', '/people'],
  ['POST', '/people'],
  ['PATCH', '/people/{id}'],
  ['DELETE', '/people/{id}'],
  ['GET', '/invitations'],
  ['POST', '/invitations'],
  ['DELETE', '/invitations/{id}'],
  ['GET', '/broker'],
  ['GET', '/tokens'],
  ['POST', '/tokens'],
  ['DELETE', '/tokens/{id}'],
  ['POST', '/chambers'],
  ['PATCH', '/chambers/{id}'],
  ['DELETE', '/chambers/{id}'],
  ['GET', '/retired-chambers'],
  ['POST', '/retired-chambers/{id}/bring-back'],
  ['POST', '/chambers/{id}/rules/{rule}/out-of-service'],
  ['POST', '/chambers/{id}/rules/{rule}/return-to-service'],
  ['POST', '/probes'],
  ['PATCH', '/probes/{id}'],
  ['POST', '/probes/{id}/calibrations'],
  ['GET', '/nodes'],
  ['POST', '/nodes'],
  ['POST', '/nodes/{id}/credentials'],
  ['POST', '/profiles'],
  ['POST', '/profiles/{id}/versions'],
  ['GET', '/channels'],
  ['PUT', '/channels'],
  ['PUT', '/duty'],
  ['PUT', '/settings'],
];
const anybody: readonly [Method, string][] = [
  ['POST', '/setup'],
  ['POST', '/invitations/look'],
  ['POST', '/invitations/accept'],
  ['POST', '/session'],
  ['GET', '/session'],
  ['DELETE', '/session'],
  ['GET', '/health'],
  ['GET', '/metrics'],
  ['POST', '/acknowledge'],
  ['POST', '/receipts'],
];
const ownAffairs: readonly [Method, string][] = [
  ['GET', '/phones'],
  ['POST', '/phones'],
  ['DELETE', '/phones/{id}'],
  ['POST', '/phones/{id}/test'],
  ['DELETE', '/phones/lost/{id}'],
  ['POST', '/channels/test'],
  ['PATCH', '/people/me'],
  ['GET', '/people/me/reach'],
];

const rows = (list: readonly [Method, string][], role: RouteRow['role']): RouteRow[] =>
  list.map(([method, path]) => ({ method, path, role }));

export const routeTable: readonly RouteRow[] = [
  ...rows(viewer, 'viewer'),
  ...rows(crew, 'crew'),
  ...rows(manager, 'manager'),
  ...rows(anybody, 'public'),
  ...ownAffairs.map(([method, path]): RouteRow => ({ method, path, role: 'viewer', peopleOnly: true })),
];
