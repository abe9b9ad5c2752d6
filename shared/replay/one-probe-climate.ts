// The climate of a chamber with a single canopy probe: every value is that probe's own, the same as `chamberClimate` makes it. A replay asks for
// it hundreds of thousands of times, so what no rule looks at is not computed.
import { dewPoint, vapourKpa, vpdKpa } from '../air/vapour.ts';
import type { ChamberClimate } from '../readings/chamber-climate.ts';
import { type JudgedSample, trustedPart } from './judged-probe.ts';

/** The climate while the reading is fresh; a half that is not to be trusted is null. */
export class OneProbeClimate implements ChamberClimate {
  readonly canopyProbes = 1;
  readonly healthyProbes: number;
  readonly timeMs: number | null;
  readonly temperature: number | null;
  readonly humidity: number | null;

  constructor(newest: JudgedSample) {
    const { timeMs, temperature, humidity } = trustedPart(newest);
    const isHealthy = temperature !== null || humidity !== null;
    this.healthyProbes = isHealthy ? 1 : 0;
    this.timeMs = isHealthy ? timeMs : null;
    this.temperature = temperature;
    this.humidity = humidity;
  }

  get hottest(): number | null {
    return this.temperature;
  }

  get coldest(): number | null {
    return this.temperature;
  }

  get driest(): number | null {
    return this.humidity;
  }

  get wettest(): number | null {
    return this.humidity;
  }

  get vpdKpa(): number | null {
    return this.temperature === null || this.humidity === null ? null : vpdKpa(this.temperature, this.humidity);
  }

  get dewPoint(): number | null {
    if (this.temperature === null || this.humidity === null) return null;
    return dewPoint(vapourKpa(this.temperature, this.humidity));
  }
}
