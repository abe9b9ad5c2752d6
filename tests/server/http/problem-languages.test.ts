// What the service answers in the language of whoever asked: its own sentences, its own words about fields, and those of the library.
import { describe, expect, it } from 'vitest';
import type { ProblemDetails } from '../../../shared/api/common.ts';
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
});
