// In Dutch: the next step of the opening.

import { many } from '../../strings.ts';
import type { venting as english } from '../en/venting.ts';

export const venting: typeof english = {
  venting: {
    title: 'Volgende stap van het luchten',
    asOf: (time) => `Naar de lucht van ${time}.`,
    none: (reason) => `Er wordt geen kier voorgesteld. ${reason}`,
    step: (low, high) => `Het plan wil ${low}–${high} %RV`,
    stepNow: (step) => `${step}, nu.`,
    stepFrom: (step, time) => `${step} vanaf ${time}; niet eerder.`,
    pace: (perHour) => `In het eerste uur daalt de luchtvochtigheid met ${perHour} %RV.`,
    opened: (percent) => `Geopend tot ${percent} %`,
    logged: (percent, time) => `Genoteerd: kier ${percent} %, ${time}`,
    askErect: (percent, time) =>
      `Geopend tot ${percent} % (${time}). Staan de enten rechtop? Kijk een kwartier na het openen.`,
    erect: 'Rechtop',
    limp: 'Slap',
    answerFor: (answer, percent) => `${answer}, na openen tot ${percent} %`,
    closeTo: (percent) => (percent === 0 ? 'Nu dicht' : `Dicht tot ${percent} %`),
    misted: 'Geneveld',
    hold: 'Partij pauzeren',
    holdReason: 'Enten slap na het openen',
    limpDone: 'Dicht, geneveld en gepauzeerd. Zeg het als ze weer staan.',
    basis: 'Waar dit op rust',
    basisWords: (readings, windows, percent, time) =>
      `${many(readings, 'meting', 'metingen')} na ${many(windows, 'verandering', 'veranderingen')} van de kier, waarvan minstens ${percent} % is verklaard; berekend ${time}.`,
    caption: 'Hoe snel de lucht van de tent wordt ververst bij elke kier die is geprobeerd',
    columns: { gap: 'Kier', rate: 'Keer per uur', error: 'Standaardfout', windows: 'Veranderingen' },
    leftOut: 'Veranderingen die niets zeggen',
    leftOutLine: (percent, time, reason) => `${percent} %, ${time}: ${reason}`,
    caution: 'Dit is alleen uit de lucht berekend. Of de enten het verdragen, kun alleen jij zien.',
  },
};
