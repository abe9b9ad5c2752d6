// Stretches of time and forecasts, in English.
export const spans = {
  underAMinute: 'less than a minute',
  minutes: (count: number) => `${count} min`,
  hours: (hours: number, minutes: number) => `${hours} h ${minutes} min`,
};

export const ahead = {
  anyMinute: (limit: string) => `reaches ${limit} any minute`,
  inAbout: (limit: string, minutes: number) => `reaches ${limit} in about ${minutes} min`,
  orMore: (minutes: number) => `(${minutes} or more)`,
  between: (low: number, high: number) => `(${low}–${high})`,
};
