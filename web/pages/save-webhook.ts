// Adds, changes or removes one webhook of the site's list: the others stay as the service has them now, not as this page was told of them.
import type { ChannelsChange, ChannelsView } from '../../shared/api/channels.ts';
import { ApiProblem } from '../api.ts';
import { calls } from '../calls.ts';
import { textOf } from '../parts/form.tsx';
import { asContentType } from './webhook-body.tsx';

type WebhookChange = NonNullable<ChannelsChange['webhooks']>[number];
export type WebhookView = ChannelsView['webhooks'][number];

interface HeaderRow {
  readonly index: number;
  readonly name: string;
  readonly value: string;
}

/** The rows that name a header, in the order they stand in. */
function headerRows(fields: FormData): HeaderRow[] {
  return [...fields.keys()]
    .map((key) => /^header-(\d+)-name$/.exec(key)?.[1])
    .filter((index) => index !== undefined)
    .map((index) => ({
      index: Number(index),
      name: textOf(fields, `header-${index}-name`),
      value: textOf(fields, `header-${index}-value`),
    }))
    .filter(({ name }) => name !== '');
}

/** A secret or a value that is not typed stays as it is. */
function changeOf(fields: FormData, rows: readonly HeaderRow[], id: string | undefined): WebhookChange {
  const secret = textOf(fields, 'secret');
  return {
    ...(id !== undefined && { id }),
    name: textOf(fields, 'name'),
    url: textOf(fields, 'url'),
    allowLocal: fields.has('allowLocal'),
    audience: textOf(fields, 'audience') === 'each-person' ? 'each-person' : 'site',
    contentType: asContentType(textOf(fields, 'contentType')),
    template: textOf(fields, 'template'),
    ...(fields.has('dropSecret') ? { secret: '' } : secret !== '' && { secret }),
    headers: rows.map(({ name, value }) => ({ name, ...(value !== '' && { value }) })),
  };
}

/** Faults of headers stand at their own rows: a name without its row would be the name of the webhook. */
function atRows(problem: ApiProblem, rows: readonly HeaderRow[]): ApiProblem {
  const faults = problem.faults.map((fault) => {
    const [, index, part] = /headers[/.](\d+)[/.](name|value)$/.exec(fault.where) ?? [];
    const row = rows[Number(index)];
    return row === undefined ? fault : { ...fault, where: `header-${row.index}-${part}` };
  });
  return new ApiProblem(problem.message, problem.status, faults);
}

/** Saves the form of a webhook; `id` undefined = a new one. Throws the service's refusal, each fault at its field. */
export async function saveWebhook(fields: FormData, id: string | undefined): Promise<void> {
  const rows = headerRows(fields);
  const change = changeOf(fields, rows, id);
  const { webhooks } = await calls.channels();
  const isKept = webhooks.some((one) => one.id === id);
  const changed = isKept ? webhooks.map((one) => (one.id === id ? change : one)) : [...webhooks, change];
  try {
    await calls.saveChannels({ webhooks: changed });
  } catch (problem) {
    throw problem instanceof ApiProblem ? atRows(problem, rows) : problem;
  }
}

export async function removeWebhook(id: string): Promise<void> {
  const { webhooks } = await calls.channels();
  await calls.saveChannels({ webhooks: webhooks.filter((one) => one.id !== id) });
}
