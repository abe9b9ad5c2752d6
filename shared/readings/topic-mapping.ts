// A mapping, kept in the settings: where in the messages of somebody else's topic the node, the values and the time stand.
// Only the shape; decode-mapped.ts reads by it.

import { z } from 'zod';
import { english } from '../words/en/english.ts';
import { shapes } from '../words/en/shapes.ts';
import type { Say } from '../words/shared-words.ts';
import { jsonPointerPattern } from './json-pointer.ts';
import { findNodeNameFault, findProbeNameFault } from './probe-name.ts';
import { timeUnits } from './read-time.ts';
import { sayRefusal } from './say-refusal.ts';
import { findTopicFilterFault } from './topic-filter.ts';

const pointerSchema = z
  .string()
  .max(500)
  .regex(jsonPointerPattern, shapes.jsonPointer)
  .describe('JSON Pointer (RFC 6901) in the message');

/** Turns a finder of faults into a zod check, so that the sentence is written once. */
function checkedText(findFault: (text: string) => Say | null) {
  return z.string().superRefine((text, context) => {
    const say = findFault(text);
    if (say !== null) context.addIssue({ code: 'custom', message: say(english), params: { say } });
  });
}

/** The topic level that names the node, zero-based, or null when the node is named outright. */
export function nodeLevel(node: string): number | null {
  const match = /^level:(\d{1,3})$/.exec(node);
  return match === null ? null : Number(match[1]);
}

function findNodeFault(node: string): Say | null {
  if (nodeLevel(node) !== null) return null;
  const fault = findNodeNameFault(node);
  return fault === null ? null : (words) => words.faults.mappedNode(sayRefusal(fault, words));
}

function findProbeFault(probe: string): Say | null {
  const fault = findProbeNameFault(probe);
  return fault === null ? null : (words) => sayRefusal(fault, words);
}

const mappingShape = z.strictObject({
  filter: checkedText(findTopicFilterFault).max(500).describe('MQTT topic filter, with + and #'),
  node: checkedText(findNodeFault).describe('Name of the node, or level:N to take it from a topic level, zero-based'),
  probe: checkedText(findProbeFault).optional().describe("The probe's address on the node"),
  temperature: z.strictObject({ pointer: pointerSchema, unit: z.enum(['Cel', 'degF']) }).optional(),
  humidity: z.strictObject({ pointer: pointerSchema, unit: z.enum(['%RH', '/']) }).optional(),
  time: z.strictObject({ pointer: pointerSchema, unit: z.enum(timeUnits) }).optional(),
});
export type TopicMapping = z.infer<typeof mappingShape>;

export const topicMappingSchema = mappingShape.superRefine((mapping, context) => {
  const fault = findMappingFault(mapping);
  if (fault === null) return;
  const { field, say } = fault;
  context.addIssue({ code: 'custom', path: [field], message: say(english), params: { say } });
});

/** What no field shows by itself. */
function findMappingFault(mapping: TopicMapping): { readonly field: keyof TopicMapping; readonly say: Say } | null {
  const { filter, node, temperature, humidity } = mapping;
  if (temperature === undefined && humidity === undefined) {
    return { field: 'temperature', say: ({ faults }) => faults.whereTemperature };
  }
  if (filter.startsWith('takewell/v1/')) return { field: 'filter', say: ({ faults }) => faults.ownTopics };
  const level = nodeLevel(node);
  const levels = filter.split('/');
  if (level === null || levels.at(-1) === '#' || level < levels.length) return null;
  return { field: 'node', say: ({ faults }) => faults.levelsOfFilter(levels.length) };
}
