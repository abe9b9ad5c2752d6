// Stretches of time and forecasts, in Spanish.
import type { SharedWords } from '../shared-words.ts';

export const spans: SharedWords['spans'] = {
  underAMinute: 'menos de un minuto',
  minutes: (count) => `${count} min`,
  hours: (hours, minutes) => `${hours} h ${minutes} min`,
};

export const ahead: SharedWords['ahead'] = {
  anyMinute: (limit) => `llega a ${limit} en cualquier momento`,
  inAbout: (limit, minutes) => `llega a ${limit} en unos ${minutes} min`,
  orMore: (minutes) => `(${minutes} o más)`,
  between: (low, high) => `(${low}–${high})`,
};
