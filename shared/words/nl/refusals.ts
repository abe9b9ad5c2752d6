// Why a message of a node was refused, in Dutch.
import type { SharedWords } from '../shared-words.ts';

export const refusals: SharedWords['refusals'] = {
  messageEmpty: 'Het bericht is leeg.',
  messageTooLarge: 'Het bericht is groter dan 1 MiB; verdeel de buffer in pakketten van hoogstens 10.000 metingen.',
  notUtf8: 'Het bericht is geen tekst in UTF-8; stuur JSON in UTF-8.',
  holdsNan: 'In het bericht staat "nan", en dat is geen JSON; stuur null, of laat de waarde weg.',
  notJson:
    'Het bericht is geen JSON; zoek een aanhalingsteken, komma of haakje dat ontbreekt, of een bericht dat is afgebroken.',
  messageFailed: 'Takewell kon dit bericht niet lezen; het logboek van de dienst zegt meer.',
  nodeName: (name, fault) => `De zendernaam ${name} ${fault}.`,
  nobodyReads:
    'Niemand leest dit topic: publiceer op takewell/v1/<node>/readings, of voeg een mapping toe aan de instellingen.',
  statusWord: 'Een status is het woord online of het woord offline.',
  retainedUndated:
    'Een bewaarde meting (retain) zonder eigen tijd is niet te dateren: publiceer metingen zonder de retain-vlag.',
  listEmpty: 'De lijst is leeg; stuur niets als er geen meting is.',
  listTooLong: (count) => `De lijst heeft ${count} metingen; verdeel haar in lijsten van hoogstens 10.000.`,
  readingNoObject: (value) => `Een meting is een object; dit is ${value}.`,
  senmlWithoutList: 'Een SenML-pakket (RFC 8428) is een lijst van records; zet de records tussen rechte haken.',
  neitherValue: 'De meting heeft geen "temperature" en geen "humidity"; stuur minstens een van beide.',
  temperatureNoNumber: (value) => `De temperatuur is ${value}; stuur een getal in °C, of laat het veld weg.`,
  humidityNoNumber: (value) => `De luchtvochtigheid is ${value}; stuur een getal in %RV, of laat het veld weg.`,
  saysFahrenheit: (field) =>
    `${field} zegt °F, en deze vorm is in °C; stuur °C, of voeg een mapping toe aan de instellingen.`,
  probeNoText: (value) => `De voeler is ${value}; geef zijn naam als tekst.`,
  probeName: (name, fault) => `De voelernaam ${name} ${fault}.`,
  packTooLong: (count) => `Het pakket heeft ${count} records; verdeel het in pakketten van hoogstens 10.000 metingen.`,
  recordNoObject: (value) => `Een SenML-record is een object; dit is ${value}.`,
  senmlVersion: (version, highest) =>
    `De SenML-versie is ${version}, en die is niet bekend; stuur versie ${highest} (RFC 8428).`,
  fieldNoText: (field, value) => `"${field}" moet tekst zijn; dit is ${value}.`,
  fieldNoNumber: (field, value) => `"${field}" moet een eindig getal zijn; dit is ${value}.`,
  fieldUnknown: (field) => `Het veld ${field} moet bekend zijn (de naam eindigt op "_") en is dat niet; laat het weg.`,
  packEnds: (fault, after) => `${fault} De records erna (${after}) bouwen erop voort en zijn niet gelezen.`,
  recordUnnamed: 'Het record heeft geen naam; geef het er een in "n" of "bn".',
  recordName: (name, fault) => `De naam ${name} ${fault}.`,
  noSeparator: (name, quantity) => `In de naam ${name} moet een van / : . - _ staan voor "${quantity}".`,
  probeAddress: (address, fault) => `Het voeleradres ${address} ${fault}.`,
  temperatureMissing: 'De temperatuur heeft geen getal; stuur er een in "v".',
  temperatureNoUnit: 'De temperatuur heeft geen eenheid; stuur °C met de eenheid "Cel".',
  temperatureFahrenheit:
    'Temperaturen in °F worden alleen aangenomen via een mapping in de instellingen; stuur °C met de eenheid "Cel".',
  temperatureUnit: (unit) =>
    `De eenheid ${unit} wordt voor temperatuur niet aangenomen; stuur °C met de eenheid "Cel".`,
  humidityMissing: 'De luchtvochtigheid heeft geen getal; stuur er een in "v".',
  humidityNoUnit: 'De luchtvochtigheid heeft geen eenheid; stuur haar met de eenheid "%RH", of als verhouding met "/".',
  humidityUnit: (unit) =>
    `De eenheid ${unit} wordt voor luchtvochtigheid niet aangenomen; stuur haar met de eenheid "%RH", of als verhouding met "/".`,
  noTopicLevel: (level) => `Het topic heeft geen niveau ${level} om de zender uit te halen; verbeter de mapping.`,
  mappedNothing: 'Het bericht heeft geen waarde waar de mapping er een zoekt; verbeter de mapping.',
  mappedTemperature: (value) => `De temperatuur is ${value}; daar moet een getal staan.`,
  mappedHumidity: (value) => `De luchtvochtigheid is ${value}; daar moet een getal staan.`,
  mappedTimeNoText: (value: string) =>
    `De tijd is ${value}; de mapping verwacht RFC 3339 met tijdzone, bijvoorbeeld 2026-03-02T07:00:00Z.`,
  timeNoSeconds: (value) => `De tijd is ${value}; stuur hem als een getal in seconden sinds 1970.`,
  timeNoMilliseconds: (value) => `De tijd is ${value}; stuur hem als een getal in milliseconden sinds 1970.`,
  timeNoText: (value) =>
    `De tijd is ${value}; schrijf hem volgens RFC 3339 met zijn zone, bijvoorbeeld 2026-03-02T07:00:00Z, of als seconden sinds 1970.`,
  aheadMinutes: (count) =>
    `De meting is ${count} min na haar aankomst gedateerd; zet de klok van de zender gelijk, of die van deze computer als die verkeerd loopt.`,
  aheadHours: (count) =>
    `De meting is ${count} uur na haar aankomst gedateerd; zet de klok van de zender gelijk, of die van deze computer als die verkeerd loopt.`,
  aheadDays: (count) =>
    `De meting is ${count} dagen na haar aankomst gedateerd; zet de klok van de zender gelijk, of die van deze computer als die verkeerd loopt.`,
  aheadCentury: 'De meting is meer dan 100 jaar vooruit gedateerd; stuur seconden sinds 1970, geen milliseconden.',
  clockNeverSet:
    'De meting is van vóór 2010 gedateerd, dus de klok van de zender is nooit gelijkgezet; doe dat, of laat de tijd weg.',
  impossibleTemperature: (value, low, high) =>
    `Een temperatuur van ${value} °C kan niet (${low} tot ${high} °C wordt aangenomen); controleer de sensor en zijn eenheid.`,
  impossibleHumidity: (value, low, high) =>
    `Een luchtvochtigheid van ${value} %RV kan niet (${low} tot ${high} %RV wordt aangenomen); controleer de sensor en zijn eenheid.`,
  otherValue:
    'Eerder in dit bericht staat een andere waarde voor dezelfde voeler en tijd; geef elke meting haar eigen tijd.',
  list: 'een lijst',
  object: 'een object',
  text: (quoted) => `de tekst ${quoted}`,
  nameEmpty: 'is leeg; geef de zender een naam',
  nameTooLong: (most) => `is te lang: hoogstens ${most} tekens`,
  nameLetters:
    'mag alleen de letters A–Z en a–z, cijfers en - : . / _ bevatten, en moet met een letter of cijfer beginnen',
  nodeNameLetters: 'mag alleen de letters A–Z en a–z, cijfers en . _ - bevatten',
  nameReserved: 'is gereserveerd voor wat Takewell zelf publiceert; kies een andere',
};
