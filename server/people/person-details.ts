// What is known of a person who has just been added: how to reach and address them comes later.
import type { NewPerson, Person } from '../store/store.ts';

/** The person as the store holds them right after `add`. */
export function withoutDetails(person: NewPerson): Person {
  return {
    ...person,
    ...{ email: null, phoneNumber: null, language: null, temperatureUnit: null, quietFrom: null, quietTo: null },
  };
}
