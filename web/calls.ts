// Every request of the interface, named by what it does.

import type { RuleId } from '../shared/alarms/alarm.ts';
import { SERVICE_ID } from '../shared/alarms/alarm.ts';
import type { AlarmStatisticsView } from '../shared/api/alarm-statistics.ts';
import type { AlarmView } from '../shared/api/alarms.ts';
import type { BatchView, CheckView } from '../shared/api/batches.ts';
import type { CalibrationView } from '../shared/api/calibrations.ts';
import type { ChamberView, ClimateSeries, RetiredChamber } from '../shared/api/chambers.ts';
import type { ChannelsView } from '../shared/api/channels.ts';
import type { Duty, DutyView } from '../shared/api/duty.ts';
import type { ExposureView } from '../shared/api/exposure.ts';
import type { CreatedInvitation, InvitationView } from '../shared/api/invitations.ts';
import type { LearningView, OverlayView } from '../shared/api/learning.ts';
import type { LogEntry } from '../shared/api/log-entry.ts';
import type { BrokerAddress, NodeView, ProbeView, RefusedView } from '../shared/api/probes.ts';
import type { ProfileVerdictView, ProfileView } from '../shared/api/profiles.ts';
import type { ReachView } from '../shared/api/reach.ts';
import type { Person, PersonDetails, Role, Session, TokenView } from '../shared/api/session.ts';
import type { ChannelTest, DeliveryResult, PhonesView, PhoneView, SiteSettings } from '../shared/api/telling.ts';
import type { VentingView } from '../shared/api/venting.ts';
import { getJson, getKept, sendJson } from './api.ts';

interface Page<T> {
  readonly items: readonly T[];
  readonly nextCursor: string | null;
}

const pageSize = 500;

async function listAll<T>(path: string): Promise<readonly T[]> {
  const items: T[] = [];
  let cursor: string | null = '';
  while (cursor !== null) {
    const join = path.includes('?') ? '&' : '?';
    const page: Page<T> = await getJson(`${path}${join}limit=${pageSize}${cursor === '' ? '' : `&cursor=${cursor}`}`);
    items.push(...page.items);
    cursor = page.nextCursor;
  }
  return items;
}

async function listSome<T>(path: string): Promise<readonly T[]> {
  return (await getJson<Page<T>>(path)).items;
}

export const calls = {
  session: () => getKept<Session>('/session'),
  signIn: (name: string, password: string) => sendJson('POST', '/session', { name, password }),
  signOut: () => sendJson('DELETE', '/session'),
  setUp: (code: string, name: string, password: string) => sendJson('POST', '/setup', { code, name, password }),

  chambers: () => getKept<Page<ChamberView>>(`/chambers?limit=${pageSize}`),
  chamber: (id: string) => getJson<ChamberView>(`/chambers/${id}`),
  addChamber: (name: string) => sendJson<ChamberView>('POST', '/chambers', { name }),
  renameChamber: (id: string, name: string) => sendJson('PATCH', `/chambers/${id}`, { name }),
  retiredChambers: () => listAll<RetiredChamber>('/retired-chambers'),
  bringBackChamber: (id: string, name: string) => sendJson('POST', `/retired-chambers/${id}/bring-back`, { name }),
  removeChamber: (id: string) => sendJson('DELETE', `/chambers/${id}`),
  takeOutOfService: (id: string, rule: RuleId, reason: string) =>
    sendJson<ChamberView>('POST', `/chambers/${id}/rules/${rule}/out-of-service`, { reason }),
  returnToService: (id: string, rule: RuleId) =>
    sendJson<ChamberView>('POST', `/chambers/${id}/rules/${rule}/return-to-service`),
  climate: (id: string, query: string) => getJson<ClimateSeries>(`/chambers/${id}/climate?${query}`),

  probes: () => listAll<ProbeView>('/probes'),
  changeProbe: (id: string, patch: object) => sendJson('PATCH', `/probes/${id}`, patch),
  calibrations: (id: string) => listAll<CalibrationView>(`/probes/${id}/calibrations`),
  calibrate: (id: string, body: object) => sendJson<CalibrationView>('POST', `/probes/${id}/calibrations`, body),
  nodes: () => listAll<NodeView>('/nodes'),
  addNode: (id: string) => sendJson('POST', '/nodes', { id }),
  makeCredentials: (id: string) => sendJson<{ name: string; password: string }>('POST', `/nodes/${id}/credentials`),
  broker: () => getJson<BrokerAddress>('/broker'),
  refused: () => listSome<RefusedView>('/refused?limit=200'),

  profiles: () => listAll<ProfileView>('/profiles'),
  profile: (id: string) => getJson<ProfileView>(`/profiles/${id}`),
  profileHistory: (id: string) => listAll<ProfileView>(`/profiles/${id}/history`),
  checkProfile: (document: unknown) => sendJson<ProfileVerdictView>('POST', '/profiles/check', { document }),
  addProfile: (id: string, document: object) => sendJson<ProfileView>('POST', '/profiles', { id, document }),
  addProfileVersion: (id: string, document: object) =>
    sendJson<ProfileView>('POST', `/profiles/${id}/versions`, { document }),

  batches: () => listAll<BatchView>('/batches'),
  batch: (id: string) => getJson<BatchView>(`/batches/${id}`),
  exposure: (id: string) => getJson<ExposureView>(`/batches/${id}/exposure`),
  learning: () => getJson<LearningView>('/batches/learning'),
  overlay: (ids: readonly string[]) => getJson<OverlayView>(`/batches/overlay?ids=${ids.join(',')}`),
  venting: (id: string) => getJson<VentingView>(`/batches/${id}/venting`),
  openBatch: (body: object) => sendJson<BatchView>('POST', '/batches', body),
  changeBatch: (id: string, patch: object) => sendJson('PATCH', `/batches/${id}`, patch),
  closeChamber: (id: string) => sendJson('POST', `/batches/${id}/close-chamber`),
  hold: (id: string, reason: string) => sendJson('POST', `/batches/${id}/hold`, { reason }),
  resume: (id: string) => sendJson('POST', `/batches/${id}/resume`),
  log: (id: string, body: { kind: LogEntry['kind']; gapPercent?: number; minutes?: number; note?: string }) =>
    sendJson('POST', `/batches/${id}/log`, body),
  finish: (id: string, takenPlants: number, note: string) =>
    sendJson('POST', `/batches/${id}/finish`, { takenPlants, note }),
  checks: (id: string) => listAll<CheckView>(`/batches/${id}/checks`),
  answerCheck: (id: string, checkId: string, answer: 'yes' | 'no') =>
    sendJson('POST', `/batches/${id}/checks/${checkId}`, { answer }),

  activeAlarms: () => listAll<AlarmView>('/alarms?state=active'),
  /** A page of the alarms that are over, newest first; '' = the first. */
  pastAlarms: (cursor: string) =>
    getJson<Page<AlarmView>>(`/alarms?state=normal&limit=25${cursor === '' ? '' : `&cursor=${cursor}`}`),
  /** Of the service itself. */
  serviceAlarms: () => listAll<AlarmView>(`/alarms?state=active&chamberId=${SERVICE_ID}`),
  alarmStatistics: () => getJson<AlarmStatisticsView>('/alarms/statistics'),
  acknowledge: (id: string) => sendJson('POST', `/alarms/${id}/acknowledge`),
  shelve: (id: string, minutes: number, reason: string) =>
    sendJson('POST', `/alarms/${id}/shelve`, { minutes, reason }),
  unshelve: (id: string) => sendJson('POST', `/alarms/${id}/unshelve`),

  people: () => listAll<Person>('/people'),
  addPerson: (name: string, role: Role, password: string) => sendJson('POST', '/people', { name, role, password }),
  changePerson: (id: string, patch: Partial<PersonDetails> & { role?: Role; password?: string }) =>
    sendJson('PATCH', `/people/${id}`, patch),
  changeMyself: (patch: Pick<Partial<Person>, 'language' | 'temperatureUnit'>) =>
    sendJson('PATCH', '/people/me', patch),
  removePerson: (id: string) => sendJson('DELETE', `/people/${id}`),

  invitations: () => listAll<InvitationView>('/invitations'),
  invite: (name: string, role: Role) => sendJson<CreatedInvitation>('POST', '/invitations', { name, role }),
  withdrawInvitation: (id: string) => sendJson('DELETE', `/invitations/${id}`),
  lookAtInvitation: (secret: string) => sendJson<InvitationView>('POST', '/invitations/look', { secret }),
  acceptInvitation: (secret: string, name: string, password: string) =>
    sendJson<{ name: string }>('POST', '/invitations/accept', { secret, name, password }),

  tokens: () => listAll<TokenView>('/tokens'),
  addToken: (name: string) => sendJson<{ token: string }>('POST', '/tokens', { name, scope: 'read' }),
  removeToken: (id: string) => sendJson('DELETE', `/tokens/${id}`),
  /** With the token of a wall link, or with nothing to renew the cookie that was made from one. */
  openWall: (token: string) =>
    sendJson<{ name: string }>('POST', '/wall', {}, token === '' ? {} : { authorization: `Bearer ${token}` }),

  reach: () => getJson<ReachView>('/people/me/reach'),
  phones: () => getJson<PhonesView>('/phones'),
  addPhone: (name: string, subscription: object) => sendJson<PhoneView>('POST', '/phones', { name, subscription }),
  removePhone: (id: string) => sendJson('DELETE', `/phones/${id}`),
  duty: () => getJson<DutyView>('/duty'),
  saveDuty: (duty: Duty) => sendJson<DutyView>('PUT', '/duty', duty),
  changeMe: (patch: Partial<PersonDetails>) => sendJson<Person>('PATCH', '/people/me', patch),
  testPhone: (id: string) => sendJson<DeliveryResult>('POST', `/phones/${id}/test`),
  testChannel: (what: ChannelTest) => sendJson<DeliveryResult>('POST', '/channels/test', what),
  forgetLostPhone: (id: string) => sendJson('DELETE', `/phones/lost/${id}`),
  channels: () => getJson<ChannelsView>('/channels'),
  saveChannels: (channels: object) => sendJson<ChannelsView>('PUT', '/channels', channels),
  settings: () => getJson<SiteSettings>('/settings'),
  saveSettings: (settings: SiteSettings) => sendJson<SiteSettings>('PUT', '/settings', settings),
};
