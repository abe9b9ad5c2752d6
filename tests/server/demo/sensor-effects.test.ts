// What a simulated probe makes of the air: lag, noise, resolution and the cap at 100 %RH.
import { describe, expect, it } from 'vitest';
import { createSensor } from '../../../server/demo/sensor-effects.ts';

const traits = { seed: 9, temperatureOffset: 0, humidityOffset: 0 };

describe('createSensor', () => {
  it('starts at the first air it meets and follows a step with its lag', () => {
    const sensor = createSensor(traits);
    sensor.follow(20, 60, 10);
    expect(Math.abs(sensor.read().temperature - 20)).toBeLessThan(0.1);
    sensor.follow(30, 90, 45);
    // One time constant of temperature (45 s): 63 % of the way.
    expect(Math.abs(sensor.read().temperature - 26.32)).toBeLessThan(0.1);
    sensor.follow(30, 90, 600);
    expect(Math.abs(sensor.read().temperature - 30)).toBeLessThan(0.1);
    expect(Math.abs(sensor.read().humidity - 90)).toBeLessThan(0.6);
  });

  it('lags the same in one long step as in many short ones', () => {
    const [long, short] = [createSensor(traits), createSensor(traits)];
    for (const sensor of [long, short]) sensor.follow(20, 60, 1);
    long.follow(25, 80, 60);
    for (let step = 0; step < 6; step += 1) short.follow(25, 80, 10);
    expect(short.read()).toEqual(long.read());
  });

  it('keeps noise within about ±0.05 °C and ±0.4 %RH and writes two decimals', () => {
    const sensor = createSensor(traits);
    sensor.follow(22, 80, 10);
    const readings = Array.from({ length: 1000 }, sensor.read);
    const within = readings.filter((r) => Math.abs(r.temperature - 22) <= 0.05 && Math.abs(r.humidity - 80) <= 0.4);
    expect(within.length).toBeGreaterThan(930);
    expect(new Set(readings.map((r) => r.temperature)).size).toBeGreaterThan(5);
    for (const { temperature, humidity } of readings) {
      expect(Number(temperature.toFixed(2))).toBe(temperature);
      expect(Number(humidity.toFixed(2))).toBe(humidity);
    }
  });

  it('is off by its offset', () => {
    const sensor = createSensor({ ...traits, temperatureOffset: 0.5, humidityOffset: -2 });
    sensor.follow(22, 80, 10);
    const { temperature, humidity } = sensor.read();
    expect(Math.abs(temperature - 22.5)).toBeLessThan(0.1);
    expect(Math.abs(humidity - 78)).toBeLessThan(0.6);
  });

  it('reads no more than 100 %RH and no less than 0', () => {
    const wet = createSensor({ ...traits, humidityOffset: 3 });
    wet.follow(22, 99, 10);
    expect(wet.read().humidity).toBe(100);
    const dry = createSensor({ ...traits, humidityOffset: -3 });
    dry.follow(22, 1, 10);
    expect(dry.read().humidity).toBe(0);
  });
});
