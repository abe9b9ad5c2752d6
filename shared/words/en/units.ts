// Units that languages write their own way, in English.
export const units = { humidity: '%RH' };
