// When, where and to whom a message is said, and so in which words.
import type { ServiceSaying, TemperatureUnit } from '../../shared/saying.ts';
import { wordsOf } from '../../shared/words/words-of.ts';
import type { Person } from '../store/store.ts';

/** Of a person, what a message may say of them. */
export interface Hearer {
  readonly name: string;
  readonly email: string | null;
  readonly phoneNumber: string | null;
}

/** How the site wants it said. */
export interface SiteManner {
  /** IANA time zone. */
  readonly zone: string;
  readonly siteName: string;
  readonly temperatureUnit: TemperatureUnit;
}

export interface Occasion {
  readonly nowMs: number;
  readonly zone: string;
  /** Without a slash at the end. */
  readonly publicUrl: string;
  readonly siteName: string;
  /** null = a program. */
  readonly person: Hearer | null;
  readonly saying: ServiceSaying;
}

/** In the person's language and unit; a program and a person who chose none hear English and the unit of the site. */
export function makeOccasion(nowMs: number, publicUrl: string, site: SiteManner, person: Person | null): Occasion {
  const { zone, siteName, temperatureUnit } = site;
  const saying = {
    words: wordsOf[person?.language ?? 'en'],
    temperatureUnit: person?.temperatureUnit ?? temperatureUnit,
  };
  const hearer = person && { name: person.name, email: person.email, phoneNumber: person.phoneNumber };
  return { nowMs, publicUrl, zone, siteName, person: hearer, saying };
}
