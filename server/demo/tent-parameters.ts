// The sizes of the simulated tent, all per square metre of bench. Ours: a plausible tent, not a measured one.

export interface TentParameters {
  /** Dry air over one square metre of bench, kg/m². */
  readonly airMassKg: number;
  /** Heat kept by air, leaves and clips, J/(K·m²). */
  readonly airHeatJ: number;
  /** Heat kept by the film and the water on it, J/(K·m²). */
  readonly filmHeatJ: number;
  /** Heat kept by trays and wet substrate, J/(K·m²). */
  readonly benchHeatJ: number;
  /** Air and leaves ↔ film, convection and radiation, W/(K·m²). */
  readonly airToFilmW: number;
  /** Film ↔ house, W/(K·m²). */
  readonly filmToHouseW: number;
  /** Air ↔ bench, W/(K·m²). */
  readonly airToBenchW: number;
  /** Underside of the bench ↔ house, W/(K·m²). */
  readonly benchToHouseW: number;
  /** Shares of the sun that falls on the film: taken up by film, leaves and bench; the rest is reflected. */
  readonly sunToFilm: number;
  readonly sunToLeaves: number;
  readonly sunToBench: number;
  /** Vapour conductances, kg/(s·m²) for a difference of 1 kg/kg: film, wet bench and floor, plants and substrate. */
  readonly filmVapourKg: number;
  readonly floorVapourKg: number;
  readonly plantVapourKg: number;
  /** Water that film and floor can hold before it runs off, kg/m², and the film below which they count as partly dry. */
  readonly filmHoldsKg: number;
  readonly floorHoldsKg: number;
  readonly filmWetKg: number;
  readonly floorWetKg: number;
  /** Water given by the fogger while it runs, kg/(s·m²). */
  readonly foggerKg: number;
  /** Air changes an hour through leaks when closed, and through the gap when it is fully open. */
  readonly leakPerHour: number;
  readonly openPerHour: number;
}

/**
 * A bench tent 40 cm high under white film, about 1.6 m² of film to a square metre of bench.
 * Surface coefficients are textbook sizes: free convection about 4 W/(K·m²), radiation about 5; the outside is stirred by the
 * house's fans. The film's vapour conductance follows from its convective one
 * (Lewis relation, 1 006 J/(K·kg)); that of the bench is half of it to a square metre, because leaves and clips lie over the wet trays.
 */
export const plausibleTent: TentParameters = {
  airMassKg: 0.48,
  airHeatJ: 5_000,
  filmHeatJ: 1_200,
  benchHeatJ: 55_000,
  airToFilmW: 13,
  filmToHouseW: 24,
  airToBenchW: 7,
  benchToHouseW: 4,
  sunToFilm: 0.08,
  sunToLeaves: 0.4,
  sunToBench: 0.2,
  filmVapourKg: 0.0064,
  floorVapourKg: 0.0022,
  plantVapourKg: 0.0008,
  filmHoldsKg: 0.05,
  floorHoldsKg: 0.15,
  filmWetKg: 0.02,
  floorWetKg: 0.12,
  foggerKg: 2.8e-5,
  leakPerHour: 0.8,
  openPerHour: 60,
};
