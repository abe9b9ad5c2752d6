// What a message puts into the fields of a webhook's template.
import type { TemplateValues } from '../../shared/telling/template.ts';
import { utcText } from '../../shared/units.ts';
import type { NoticeMessage } from './notice-message.ts';

export function templateValues(message: NoticeMessage): TemplateValues {
  const { noticeId, kind, title, body, sentence, advice, url, facts, person } = message;
  const alarm = facts?.alarm;
  return {
    ...{ noticeId, kind, title, body, sentence, advice, url },
    acknowledgeUrl: message.acknowledge?.url ?? '',
    at: utcText(message.atMs),
    priority: alarm?.priority ?? '',
    'chamber.id': facts?.chamber.id ?? '',
    'chamber.name': facts?.chamber.name ?? '',
    'batch.code': facts?.batch?.code ?? '',
    'alarm.id': alarm?.id ?? '',
    'alarm.rule': alarm?.rule ?? '',
    'alarm.state': alarm?.state ?? '',
    'alarm.value': numberText(alarm?.value),
    'alarm.limit': numberText(alarm?.limit),
    'person.name': person?.name ?? '',
    'person.phoneNumber': person?.phoneNumber ?? '',
    'person.email': person?.email ?? '',
    'site.name': message.siteName,
  };
}

function numberText(value: number | null | undefined): string {
  return value === null || value === undefined ? '' : String(value);
}
