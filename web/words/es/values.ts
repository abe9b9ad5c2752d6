// In Spanish: values and times: units, ages, what a figure is worth.

import { many } from '../../strings.ts';
import type { values as english } from '../en/values.ts';

export const values: typeof english = {
  locale: 'es-ES',
  units: { humidity: '%HR', percent: '%', kpa: 'kPa', none: '–' },
  quantities: {
    temperature: 'Temperatura',
    humidity: 'Humedad',
    vpd: 'Poder desecante del aire (DPV)',
    vpdShort: 'DPV',
    limits: (low, high) => `plan ${low}–${high}`,
    beyond: 'fuera del plan',
  },
  age: {
    justNow: 'ahora mismo',
    seconds: (count) => `${count} s`,
    minutes: (count) => `${count} min`,
    hours: (hours, minutes) => (minutes === 0 ? `${hours} h` : `${hours} h ${minutes} min`),
    days: (count) => many(count, 'día', 'días'),
    ago: (age) => `hace ${age}`,
  },
  when: {
    tomorrow: (time) => `mañana ${time}`,
    yesterday: (time) => `ayer ${time}`,
    on: (day, time) => `${day} ${time}`,
    at: (time) => `a las ${time}`,
  },
  certainty: {
    plusMinus: (value, uncertainty) => `${value} ± ${uncertainty}`,
    vpd: (text) => `DPV ${text} kPa`,
    dewPoint: (text, unit) => `punto de rocío ${text} ${unit}`,
    film: {
      wet: 'Se espera el plástico mojado',
      dry: 'Se espera el plástico seco',
      unknown: 'Plástico: no se sabe si mojado o seco',
    },
    above: (degrees, unit, basis) => `punto de rocío ${degrees} ${unit} por encima, según ${basis}`,
    below: (degrees, unit, basis) => `punto de rocío ${degrees} ${unit} por debajo, según ${basis}`,
    basis: {
      'film probe': 'la sonda del plástico',
      'house air, an estimate': 'el aire del invernadero, una estimación',
      'nothing to tell by': 'nada',
    },
    dryAhead: (limit, time) =>
      `Se acerca la sequedad, una estimación: por debajo de ${limit} %HR hacia las ${time}. Mire el nebulizador y las juntas.`,
    dryAheadBetween: (limit, from, to) =>
      `Se acerca la sequedad, una estimación: por debajo de ${limit} %HR entre las ${from} y las ${to}. Mire el nebulizador y las juntas.`,
  },
};
