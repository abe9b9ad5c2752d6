// In Spanish: the next step of the opening.

import { many } from '../../strings.ts';
import type { venting as english } from '../en/venting.ts';

export const venting: typeof english = {
  venting: {
    title: 'Siguiente paso de la ventilación',
    asOf: (time) => `Según el aire de las ${time}.`,
    none: (reason) => `No se propone ninguna abertura. ${reason}`,
    step: (low, high) => `El plan quiere ${low}–${high} %HR`,
    stepNow: (step) => `${step} ahora.`,
    stepFrom: (step, time) => `${step} desde ${time}; no antes.`,
    pace: (perHour) => `En la primera hora la humedad baja ${perHour} %HR.`,
    opened: (percent) => `Abierto al ${percent} %`,
    logged: (percent, time) => `Anotado: abertura ${percent} %, ${time}`,
    askErect: (percent, time) =>
      `Abierto al ${percent} % (${time}). ¿Están erguidas las plantas? Mire un cuarto de hora después de abrir.`,
    erect: 'Erguidas',
    limp: 'Lacias',
    answerFor: (answer, percent) => `${answer}, tras abrir al ${percent} %`,
    closeTo: (percent) => (percent === 0 ? 'Ya está cerrado' : `Cerrado al ${percent} %`),
    misted: 'Nebulizado',
    hold: 'Pausar el lote',
    holdReason: 'Plantas lacias después de abrir',
    limpDone: 'Cerrado, nebulizado y en pausa. Avise cuando se levanten.',
    basis: 'En qué se apoya',
    basisWords: (readings, windows, percent, time) =>
      `${many(readings, 'lectura', 'lecturas')} tras ${many(windows, 'cambio', 'cambios')} de abertura, con al menos el ${percent} % explicado; calculado ${time}.`,
    caption: 'Con qué rapidez se renueva el aire del túnel con cada abertura probada',
    columns: { gap: 'Abertura', rate: 'Veces por hora', error: 'Error estándar', windows: 'Cambios' },
    leftOut: 'Cambios que no dicen nada',
    leftOutLine: (percent, time, reason) => `${percent} %, ${time}: ${reason}`,
    caution: 'Se calcula solo a partir del aire. Si las plantas lo aguantan, solo usted puede verlo.',
  },
};
