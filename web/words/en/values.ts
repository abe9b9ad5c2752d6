// In English: values and times: units, ages, what a figure is worth.
import { many } from '../../strings.ts';

export const values = {
  locale: 'en-GB',
  units: {
    humidity: '%RH',
    percent: '%',
    kpa: 'kPa',
    none: '–',
  },
  quantities: {
    temperature: 'Temperature',
    humidity: 'Humidity',
    vpd: 'Drying power of the air (VPD)',
    vpdShort: 'VPD',
    limits: (low: string, high: string) => `plan ${low}–${high}`,
    beyond: 'outside the plan',
  },
  age: {
    justNow: 'just now',
    seconds: (count: number) => `${count} s`,
    minutes: (count: number) => `${count} min`,
    hours: (hours: number, minutes: number) => (minutes === 0 ? `${hours} h` : `${hours} h ${minutes} min`),
    days: (count: number) => many(count, 'day', 'days'),
    ago: (age: string) => `${age} ago`,
  },
  when: {
    tomorrow: (time: string) => `tomorrow ${time}`,
    yesterday: (time: string) => `yesterday ${time}`,
    on: (day: string, time: string) => `${day} ${time}`,
    at: (time: string) => `at ${time}`,
  },
  certainty: {
    plusMinus: (value: string, uncertainty: string) => `${value} ± ${uncertainty}`,
    vpd: (text: string) => `VPD ${text} kPa`,
    dewPoint: (text: string, unit: string) => `dew point ${text} ${unit}`,
    film: { wet: 'Film expected wet', dry: 'Film expected dry', unknown: 'Film: wet or dry cannot be told' },
    above: (degrees: string, unit: string, basis: string) => `dew point ${degrees} ${unit} above it, by ${basis}`,
    below: (degrees: string, unit: string, basis: string) => `dew point ${degrees} ${unit} below it, by ${basis}`,
    basis: {
      'film probe': 'the film probe',
      'house air, an estimate': 'house air, an estimate',
      'nothing to tell by': 'nothing',
    },
    dryAhead: (limit: string, time: string) =>
      `Dryness ahead, an estimate: below ${limit} %RH at about ${time}. Look at fogger and seams.`,
    dryAheadBetween: (limit: string, from: string, to: string) =>
      `Dryness ahead, an estimate: below ${limit} %RH between ${from} and ${to}. Look at fogger and seams.`,
  },
};
