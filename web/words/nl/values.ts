// In Dutch: values and times: units, ages, what a figure is worth.

import { many } from '../../strings.ts';
import type { values as english } from '../en/values.ts';

export const values: typeof english = {
  locale: 'nl-NL',
  units: { humidity: '%RV', percent: '%', kpa: 'kPa', none: '–' },
  quantities: {
    temperature: 'Temperatuur',
    humidity: 'Luchtvochtigheid',
    vpd: 'Drogende kracht van de lucht (VPD)',
    vpdShort: 'VPD',
    limits: (low, high) => `plan ${low}–${high}`,
    beyond: 'buiten het plan',
  },
  age: {
    justNow: 'zojuist',
    seconds: (count) => `${count} s`,
    minutes: (count) => `${count} min`,
    hours: (hours, minutes) => (minutes === 0 ? `${hours} u` : `${hours} u ${minutes} min`),
    days: (count) => many(count, 'dag', 'dagen'),
    ago: (age) => `${age} geleden`,
  },
  when: {
    tomorrow: (time) => `morgen ${time}`,
    yesterday: (time) => `gisteren ${time}`,
    on: (day, time) => `${day} ${time}`,
    at: (time) => `om ${time}`,
  },
  certainty: {
    plusMinus: (value, uncertainty) => `${value} ± ${uncertainty}`,
    vpd: (text) => `VPD ${text} kPa`,
    dewPoint: (text, unit) => `dauwpunt ${text} ${unit}`,
    film: {
      wet: 'Folie wordt nat verwacht',
      dry: 'Folie wordt droog verwacht',
      unknown: 'Folie: nat of droog is niet te zeggen',
    },
    above: (degrees, unit, basis) => `dauwpunt ${degrees} ${unit} erboven, volgens ${basis}`,
    below: (degrees, unit, basis) => `dauwpunt ${degrees} ${unit} eronder, volgens ${basis}`,
    basis: {
      'film probe': 'de folievoeler',
      'house air, an estimate': 'de kaslucht, een schatting',
      'nothing to tell by': 'niets',
    },
    dryAhead: (limit, time) =>
      `Droogte op komst, een schatting: onder ${limit} %RV rond ${time}. Kijk naar vernevelaar en naden.`,
    dryAheadBetween: (limit, from, to) =>
      `Droogte op komst, een schatting: onder ${limit} %RV tussen ${from} en ${to}. Kijk naar vernevelaar en naden.`,
  },
};
