// Why a message of a node was refused, in Spanish.
import type { SharedWords } from '../shared-words.ts';

export const refusals: SharedWords['refusals'] = {
  messageEmpty: 'El mensaje está vacío.',
  messageTooLarge: 'El mensaje pasa de 1 MiB; divida lo guardado en paquetes de como mucho 10.000 lecturas.',
  notUtf8: 'El mensaje no es texto en UTF-8; envíe JSON en UTF-8.',
  holdsNan: 'El mensaje contiene "nan", que no es JSON; envíe null u omita el valor.',
  notJson: 'El mensaje no es JSON; busque unas comillas, una coma o un corchete que falten, o un mensaje cortado.',
  messageFailed: 'Takewell no pudo leer este mensaje; el registro del servicio dice más.',
  nodeName: (name, fault) => `El nombre de nodo ${name} ${fault}.`,
  nobodyReads: 'Nadie lee este tema: publique en takewell/v1/<node>/readings o añada una asignación en los ajustes.',
  statusWord: 'Un estado es la palabra online o la palabra offline.',
  retainedUndated:
    'A una lectura retenida (retain) sin hora propia no se le puede poner fecha: publique las lecturas sin la marca retain.',
  listEmpty: 'La lista está vacía; no envíe nada cuando no haya lectura.',
  listTooLong: (count) => `La lista tiene ${count} lecturas; divídala en listas de como mucho 10.000.`,
  readingNoObject: (value) => `Una lectura es un objeto; esto es ${value}.`,
  senmlWithoutList: 'Un paquete SenML (RFC 8428) es una lista de registros; ponga los registros entre corchetes.',
  neitherValue: 'La lectura no tiene "temperature" ni "humidity"; envíe al menos uno de los dos.',
  temperatureNoNumber: (value) => `La temperatura es ${value}; envíe un número en °C u omita el campo.`,
  humidityNoNumber: (value) => `La humedad es ${value}; envíe un número en %HR u omita el campo.`,
  saysFahrenheit: (field) => `${field} dice °F, y esta forma va en °C; envíe °C o añada una asignación en los ajustes.`,
  probeNoText: (value) => `La sonda es ${value}; ponga su nombre como texto.`,
  probeName: (name, fault) => `El nombre de sonda ${name} ${fault}.`,
  packTooLong: (count) => `El paquete tiene ${count} registros; divídalo en paquetes de como mucho 10.000 lecturas.`,
  recordNoObject: (value) => `Un registro SenML es un objeto; esto es ${value}.`,
  senmlVersion: (version, highest) =>
    `La versión de SenML es ${version}, que no se entiende; envíe la versión ${highest} (RFC 8428).`,
  fieldNoText: (field, value) => `"${field}" debe ser un texto; esto es ${value}.`,
  fieldNoNumber: (field, value) => `"${field}" debe ser un número finito; esto es ${value}.`,
  fieldUnknown: (field) => `El campo ${field} tiene que entenderse (su nombre acaba en "_") y no se entiende; omítalo.`,
  packEnds: (fault, after) => `${fault} Los registros siguientes (${after}) dependen de él y no se leyeron.`,
  recordUnnamed: 'El registro no tiene nombre; dele uno en "n" o "bn".',
  recordName: (name, fault) => `El nombre ${name} ${fault}.`,
  noSeparator: (name, quantity) => `Al nombre ${name} le falta uno de / : . - _ antes de "${quantity}".`,
  probeAddress: (address, fault) => `La dirección de sonda ${address} ${fault}.`,
  temperatureMissing: 'La temperatura no tiene número; envíe uno en "v".',
  temperatureNoUnit: 'La temperatura no tiene unidad; envíe °C con la unidad "Cel".',
  temperatureFahrenheit:
    'Las temperaturas en °F solo se admiten con una asignación en los ajustes; envíe °C con la unidad "Cel".',
  temperatureUnit: (unit) => `La unidad ${unit} no se admite para la temperatura; envíe °C con la unidad "Cel".`,
  humidityMissing: 'La humedad no tiene número; envíe uno en "v".',
  humidityNoUnit: 'La humedad no tiene unidad; envíela con la unidad "%RH", o como proporción con "/".',
  humidityUnit: (unit) =>
    `La unidad ${unit} no se admite para la humedad; envíela con la unidad "%RH", o como proporción con "/".`,
  noTopicLevel: (level) => `El tema no tiene nivel ${level} del que tomar el nodo; corrija la asignación.`,
  mappedNothing: 'El mensaje no tiene ningún valor donde la asignación lo busca; corrija la asignación.',
  mappedTemperature: (value) => `La temperatura es ${value}; ahí hace falta un número.`,
  mappedHumidity: (value) => `La humedad es ${value}; ahí hace falta un número.`,
  mappedTimeNoText: (value: string) =>
    `La hora es ${value}; la asignación espera RFC 3339 con su zona, por ejemplo 2026-03-02T07:00:00Z.`,
  timeNoSeconds: (value) => `La hora es ${value}; envíela como número de segundos desde 1970.`,
  timeNoMilliseconds: (value) => `La hora es ${value}; envíela como número de milisegundos desde 1970.`,
  timeNoText: (value) =>
    `La hora es ${value}; escríbala según RFC 3339 con su zona, por ejemplo 2026-03-02T07:00:00Z, o como segundos desde 1970.`,
  aheadMinutes: (count) =>
    `La lectura está fechada ${count} min después de su llegada; ponga en hora el reloj del nodo, o el de este equipo si es el que va mal.`,
  aheadHours: (count) =>
    `La lectura está fechada ${count} h después de su llegada; ponga en hora el reloj del nodo, o el de este equipo si es el que va mal.`,
  aheadDays: (count) =>
    `La lectura está fechada ${count} días después de su llegada; ponga en hora el reloj del nodo, o el de este equipo si es el que va mal.`,
  aheadCentury: 'La lectura está fechada más de 100 años por delante; envíe segundos desde 1970, no milisegundos.',
  clockNeverSet:
    'La lectura está fechada antes de 2010, así que el reloj del nodo nunca se puso en hora; póngalo u omita la hora.',
  impossibleTemperature: (value, low, high) =>
    `Una temperatura de ${value} °C es imposible (se admite de ${low} a ${high} °C); revise el sensor y su unidad.`,
  impossibleHumidity: (value, low, high) =>
    `Una humedad de ${value} %HR es imposible (se admite de ${low} a ${high} %HR); revise el sensor y su unidad.`,
  otherValue: 'Antes en este mensaje hay otro valor para la misma sonda y hora; dé a cada lectura su propia hora.',
  list: 'una lista',
  object: 'un objeto',
  text: (quoted) => `el texto ${quoted}`,
  nameEmpty: 'está vacío; dé un nombre al nodo',
  nameTooLong: (most) => `pasa de ${most} caracteres; use menos`,
  nameLetters: 'solo puede tener las letras A–Z y a–z, cifras y - : . / _, y debe empezar por una letra o una cifra',
  nodeNameLetters: 'solo puede tener las letras A–Z y a–z, cifras y . _ -',
  nameReserved: 'está reservado para lo que publica el propio Takewell; elija otro',
};
