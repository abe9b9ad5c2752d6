// What the service answers in the language of whoever asked: its own sentences, its own words about fields, and those of the library.
import { describe, expect, it } from 'vitest';
import type { ProblemDetails } from '../../../shared/api/common.ts';
import type { Language } from '../../../shared/languages.ts';
import { wordsOf } from '../../../shared/words/words-of.ts';
import { createApiClient } from '../../support/api-client.ts';
import { openTestApp } from '../../support/open-test-app.ts';

const { nl, es } = wordsOf;

describe('a request that is refused', () => {
  it.each([
    { why: 'a sentence of ours', path: '/batches/none', language: 'nl', detail: nl.problems.noSuchBatch },
    {
      why: 'a region of a language',
      path: '/batches/none',
      language: 'es-MX,en;q=0.5',
      detail: es.problems.noSuchBatch,
    },
    { why: 'no such path', path: '/nothing', language: 'nl', detail: nl.problems.nothingHere },
    {
      why: 'an act that changes nothing',
      path: '/chambers/CHAMBER/rules/heat/return-to-service',
      body: {},
      language: 'es',
      detail: es.problems.ruleInService,
    },
    {
      why: 'our words about a field',
      path: '/chambers',
      body: { name: ' ' },
      language: 'nl',
      detail: `name: ${nl.shapes.giveName}`,
      faults: [{ where: '/name', reason: nl.shapes.giveName }],
    },
    {
      why: 'the library’s words about a field that is not there',
      path: '/chambers',
      body: {},
      language: 'nl',
      detail: 'name: Ongeldige invoer: verwacht string, ontving undefined',
    },
    {
      why: 'the library’s words about a value of the wrong kind',
      path: '/chambers',
      body: { name: 7 },
      language: 'es',
      detail: 'name: Entrada inválida: se esperaba texto, recibido número',
    },
    {
      why: 'an impossible profile',
      path: '/profiles',
      body: { id: 'mine', document: 7 },
      language: 'nl',
      detail: nl.problems.profileUnusable(
        `/: ${nl.faults.mustBe(nl.faults.kinds['object'] ?? '', '7')}; /stages: ${nl.faults.noClosed}`,
      ),
    },
    { why: 'a language that there is not', path: '/batches/none', language: 'de', detail: 'There is no such batch.' },
  ])('$why', async ({ path, body, language, detail, faults }) => {
    const { app, api } = await openTestApp();
    const chamber = (await api.post<{ id: string }>('/chambers', { name: 'Tent 9' })).body;
    const asked = createApiClient(app.url, { cookie: api.cookie(), 'accept-language': language });
    const place = path.replace('CHAMBER', chamber.id);
    const answer = body === undefined ? asked.get<ProblemDetails>(place) : asked.post<ProblemDetails>(place, body);
    const problem = (await answer).body;
    expect(problem.detail).toBe(detail);
    if (faults !== undefined) expect(problem.faults).toEqual(faults);
  });

  it('speaks the person’s own language, whatever their browser prefers', async () => {
    const { app, api } = await openTestApp();
    await api.patch('/people/me', { language: 'nl' });
    const asked = createApiClient(app.url, { cookie: api.cookie(), 'accept-language': 'es' });
    expect((await asked.get<ProblemDetails>('/batches/none')).body.detail).toBe(nl.problems.noSuchBatch);
  });

  it('says each fault of a mapping in that language', async () => {
    const { app, api } = await openTestApp();
    const { body: site } = await api.get<object>('/settings');
    const temperature = { pointer: '/t', unit: 'Cel' };
    const good = { filter: 'house/+', node: 'n1', temperature };
    const mappings = [
      { ...good, filter: '' },
      { ...good, filter: 'house/a+' },
      { ...good, filter: '#/house' },
      { ...good, node: 'tent 3' },
      { ...good, probe: 'x'.repeat(65) },
      { ...good, temperature: { pointer: 't', unit: 'Cel' } },
      // What lies between fields is looked at where every field is right.
      { ...good, node: 'level:2' },
      { ...good, filter: 'takewell/v1/n1/air' },
      { filter: 'house/+', node: 'n1' },
    ];
    const faultsIn = async (language: Language, list: readonly object[]) => {
      const asked = createApiClient(app.url, { cookie: api.cookie(), 'accept-language': language });
      const { body } = await asked.put<ProblemDetails>('/settings', { ...site, mappings: list });
      return body.faults?.map(({ where, reason }) => `${where}: ${reason}`);
    };
    expect(await faultsIn('nl', mappings)).toEqual([
      '/mappings/0/filter: schrijf een topicfilter, bijvoorbeeld sensors/+/air',
      '/mappings/1/filter: laat + en # alleen staan tussen de schuine strepen',
      '/mappings/2/filter: zet # achteraan',
      '/mappings/3/node: de zendernaam mag alleen de letters A–Z en a–z, cijfers en . _ - bevatten; of haal hem uit het topic met level:0, level:1, …',
      '/mappings/4/probe: is te lang: hoogstens 64 tekens',
      `/mappings/5/temperature/pointer: ${nl.shapes.jsonPointer}`,
      '/mappings/6/node: het filter heeft 2 niveaus, geteld vanaf level:0',
      '/mappings/7/filter: topics onder takewell/v1 hebben geen mapping nodig',
      '/mappings/8/temperature: zeg waar de temperatuur staat, of de luchtvochtigheid, of allebei',
    ]);
    const [inEnglish = [], inSpanish = []] = await Promise.all([faultsIn('en', mappings), faultsIn('es', mappings)]);
    expect([inEnglish.length, inSpanish.length]).toEqual([mappings.length, mappings.length]);
    expect(inSpanish.filter((fault) => inEnglish.includes(fault))).toEqual([]);
  });

  it('says each fault of the channels and of a profile in that language', async () => {
    const { app, api } = await openTestApp();
    const asked = createApiClient(app.url, { cookie: api.cookie(), 'accept-language': 'es' });
    const webhook = { name: 'Gateway', url: 'ftp://x', headers: [{ name: 'Host', value: 'é' }] };
    const email = { host: 'a mail server', port: 25, security: 'none', user: 'me', from: 'nobody' };
    const channels = { email, webhooks: [webhook], heartbeat: { url: 'x' }, contact: 'ftp://x' };
    const faultsOf = ({ body }: { body: ProblemDetails }) =>
      body.faults?.map(({ where, reason }) => `${where}: ${reason}`);
    const { shapes, faults } = es;
    expect(faultsOf(await asked.put<ProblemDetails>('/channels', channels))).toEqual([
      `/email/host: ${shapes.onlyHostName}`,
      `/email/from: ${shapes.writeEmail}`,
      `/email/security: ${shapes.readablePassword}`,
      `/webhooks/0/url: ${shapes.writeAddress}`,
      `/webhooks/0/headers/0/name: ${shapes.otherHeader}`,
      `/webhooks/0/headers/0/value: ${shapes.plainLetters}`,
      `/heartbeat/url: ${shapes.writeAddress}`,
      `/contact: ${shapes.writeContact}`,
    ]);
    const many = Array.from({ length: 11 }, () => ({ name: 'Gateway', url: 'https://gateway.example' }));
    expect(faultsOf(await asked.put<ProblemDetails>('/channels', { webhooks: many }))).toEqual([
      `/webhooks: ${shapes.fewerWebhooks}`,
    ]);
    const document = { name: ['x'], crop: 'x', note: { text: 'x' }, endsNotBefore: '7' };
    expect(faultsOf(await asked.post<ProblemDetails>('/profiles', { id: 'mine', document }))).toEqual(
      expect.arrayContaining([
        `/name: ${faults.mustBe(faults.kinds['string'] ?? '', 'una lista')}`,
        `/note: ${faults.mustBe(faults.kinds['string'] ?? '', 'un objeto')}`,
        `/endsNotBefore: ${faults.unreadable(shapes.writeTimeOfDay)}`,
      ]),
    );
  });
});
