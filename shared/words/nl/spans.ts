// Stretches of time and forecasts, in Dutch.
import type { SharedWords } from '../shared-words.ts';

export const spans: SharedWords['spans'] = {
  underAMinute: 'minder dan een minuut',
  minutes: (count) => `${count} min`,
  hours: (hours, minutes) => `${hours} u ${minutes} min`,
};

export const ahead: SharedWords['ahead'] = {
  anyMinute: (limit) => `komt elk moment op ${limit}`,
  inAbout: (limit, minutes) => `komt over ongeveer ${minutes} min op ${limit}`,
  orMore: (minutes) => `(${minutes} of meer)`,
  between: (low, high) => `(${low}–${high})`,
};
