// The part of psychrolib (untyped) that the reference checks use. SI units: °C, Pa, kg/kg, relative humidity 0–1.
declare module 'psychrolib' {
  interface Psychrolib {
    readonly SI: number;
    SetUnitSystem(unitSystem: number): void;
    GetSatVapPres(temperature: number): number;
    GetVapPresFromRelHum(temperature: number, ratio: number): number;
    GetTDewPointFromRelHum(temperature: number, ratio: number): number;
    GetTWetBulbFromRelHum(temperature: number, ratio: number, pressurePa: number): number;
    GetHumRatioFromRelHum(temperature: number, ratio: number, pressurePa: number): number;
    GetVaporPressureDeficit(temperature: number, humRatio: number, pressurePa: number): number;
    GetStandardAtmPressure(altitudeM: number): number;
  }
  const psychrolib: Psychrolib;
  export = psychrolib;
}
