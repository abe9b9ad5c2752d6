// In English: the next step of the opening.
import { many } from '../../strings.ts';

export const venting = {
  venting: {
    title: 'Next step of the opening',
    asOf: (time: string) => `By the air at ${time}.`,
    none: (reason: string) => `No gap is proposed. ${reason}`,
    step: (low: string, high: string) => `The plan wants ${low}–${high} %RH`,
    stepNow: (step: string) => `${step} now.`,
    stepFrom: (step: string, time: string) => `${step} from ${time}; not before.`,
    pace: (perHour: string) => `In the first hour humidity falls by ${perHour} %RH.`,
    opened: (percent: number) => `Opened to ${percent} %`,
    logged: (percent: number, time: string) => `Logged: gap ${percent} %, ${time}`,
    askErect: (percent: number, time: string) =>
      `Opened to ${percent} % (${time}). Do the scions stand erect? Look a quarter of an hour after opening.`,
    erect: 'Erect',
    limp: 'Limp',
    answerFor: (answer: string, percent: number) => `${answer}, after opening to ${percent} %`,
    closeTo: (percent: number) => (percent === 0 ? 'Closed now' : `Closed to ${percent} %`),
    misted: 'Misted',
    hold: 'Hold the batch',
    holdReason: 'Scions limp after opening',
    limpDone: 'Closed, misted and on hold. Tell when they stand again.',
    basis: 'What this rests on',
    basisWords: (readings: number, windows: number, percent: number, time: string) =>
      `${many(readings, 'reading', 'readings')} after ${many(windows, 'change', 'changes')} of the gap, of which at least ${percent} % is explained; worked out ${time}.`,
    caption: 'How fast the air of the tent is exchanged at each gap that was tried',
    columns: { gap: 'Gap', rate: 'Times an hour', error: 'Standard error', windows: 'Changes' },
    leftOut: 'Changes that tell nothing',
    leftOutLine: (percent: number, time: string, reason: string) => `${percent} %, ${time}: ${reason}`,
    caution: 'It is worked out from the air alone. Whether the scions stand it, only you can see.',
  },
};
