// The body of a webhook as its receiver wants it: a text with `{{field}}`s. Nothing else is understood: no conditions, no loops, no code.
import type { Fault } from '../problem.ts';
import type { SharedWords } from '../words/shared-words.ts';

/** What may stand between the braces, with an example of each; all are texts, '' where there is nothing to say. */
export const templateFields = {
  noticeId: 'c2.heat.raised',
  kind: 'raised',
  title: '▲ Chamber 2: hot 29.1 °C',
  body: 'Limit 28 for 4 min, since 13:00.\nFirst: Shade now.',
  sentence: '▲ Hot: 29.1 °C, limit 28 for 4 min',
  advice: 'Shade now. Open the gap a hand’s width and mist the film.',
  url: 'https://takewell.example/chambers/c2',
  acknowledgeUrl: 'https://takewell.example/acknowledge/one-use',
  at: '2026-03-01T12:04:00Z',
  priority: 'high',
  'chamber.id': 'c2',
  'chamber.name': 'Chamber 2',
  'batch.code': 'T-117',
  'alarm.id': 'c2.heat.mm7',
  'alarm.rule': 'heat',
  'alarm.state': 'unacknowledged',
  'alarm.value': '29.1',
  'alarm.limit': '28',
  'person.name': 'Crew one',
  'person.phoneNumber': '+31612345678',
  'person.email': 'crew@example.org',
  'site.name': 'Our nursery',
} as const;
export type TemplateField = keyof typeof templateFields;
export type TemplateValues = Readonly<Record<TemplateField, string>>;

export type ContentType = 'json' | 'form';

const PLACE = /\{\{\s*([A-Za-z.]*)\s*\}\}/g;

/** The fields that a template names, known or not. */
export function fieldsOf(template: string): string[] {
  return [...template.matchAll(PLACE)].map((match) => match[1] ?? '');
}

/** The template with its fields filled in, each escaped so that no value can end the place it stands in. */
export function fillTemplate(template: string, values: TemplateValues, contentType: ContentType): string {
  return template.replace(PLACE, (_, name: string) => escapeFor(isField(name) ? values[name] : '', contentType));
}

/** A fault that needs few words to be said, so that the page can say it too. */
export interface TemplateFault extends Fault {
  readonly reason: (words: Pick<SharedWords, 'templates'>) => string;
}

/** What is wrong with a template; empty when it can be used. */
export function templateFaults(template: string, contentType: ContentType): TemplateFault[] {
  const unknown = fieldsOf(template).filter((name) => !isField(name));
  if (unknown.length > 0) return [fault(({ templates }) => templates.noSuchField(unknown[0] ?? ''))];
  if (/\{\{|\}\}/.test(template.replace(PLACE, ''))) return [fault(({ templates }) => templates.loneBrace)];
  if (contentType === 'form') return template === '' ? [fault(({ templates }) => templates.formNeedsTemplate)] : [];
  if (template === '') return [];
  const filled = [hostileValues, emptyValues].map((values) => fillTemplate(template, values, 'json'));
  return filled.every(isJson) ? [] : [fault(({ templates }) => templates.templateNoJson)];
}

function fault(reason: TemplateFault['reason']): TemplateFault {
  return { where: 'template', reason };
}

function valuesOf(make: (name: string) => string): TemplateValues {
  return Object.fromEntries(Object.keys(templateFields).map((name) => [name, make(name)])) as TemplateValues;
}

const emptyValues = valuesOf(() => '');
/** What a name in the nursery could be at worst. */
const hostileValues = valuesOf(() => '"}],\\ \n\u0000\u2028 {{title}}');

function isField(name: string): name is TemplateField {
  return Object.hasOwn(templateFields, name);
}

function escapeFor(value: string, contentType: ContentType): string {
  if (contentType === 'form') return encodeURIComponent(value.toWellFormed());
  return JSON.stringify(value).slice(1, -1);
}

function isJson(text: string): boolean {
  try {
    JSON.parse(text);
    return true;
  } catch {
    return false;
  }
}
