// Why a message of a node was refused, in English. Values come in written: quoted text in its quotation marks, numbers with the decimal mark of
// the language. Field names, SenML's units, topics and what stands in quotation marks are the same in every language.
// Kept by their names: a sentence that comes to mean something else gets a new one.
export const refusals = {
  // The message as a whole.
  messageEmpty: 'The message is empty.',
  messageTooLarge: 'The message is larger than 1 MiB; split the buffer into packs of at most 10,000 readings.',
  notUtf8: 'The message is not UTF-8 text; send JSON in UTF-8.',
  holdsNan: 'The message holds "nan", which is not JSON; send null, or leave the value out.',
  notJson: 'The message is not JSON; look for a missing quote, comma or bracket, or a message cut short.',
  messageFailed: 'Takewell could not read this message; the log of the service says more.',
  // Its topic.
  nodeName: (name: string, fault: string) => `The node name ${name} ${fault}.`,
  nobodyReads: 'Nobody reads this topic: publish to takewell/v1/<node>/readings, or add a mapping in the settings.',
  statusWord: 'A status is the word online or the word offline.',
  retainedUndated:
    'A retained reading without a time of its own cannot be dated: publish readings without the retain flag.',
  // The plain form.
  listEmpty: 'The list is empty; send nothing when there is no reading.',
  listTooLong: (count: string) => `The list has ${count} readings; split it into lists of at most 10,000.`,
  readingNoObject: (value: string) => `A reading is an object; this is ${value}.`,
  senmlWithoutList: 'A SenML pack (RFC 8428) is a list of records; put the records in square brackets.',
  neitherValue: 'The reading has neither "temperature" nor "humidity"; send at least one of them.',
  temperatureNoNumber: (value: string) => `The temperature is ${value}; send a number in °C, or leave it out.`,
  humidityNoNumber: (value: string) => `The humidity is ${value}; send a number in %RH, or leave it out.`,
  saysFahrenheit: (field: string) =>
    `${field} says °F, and this form is in °C; send °C, or set up a mapping in the settings.`,
  probeNoText: (value: string) => `The probe is ${value}; name it with text.`,
  probeName: (name: string, fault: string) => `The probe name ${name} ${fault}.`,
  // SenML.
  packTooLong: (count: string) => `The pack has ${count} records; split it into packs of at most 10,000 readings.`,
  recordNoObject: (value: string) => `A SenML record is an object; this is ${value}.`,
  senmlVersion: (version: string, highest: string) =>
    `The SenML version is ${version}, which is not understood; send version ${highest} (RFC 8428).`,
  fieldNoText: (field: string, value: string) => `"${field}" must be text; this is ${value}.`,
  fieldNoNumber: (field: string, value: string) => `"${field}" must be a finite number; this is ${value}.`,
  fieldUnknown: (field: string) =>
    `The field ${field} must be understood (its name ends in "_") and is not; leave it out.`,
  packEnds: (fault: string, after: string) => `${fault} Records after it (${after}) build on it and were not read.`,
  recordUnnamed: 'The record has no name; give it one in "n" or "bn".',
  recordName: (name: string, fault: string) => `The name ${name} ${fault}.`,
  noSeparator: (name: string, quantity: string) => `The name ${name} needs one of / : . - _ before "${quantity}".`,
  probeAddress: (address: string, fault: string) => `The probe's address ${address} ${fault}.`,
  temperatureMissing: 'The temperature has no number; send one in "v".',
  temperatureNoUnit: 'The temperature has no unit; send °C with the unit "Cel".',
  temperatureFahrenheit:
    'Temperatures in °F are admitted only through a mapping in the settings; send °C with the unit "Cel".',
  temperatureUnit: (unit: string) => `The unit ${unit} is not admitted for temperature; send °C with the unit "Cel".`,
  humidityMissing: 'The humidity has no number; send one in "v".',
  humidityNoUnit: 'The humidity has no unit; send it with the unit "%RH", or as a ratio with "/".',
  humidityUnit: (unit: string) =>
    `The unit ${unit} is not admitted for humidity; send it with the unit "%RH", or as a ratio with "/".`,
  // A mapping.
  noTopicLevel: (level: string) => `The topic has no level ${level} to take the node from; correct the mapping.`,
  mappedNothing: 'The message has no value where the mapping looks for one; correct the mapping.',
  mappedTemperature: (value: string) => `The temperature is ${value}; a number is needed there.`,
  mappedHumidity: (value: string) => `The humidity is ${value}; a number is needed there.`,
  mappedTimeNoText: (value: string) =>
    `The time is ${value}; the mapping expects RFC 3339 with its zone, for example 2026-03-02T07:00:00Z.`,
  // Every form: times and possible numbers.
  timeNoSeconds: (value: string) => `The time is ${value}; send it as a number of seconds since 1970.`,
  timeNoMilliseconds: (value: string) => `The time is ${value}; send it as a number of milliseconds since 1970.`,
  timeNoText: (value: string) =>
    `The time is ${value}; write it as RFC 3339 with its zone, for example 2026-03-02T07:00:00Z, or as seconds since 1970.`,
  aheadMinutes: (count: string) =>
    `The reading is dated ${count} min ahead of its arrival; set the node's clock, or this computer's if that is the wrong one.`,
  aheadHours: (count: string) =>
    `The reading is dated ${count} h ahead of its arrival; set the node's clock, or this computer's if that is the wrong one.`,
  aheadDays: (count: string) =>
    `The reading is dated ${count} days ahead of its arrival; set the node's clock, or this computer's if that is the wrong one.`,
  aheadCentury: 'The reading is dated more than 100 years ahead; send seconds since 1970, not milliseconds.',
  clockNeverSet: "The reading is dated before 2010, so the node's clock was never set; set it, or leave the time out.",
  impossibleTemperature: (value: string, low: string, high: string) =>
    `A temperature of ${value} °C is impossible (${low} to ${high} °C is admitted); check the sensor and its unit.`,
  impossibleHumidity: (value: string, low: string, high: string) =>
    `A humidity of ${value} %RH is impossible (${low} to ${high} %RH is admitted); check the sensor and its unit.`,
  otherValue:
    'Another value for the same probe and time stands earlier in this message; give each reading its own time.',
  // Parts of these sentences: what a value is.
  list: 'a list',
  object: 'an object',
  text: (quoted: string) => `the text ${quoted}`,
  // Parts of these sentences: what is wrong with a name.
  nameEmpty: 'is empty; give the node a name',
  nameTooLong: (most: string) => `is longer than ${most} characters; shorten it`,
  nameLetters: 'may hold only the letters A–Z and a–z, digits and - : . / _, and must start with a letter or digit',
  nodeNameLetters: 'may hold only the letters A–Z and a–z, digits and . _ -',
  nameReserved: 'is reserved for what Takewell itself publishes; choose another',
};
