// What finished batches teach, as it is sent to people: take beside exposure, and which goes with which as strongly as their number allows.
import type { LearnedBatch, LearningView } from '../../shared/api/learning.ts';
import type { Batch } from '../../shared/healing/batch.ts';
import { type Association, findAssociations } from '../../shared/learning/association.ts';
import { batchExposures } from '../../shared/learning/batch-exposures.ts';
import { wilsonInterval } from '../../shared/learning/wilson-interval.ts';
import { SECOND_MS, utcText } from '../../shared/units.ts';
import type { ExposureBook } from '../exposure/exposure-book.ts';
import type { BatchFigures } from '../record/measure-batch.ts';
import type { Store } from '../store/store.ts';
import { rounded } from './rounded.ts';

/** The newest that are compared: older ones come of another crew, house and season, and each costs a pass over its readings. */
const MOST_BATCHES = 200;
/** What is not measured by then is left for the next who asks: nobody waits longer. */
const PATIENCE_MS = 5 * SECOND_MS;

interface LearningParts {
  readonly store: Store;
  readonly exposures: ExposureBook;
}

/** Measures the finished batches one after the other, as many as fit into the time of an answer. */
export async function viewLearning({ store, exposures }: LearningParts): Promise<LearningView> {
  const finished = await finishedBatches(store);
  const names = new Map((await store.chambers.listWithRetired()).map(({ id, name }) => [id, name]));
  const learned: LearnedBatch[] = [];
  for await (const { batch, figures } of measureInTime(finished, exposures)) {
    const one = learnFrom(batch, figures, names.get(batch.chamberId) ?? 'removed chamber');
    if (one !== null) learned.push(one);
  }
  const pending = finished.length - learned.length;
  const lost = learned.map(({ take, exposures: own }) => ({ lost: 1 - take.share, exposures: own }));
  return { batches: learned, associations: pending > 0 ? [] : findAssociations(lost).map(viewAssociation), pending };
}

async function finishedBatches(store: Store): Promise<Batch[]> {
  const found: Batch[] = [];
  let cursor: string | undefined;
  do {
    const page = await store.batches.page({ limit: 500, cursor });
    found.push(...page.items.filter(({ closedMs, takenPlants, plants }) => isCounted(closedMs, takenPlants, plants)));
    cursor = page.nextCursor ?? undefined;
  } while (cursor !== undefined && found.length < MOST_BATCHES);
  return found.slice(0, MOST_BATCHES);
}

function isCounted(closedMs: number | null, takenPlants: number | null, plants: number): boolean {
  return closedMs !== null && takenPlants !== null && wilsonInterval(takenPlants, plants) !== null;
}

async function* measureInTime(
  batches: readonly Batch[],
  exposures: ExposureBook,
): AsyncGenerator<{ batch: Batch; figures: BatchFigures }> {
  let isLate = false;
  const patience = setTimeout(() => {
    isLate = true;
  }, PATIENCE_MS);
  try {
    for (const batch of batches) {
      const figures = isLate ? exposures.keptOf(batch.id) : await exposures.figuresOf(batch);
      if (figures !== null) yield { batch, figures };
    }
  } finally {
    clearTimeout(patience);
  }
}

function learnFrom(batch: Batch, figures: BatchFigures, chamberName: string): LearnedBatch | null {
  const { id, code, scion, rootstock, plants, takenPlants, closedMs, finishedMs } = batch;
  const take = takenPlants === null ? null : wilsonInterval(takenPlants, plants);
  if (take === null || takenPlants === null || closedMs === null || finishedMs === null) return null;
  return {
    ...{ id, code, chamberName, scion, rootstock, plants, takenPlants, take },
    closedAt: utcText(closedMs),
    finishedAt: utcText(finishedMs),
    exposures: batchExposures(figures),
    unknownHours: rounded(figures.whole?.unknownHours ?? 0, 3) ?? 0,
  };
}

function viewAssociation({ exposure, batches, tau, pairs, p, adjustedP, strength }: Association) {
  return { exposure, batches, tau, pairs, p, adjustedP, strength };
}
