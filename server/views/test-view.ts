// What came of a test of a way alerts can go, as it is sent to whoever asked for it, in their words.
import type { DeliveryResult } from '../../shared/api/telling.ts';
import { type Finding, sayWholeFinding } from '../../shared/finding.ts';
import { utcText } from '../../shared/units.ts';
import type { SharedWords } from '../../shared/words/shared-words.ts';

interface Tested {
  readonly delivered: boolean;
  readonly finding: Finding;
  readonly atMs: number;
}

export function viewTest({ delivered, finding, atMs }: Tested, words: SharedWords): DeliveryResult {
  return { delivered, reason: sayWholeFinding(finding, words), at: utcText(atMs) };
}
