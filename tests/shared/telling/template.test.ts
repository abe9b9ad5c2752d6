import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { sayFaults } from '../../../shared/problem.ts';
import { fillTemplate, type TemplateValues, templateFaults, templateFields } from '../../../shared/telling/template.ts';
import { english } from '../../../shared/words/en/english.ts';

const values: TemplateValues = templateFields;
const chat = '{"text": "{{title}}", "to": "{{ person.phoneNumber }}", "again": "{{title}}"}';

describe('filling in', () => {
  it('puts each field in its place', () => {
    expect(JSON.parse(fillTemplate(chat, values, 'json'))).toEqual({
      text: values.title,
      to: '+31612345678',
      again: values.title,
    });
  });

  it('never lets a value end the place it stands in, whatever it is', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary' }), (title) => {
        const said = { ...values, title };
        expect(JSON.parse(fillTemplate(chat, said, 'json'))).toMatchObject({ text: title, again: title });
        const form = new URLSearchParams(fillTemplate('to=1&text={{title}}&end=2', said, 'form'));
        expect([...form]).toEqual([
          ['to', '1'],
          ['text', title.toWellFormed()],
          ['end', '2'],
        ]);
      }),
    );
  });

  it('takes what stands in a value for words, not for a field', () => {
    const said = { ...values, title: '{{person.email}}' };
    expect(fillTemplate('{"text":"{{title}}"}', said, 'json')).toBe('{"text":"{{person.email}}"}');
  });
});

describe('a template', () => {
  it.each([
    ['', 'json', 'nothing: the whole notice is sent'],
    [chat, 'json', 'every field in quotes'],
    ['to={{person.phoneNumber}}&text={{title}}', 'form', 'fields of a form'],
    ['{"a": 1}', 'json', 'no field at all'],
  ] as const)('%j as %s can be used: %s', (template, contentType, _why) => {
    expect(templateFaults(template, contentType)).toEqual([]);
  });

  it.each([
    ['{"text": "{{titel}}"}', 'json', 'there is no field {{titel}}'],
    ['text={{constructor}}', 'form', 'there is no field {{constructor}}'],
    ['{"text": "{{title}"}', 'json', 'a {{ or }} stands alone'],
    ['{"text": "{{title now}}"}', 'json', 'a {{ or }} stands alone'],
    ['{"text": {{title}}}', 'json', 'with its fields filled in it is no JSON: put each {{field}} inside quotes'],
    ['{"value": {{alarm.value}}}', 'json', 'with its fields filled in it is no JSON: put each {{field}} inside quotes'],
    ['{"text": "{{title}}"', 'json', 'with its fields filled in it is no JSON: put each {{field}} inside quotes'],
    ['', 'form', 'a form needs one, such as to={{person.phoneNumber}}&text={{title}}'],
  ] as const)('%j as %s cannot: %s', (template, contentType, reason) => {
    expect(sayFaults(templateFaults(template, contentType), english)).toEqual([{ where: 'template', reason }]);
  });
});
