// The example messages of the firmware notes, fed through admission: a page that shows a wrong example fails here.
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { saturationKpa } from '../../shared/air/vapour.ts';
import { decodePayload } from '../../shared/readings/decode-payload.ts';
import { parseReadingTopic } from '../../shared/readings/reading-topic.ts';
import { sayRefusal } from '../../shared/readings/say-refusal.ts';
import { english } from '../../shared/words/en/english.ts';

const notes = new URL('../../firmware-notes/', import.meta.url);
const pages = readdirSync(notes).filter((name) => name.endsWith('.md'));
const readPage = (page: string): string => readFileSync(new URL(page, notes), 'utf8');

interface Example {
  readonly place: string;
  readonly topic: string;
  readonly arrivalMs: number;
  readonly admitted: number;
  readonly refused: number;
  /** A word that each refusal's reason must hold. */
  readonly reason: string;
  readonly payload: string;
}

/** Every fenced block whose info string names a topic. */
function findExamples(page: string): Example[] {
  const blocks = readPage(page).matchAll(/^```(\S+) +(topic=.*)\n([\s\S]*?)^```$/gm);
  return [...blocks].map(([, , info = '', payload = ''], index) => {
    const fields = new Map(
      info.split(' ').map((word) => [word.slice(0, word.indexOf('=')), word.slice(word.indexOf('=') + 1)]),
    );
    const counts = new Map((fields.get('expect') ?? '').split(',').map((part) => part.split(':') as [string, string]));
    return {
      place: `${page}, example ${index + 1}`,
      topic: fields.get('topic') ?? '',
      arrivalMs: Date.parse(fields.get('now') ?? ''),
      admitted: Number(counts.get('admitted') ?? 0),
      refused: Number(counts.get('refused') ?? 0),
      reason: fields.get('reason') ?? '',
      payload,
    };
  });
}

const examples = pages.flatMap(findExamples);

describe('the firmware notes', () => {
  it('show at least 20 example messages, admitted and refused', () => {
    expect(examples.length).toBeGreaterThanOrEqual(20);
    expect(examples.filter((example) => example.refused > 0).length).toBeGreaterThanOrEqual(8);
  });

  it('say of every example what becomes of it, and why where it is refused', () => {
    for (const { place, admitted, refused, reason, arrivalMs } of examples) {
      expect(admitted + refused, place).toBeGreaterThan(0);
      expect(reason !== '', place).toBe(refused > 0);
      expect(arrivalMs, place).toBeGreaterThan(0);
    }
  });

  it('leave no block of JSON unchecked', () => {
    const blocks = pages.flatMap((page) => [...readPage(page).matchAll(/^```json/gm)]);
    const checked = pages.flatMap((page) => [...readPage(page).matchAll(/^```json +topic=/gm)]);
    expect(checked.length).toBe(blocks.length);
  });

  it('link only to pages that exist, and the first page links to all', () => {
    const linked = [...readPage('README.md').matchAll(/\]\(([a-z-]+\.md)\)/g)].map(([, page]) => page ?? '');
    expect([...new Set(linked)].sort()).toEqual(pages.filter((page) => page !== 'README.md').sort());
  });
});

describe('each example', () => {
  it.each(examples)('is treated as the page says: $place', (example) => {
    const topic = parseReadingTopic(example.topic);
    const node = topic.kind === 'readings' ? topic.node : '';
    expect(node).not.toBe('');
    const payload = new TextEncoder().encode(example.payload);
    const { admitted, refused } = decodePayload({ node, payload, arrivalMs: example.arrivalMs });
    expect({ admitted: admitted.length, refused: refused.length }).toEqual({
      admitted: example.admitted,
      refused: example.refused,
    });
    for (const { reason } of refused) expect(sayRefusal(reason, english)).toContain(example.reason);
  });
});

describe('the figures of the pages', () => {
  const rows = [...readPage('sensors-in-wet-air.md').matchAll(/^\| (\d\.\d) \| (\d\d\.\d) \|$/gm)];
  const table = rows.map(([, warmer, reads]) => ({ warmer: Number(warmer), reads: Number(reads) }));

  it('has three rows on warm sensors', () => {
    expect(table).toHaveLength(3);
  });

  // Same vapour, warmer air: %RH falls as the saturation pressures stand to each other.
  it.each(table)('are right: a sensor $warmer °C too warm reads $reads %RH', ({ warmer, reads }) => {
    expect((97 * saturationKpa(25)) / saturationKpa(25 + warmer)).toBeCloseTo(reads, 1);
  });

  it.each([
    { count: 10_000, admitted: 10_000, refused: 0, why: 'a full pack of plain readings, well under 1 MiB' },
    { count: 10_001, admitted: 0, refused: 1, why: 'one too many' },
  ])('are right: $why', ({ count, admitted, refused }) => {
    const pack = Array.from({ length: count }, (_, index) => {
      const time = new Date(Date.UTC(2026, 2, 2) + index * 60_000).toISOString();
      return { probe: 'canopy-1', time, temperature: 21.4, humidity: 96.2 };
    });
    const payload = new TextEncoder().encode(JSON.stringify(pack));
    expect(payload.byteLength).toBeLessThan(1024 * 1024);
    const admission = decodePayload({ node: 'tent-2', payload, arrivalMs: Date.UTC(2026, 3, 2) });
    expect([admission.admitted.length, admission.refused.length]).toEqual([admitted, refused]);
  });
});
