// What a part of the service found, in English, each a clause: what became of sending, what keeps messages or readings out, and what to do.
// Findings are kept by key and arguments (`shared/finding.ts`): a key that was released stays, and so do its arguments and their order.
export const findings = {
  /** What was written before findings were kept as such: as it is. */
  asWritten: (text: string) => text,
  // Any address.
  notWebAddress: () => 'its address is no web address',
  localAddress: (host: string) =>
    `${host} names this machine or a link-local address: use another address, or allow local addresses`,
  nameNotFound: (host: string) => `the name of ${host} is not found: check the address and the way to the internet`,
  nameNotNow: (host: string) => `the name of ${host} cannot be looked up now: check the way to the internet`,
  refusesConnection: (host: string) => `${host} refuses the connection: is it running?`,
  brokeOff: (host: string) => `${host} broke the connection off`,
  outOfReach: (host: string) => `${host} cannot be reached: check the network`,
  noAnswerWithin: (host: string, seconds: number) => `${host} did not answer within ${seconds} s`,
  badCertificate: (host: string, code: string) => `the certificate of ${host} cannot be trusted (${code})`,
  sendingFailed: (host: string, code: string) => `sending to ${host} failed (${code})`,
  answers: (status: number) => `it answers ${status}`,
  notSent: () => 'it could not be sent: the log of the service says why',
  // Phones.
  pushTaken: (host: string, status: number) => `accepted by ${host} (${status})`,
  phoneTakesNoMore: (status: number) => `this phone takes no more alerts (${status}): add it again on the phone itself`,
  pushAsksToWait: (status: number) => `the push service asks to wait (${status})`,
  pushInTrouble: (status: number) => `the push service is in trouble (${status})`,
  pushTooLarge: (status: number) => `the message is too large for the push service (${status})`,
  pushSignature: (status: number) =>
    `the push service does not accept our signature (${status}): check the clock of this computer; if it is right, add the phone again`,
  pushRefused: (status: number) =>
    `the push service refuses the message (${status}): add the phone again on the phone itself`,
  phoneAddress: () => 'its address is no web address: remove the phone and add it again',
  phoneKeyGone: () => 'the key that it was added with is kept no more: remove the phone and add it again',
  phoneSeal: (said: string) => `it cannot be encrypted for this phone (${said}): remove the phone and add it again`,
  // Webhooks.
  webhookTook: (status: number) => `accepted by the webhook (${status})`,
  webhookElsewhere: (status: number) =>
    `the webhook points elsewhere (${status}): enter the final address, redirects are not followed`,
  webhookAsksToWait: (status: number) => `the webhook asks to wait (${status})`,
  webhookInTrouble: (status: number) => `the webhook is in trouble (${status})`,
  webhookRefuses: (status: number) =>
    `the webhook refuses the notice (${status}): check its address and what it expects`,
  // E-mail.
  mailTaken: (host: string, to: string) => `accepted by ${host} for ${to}`,
  mailSignIn: (host: string, code: number) =>
    `${host} does not accept our user and password (${code}): enter them anew`,
  mailNoSignIn: (host: string) => `${host} offers no sign-in with our user: check user and security`,
  mailAddressRefused: (host: string, to: string, code: number) =>
    `${host} refuses the address ${to} (${code}): correct it`,
  mailAddressDeferred: (host: string, to: string, code: number) => `${host} defers the address ${to} (${code})`,
  mailSenderRefused: (host: string, code: number) => `${host} refuses the sender of our mails (${code}): enter another`,
  mailRefused: (host: string, code: number) => `${host} refuses the message (${code})`,
  mailLater: (host: string, code: number) => `${host} asks to come again later (${code})`,
  mailNoStartTls: (host: string, port: number) =>
    `${host} offers no STARTTLS on port ${port}: choose another port or security`,
  mailNoTls: (host: string, port: number) => `${host} does not speak TLS on port ${port}: choose another security`,
  mailOtherSpeech: (host: string, port: number) =>
    `${host} does not speak this on port ${port}: choose another security`,
  mailCertificate: (host: string) => `the certificate of ${host} cannot be trusted`,
  mailNoAnswer: (host: string) => `${host} did not answer in time`,
  mailNoAnswerOn: (host: string, port: number) => `${host} did not answer in time on port ${port}`,
  // What keeps messages from coming in, and readings from being stored.
  brokerSilent: (url: string) => `the broker ${url} has not answered yet`,
  brokerLost: (url: string) => `the broker ${url} is not reached`,
  brokerFails: (url: string, said: string) => `the broker ${url} is not reached (${said})`,
  brokerRefuses: (said: string) => `the broker refuses the subscriptions (${said})`,
  ownBrokerShut: () => 'the embedded broker does not listen',
  brokerNotOpen: () => 'the broker is not open yet',
  diskFull: () => 'the disk is full: free some room; readings wait at the nodes until there is some',
  storeUnusable: (code: string) => `the data folder cannot be used now (${code}): check the disk and its rights`,
  // What was to be told, or by what, is there no more.
  personGone: () => 'the person was removed',
  phoneGone: () => 'the phone was removed',
  emailOff: () => 'e-mail was switched off',
  noAddress: () => 'the person has no e-mail address any more',
  webhookGone: () => 'the webhook was removed',
};
