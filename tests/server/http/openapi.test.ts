// The OpenAPI document describes every path of the contract; it is read by programs that are not ours.
import { describe, expect, it } from 'vitest';
import { stageNames } from '../../../shared/healing/stage-name.ts';
import { createApiClient } from '../../support/api-client.ts';
import { openTestApp } from '../../support/open-test-app.ts';

interface Operation {
  readonly parameters?: readonly { readonly name: string; readonly in: string }[];
  readonly requestBody?: object;
  readonly responses?: Record<string, object>;
}
interface OpenApi {
  readonly openapi: string;
  readonly info: { readonly title: string; readonly version: string };
  readonly servers: readonly { readonly url: string }[];
  readonly paths: Record<string, Record<string, Operation>>;
}

/** The contract's paths and methods, written out from its table. */
const contract: Record<string, string> = {
  '/setup': 'post',
  '/session': 'delete get post',
  '/people': 'get post',
  '/people/{id}': 'delete patch',
  '/tokens': 'get post',
  '/tokens/{id}': 'delete',
  '/chambers': 'get post',
  '/chambers/{id}': 'delete get patch',
  '/chambers/{id}/climate': 'get',
  '/nodes': 'get post',
  '/nodes/{id}/credentials': 'post',
  '/probes': 'get post',
  '/probes/{id}': 'patch',
  '/probes/{id}/calibrations': 'get post',
  '/profiles': 'get post',
  '/profiles/{id}': 'get',
  '/profiles/{id}/versions': 'post',
  '/batches': 'get post',
  '/batches/{id}': 'get patch',
  '/batches/{id}/close-chamber': 'post',
  '/batches/{id}/hold': 'post',
  '/batches/{id}/resume': 'post',
  '/batches/{id}/log': 'post',
  '/batches/{id}/finish': 'post',
  '/batches/{id}/checks': 'get',
  '/batches/{id}/checks/{checkId}': 'post',
  '/batches/{id}/record.json': 'get',
  '/batches/{id}/record.csv': 'get',
  '/alarms': 'get',
  '/alarms/statistics': 'get',
  '/chambers/{id}/rules/{rule}/out-of-service': 'post',
  '/chambers/{id}/rules/{rule}/return-to-service': 'post',
  '/alarms/{id}/acknowledge': 'post',
  '/alarms/{id}/shelve': 'post',
  '/alarms/{id}/unshelve': 'post',
  '/stream': 'get',
  '/phones': 'get post',
  '/phones/{id}': 'delete',
  '/phones/{id}/test': 'post',
  '/channels': 'get put',
  '/duty': 'get put',
  '/settings': 'get put',
  '/health': 'get',
  '/metrics': 'get',
};

/** What the program adds to it. */
const added: Record<string, string> = {
  '/people/me': 'patch',
  '/people/me/reach': 'get',
  '/retired-chambers': 'get',
  '/retired-chambers/{id}/bring-back': 'post',
  '/batches/{id}/venting': 'get',
  '/batches/{id}/exposure': 'get',
  '/batches/learning': 'get',
  '/batches/overlay': 'get',
  '/invitations': 'get post',
  '/invitations/{id}': 'delete',
  '/invitations/look': 'post',
  '/invitations/accept': 'post',
  '/wall': 'post',
};

async function readDocument(environment: Record<string, string> = {}) {
  const { app } = await openTestApp({ environment });
  const answer = await createApiClient(app.url).get<OpenApi>('/openapi.json');
  expect(answer.status).toBe(200);
  return answer.body;
}

describe('the OpenAPI document', () => {
  it('is version 3.1, read without signing in, and names the program', async () => {
    const { openapi, info, servers } = await readDocument();
    expect(openapi).toMatch(/^3\.1\./);
    expect(info).toMatchObject({ title: 'Takewell', version: expect.stringMatching(/^\d+\.\d+\.\d+/) });
    expect(servers).toEqual([{ url: '/' }]);
  });

  it.each([
    ['the contract', contract],
    ['what is added to it', added],
  ])('lists every path and method of %s', async (_, wanted) => {
    const { paths } = await readDocument();
    const methodsOf = (path: string) =>
      Object.keys(paths[`/api/v1${path}`] ?? {})
        .sort()
        .join(' ');
    expect(Object.fromEntries(Object.keys(wanted).map((path) => [path, methodsOf(path)]))).toEqual(wanted);
  });

  it('describes the parameters of each path, the body of what is written and the answer of what is read', async () => {
    const { paths } = await readDocument();
    for (const [path, methods] of Object.entries(paths))
      for (const operation of Object.values(methods)) {
        const named = (operation.parameters ?? []).filter((one) => one.in === 'path').map(({ name }) => name);
        expect(named.sort()).toEqual([...path.matchAll(/\{(\w+)\}/g)].map(([, name]) => name).sort());
      }
    expect(paths['/api/v1/batches']?.['post']?.requestBody).toBeDefined();
    expect(paths['/api/v1/chambers']?.['get']?.responses).toHaveProperty('200');
    expect(paths['/api/v1/people']?.['post']?.responses).toHaveProperty('201');
  });

  it('describes what a line of the log is about: a check, a stage or corrections', async () => {
    const { paths } = await readDocument();
    const log = ['200', 'content', 'application/json', 'schema', 'properties', 'log', 'items', 'properties'];
    const responses = paths['/api/v1/batches/{id}']?.['get']?.responses;
    const text = { type: 'string' };
    const answer = { type: 'string', enum: ['yes', 'no'] };
    expect(responses).toHaveProperty([...log, 'check', 'anyOf', 0], expect.objectContaining({ type: 'object' }));
    expect(responses).toHaveProperty([...log, 'check', 'anyOf', 0, 'properties', 'answer'], answer);
    expect(responses).toHaveProperty([...log, 'stage', 'anyOf', 0, 'enum'], [...stageNames]);
    expect(responses).toHaveProperty([...log, 'changes', 'anyOf', 0, 'items', 'properties', 'after'], {
      type: ['string', 'number'],
    });
    expect(responses).toHaveProperty([...log, 'note'], expect.objectContaining(text));
  });

  it('says that what may be left out of a query is optional', async () => {
    const { paths } = await readDocument();
    const query = paths['/api/v1/chambers/{id}/climate']?.['get']?.parameters?.filter((one) => one.in === 'query');
    expect(query?.map(({ name }) => name).sort()).toEqual(['from', 'points', 'to']);
    expect(query?.filter((one) => 'required' in one && one.required)).toEqual([]);
  });

  it('names the public address where there is one', async () => {
    const { servers } = await readDocument({ TAKEWELL_PUBLIC_URL: 'https://takewell.example' });
    expect(servers).toEqual([{ url: 'https://takewell.example' }]);
  });
});
