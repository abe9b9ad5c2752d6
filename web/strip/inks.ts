// The colours of the strip, the same as in style/base.css: a canvas cannot read them from there at each stroke.

export const inks = {
  paper: '#f6f3ea',
  ink: '#1d2a25',
  soft: '#5c675f',
  line: '#d5d0c1',
  cell: '#e2decf',
  band: '#d3e2cd',
  bandAhead: '#e4ebdc',
  bandEdge: '#6f8f6c',
  humidity: '#14576a',
  humidityCloud: 'rgba(20, 87, 106, 0.20)',
  house: '#8c9690',
  temperature: '#8a4315',
  temperatureCloud: 'rgba(138, 67, 21, 0.20)',
  limit: '#b98a66',
  now: '#b3261e',
  alarmWash: 'rgba(179, 38, 30, 0.10)',
  hatch: '#b9b5a6',
  holdWash: 'rgba(92, 103, 95, 0.12)',
} as const;

const face = 'system-ui, "Segoe UI", Roboto, "Liberation Sans", sans-serif';

/** A canvas font of this size in CSS pixels at the given device ratio. */
export function inkFont(size: number, ratio: number, weight = 400): string {
  return `${weight} ${Math.round(size * ratio)}px ${face}`;
}
