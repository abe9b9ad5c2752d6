// In Spanish: the page of alarms.

import { many } from '../../strings.ts';
import type { alarms as english } from '../en/alarms.ts';

export const alarms: typeof english = {
  alarms: {
    title: 'Alarmas',
    ofService: 'Alarma del propio Takewell',
    active: 'En vigor',
    recent: 'Anteriores',
    showAll: (count) => `Mostrar las ${count}`,
    noneActive: 'No hay ninguna alarma en vigor.',
    noneRecent: 'Aún no ha habido ninguna alarma.',
    before: 'Mostrar las de antes',
    loading: 'Pidiendo las alarmas…',
    chamberBatch: (chamber, batch) => `${chamber}, lote ${batch}`,
    summary: (open, taken, quiet) => {
      const parts = [
        ...(open === 0 ? [] : [`${open} sin confirmar`]),
        ...(taken === 0 ? [] : [`${taken} confirmadas o aplazadas`]),
        ...(quiet === 0 ? [] : [`${quiet} en silencio por ahora`]),
      ];
      return `${parts.join(', ')}.`;
    },
    newAlarm: (chamber, sentence) => `Alarma en ${chamber}: ${sentence}`,
    over: (chamber) => `La alarma en ${chamber} ha terminado`,
  },
  howOften: {
    title: 'Con qué frecuencia',
    caption: 'Alarmas de los últimos 30 días junto a sus metas',
    columns: { measure: 'Últimos 30 días', found: 'Hallado', target: 'Meta' },
    none: (span) => `No hubo ninguna alarma en los últimos ${span}.`,
    count: (count, span) => `${many(count, 'alarma', 'alarmas')} en ${span}.`,
    days: (count) => many(count, 'día', 'días'),
    hours: (count) => many(count, 'hora', 'horas'),
    tooEarly: 'aún es pronto para decirlo',
    within: 'Está dentro de las metas.',
    many: 'Es más de lo bueno: mire qué se repite más.',
    tooMany: 'Es más de lo que nadie puede atender: mire qué se repite más.',
    tooStale: 'Demasiadas duraron más de un día: resuélvalas o aplácelas con un motivo.',
    someChatter: 'Algunas repiquetean, y eso enseña a no escuchar.',
    aDay: 'Alarmas al día',
    aDayTarget: (acceptable, most) => `${acceptable} o menos, ${most} como mucho`,
    busiestDay: 'En el día con más',
    shares: { low: 'Prioridad baja', medium: 'Prioridad media', high: 'Alta y crítica' },
    stale: 'En vigor más de un día, en el peor día',
    chattering: 'Repiquetean',
    percent: (percent) => `${percent} %`,
    about: (percent) => `alrededor del ${percent}`,
    fewerThan: (count) => `menos de ${count}`,
    atMost: (count) => `${count} como mucho`,
    noneAllowed: 'ninguna',
    chatteringTitle: 'Qué repiquetea',
    mostTitle: 'Qué se repite más',
    source: (chamber, rule, alarms) => `${chamber}: ${rule.toLowerCase()} (${many(alarms, 'alarma', 'alarmas')})`,
    chatteringAdvice: 'Empezó tres veces en un minuto: mire la sonda, su cable y dónde cuelga.',
    goneChamber: 'Una cámara que ya no está',
    basis: 'Metas de IEC 62682 para todas las alarmas que atiende una persona. Juzgan las alarmas, no a las personas.',
  },
};
