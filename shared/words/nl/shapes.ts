// What a field of a request must be, in Dutch.
import type { SharedWords } from '../shared-words.ts';

export const shapes: SharedWords['shapes'] = {
  passwordShort: 'neem minstens 10 tekens; een korte zin is makkelijk te onthouden',
  passwordLong: 'hoogstens 200 tekens',
  writeTime: 'schrijf een tijd volgens RFC 3339, bijvoorbeeld 2026-03-02T07:00:00Z',
  writeTimeOfDay: 'schrijf een tijd van de dag als UU:MM, bijvoorbeeld 07:00',
  writeClock: 'schrijf het als 22:30',
  writePhone: 'schrijf het met de landcode, zoals +31612345678',
  giveName: 'geef een naam',
  nameLong: 'hoogstens 80 tekens',
  sayWhy: 'zeg waarom, zodat anderen het weten',
  giveCode: 'geef de partij een code',
  sayGap: 'zeg hoe ver de tent open is, 0–100 %',
  sayMinutes: 'zeg hoe lang je erin werkt, 5–60 minuten',
  writeNote: 'schrijf de notitie',
  nameBatch: 'noem minstens één partij',
  fewerBatches: 'hoogstens acht partijen',
  checkId: 'gebruik kleine letters, cijfers en streepjes',
  jsonPointer: 'schrijf een JSON Pointer, bijvoorbeeld /air/temperature, of laat leeg voor het hele bericht',
  whereTemperature: 'zeg waar de temperatuur staat, of de luchtvochtigheid, of allebei',
  ownTopics: 'topics onder takewell/v1 hebben geen vertaling nodig',
  cursor: 'begin zonder cursor, of geef de nextCursor van de vorige pagina',
  notRight: 'klopt niet',
};
