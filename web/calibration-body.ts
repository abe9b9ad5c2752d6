// The form of a calibration → what is sent, and the service's faults → the fields they belong to. Pure.
import { type SaltName, saltHumidity, saltNames } from '../shared/readings/salt-points.ts';
import { ApiProblem, type FieldFault } from './api.ts';
import { words } from './late-strings.ts';
import { instantOfWallTime } from './when.ts';

/** What the form holds, sent to POST /probes/:id/calibrations. Throws an ApiProblem with the fields at fault. */
export function calibrationBody(fields: FormData, zone: string): object {
  const common = { note: textOf(fields, 'note'), ...fromOf(fields, zone) };
  if (textOf(fields, 'kind') === 'two-point') return { kind: 'two-point', ...common, humidity: pointsOf(fields) };
  return {
    ...{ kind: 'offset', ...common },
    ...offsetOf(fields, 'temperature'),
    ...offsetOf(fields, 'humidity'),
  };
}

const fieldOf: Record<string, string> = {
  '/temperature/offset': 'temperatureOffset',
  '/humidity/offset': 'humidityOffset',
  '/humidity/0/measured': 'measured0',
  '/humidity/1/measured': 'measured1',
  // What is wrong with both points together is said at the second one.
  '/humidity': 'measured1',
  '': 'temperatureOffset',
};

/** The refusal of the service with each fault at its field. */
export function atFields(problem: ApiProblem): ApiProblem {
  const faults = problem.faults.map(({ where, reason }): FieldFault => ({ where: fieldOf[where] ?? where, reason }));
  return new ApiProblem(problem.message, problem.status, faults);
}

function fromOf(fields: FormData, zone: string): { from?: string } {
  const wall = textOf(fields, 'from');
  const atMs = wall === '' ? null : instantOfWallTime(wall, zone);
  return atMs === null ? {} : { from: new Date(atMs).toISOString() };
}

function offsetOf(fields: FormData, quantity: 'temperature' | 'humidity') {
  const offset = decimalOf(fields, `${quantity}Offset`);
  return offset === null ? {} : { [quantity]: { offset } };
}

function pointsOf(fields: FormData) {
  const airTemperature = decimalOf(fields, 'airTemperature') ?? Number.NaN;
  return [0, 1].map((index) => {
    const reference = saltHumidity(saltOf(fields, `salt${index}`), airTemperature);
    if (reference === null) {
      const { outsideSalts } = words.calibration;
      throw new ApiProblem(outsideSalts, 400, [{ where: 'airTemperature', reason: outsideSalts }]);
    }
    return { reference, measured: decimalOf(fields, `measured${index}`) };
  });
}

function saltOf(fields: FormData, name: string): SaltName {
  return saltNames.find((salt) => salt === textOf(fields, name)) ?? 'sodium chloride';
}

/** A number with point or comma; null when the field is empty or holds none. */
function decimalOf(fields: FormData, name: string): number | null {
  const text = textOf(fields, name).replace(',', '.');
  const value = Number(text);
  return text === '' || Number.isNaN(value) ? null : value;
}

function textOf(fields: FormData, name: string): string {
  const value = fields.get(name);
  return typeof value === 'string' ? value.trim() : '';
}
