// What a field of a request must be, in Spanish.
import type { SharedWords } from '../shared-words.ts';

export const shapes: SharedWords['shapes'] = {
  passwordShort: 'use al menos 10 caracteres; una frase corta se recuerda bien',
  passwordLong: 'como mucho 200 caracteres',
  writeTime: 'escriba una hora según RFC 3339, por ejemplo 2026-03-02T07:00:00Z',
  writeTimeOfDay: 'escriba una hora del día como HH:MM, por ejemplo 07:00',
  writeClock: 'escríbalo como 22:30',
  writePhone: 'escríbalo con el código del país, como +31612345678',
  giveName: 'dele un nombre',
  nameLong: 'como mucho 80 caracteres',
  sayWhy: 'diga por qué, para que otros lo sepan',
  giveCode: 'dé un código al lote',
  sayGap: 'diga cuánto está abierto el túnel, 0–100 %',
  sayMinutes: 'diga cuánto tiempo trabajará dentro, 5–60 minutos',
  writeNote: 'escriba la nota',
  nameBatch: 'nombre al menos un lote',
  fewerBatches: 'como mucho ocho lotes',
  checkId: 'use minúsculas, cifras y guiones',
  jsonPointer: 'escriba un JSON Pointer, por ejemplo /air/temperature, o déjelo vacío para todo el mensaje',
  whereTemperature: 'diga dónde está la temperatura, o la humedad, o ambas',
  ownTopics: 'los temas bajo takewell/v1 no necesitan traducción',
  cursor: 'empiece sin cursor, o dé el nextCursor de la página anterior',
  notRight: 'no es correcto',
};
