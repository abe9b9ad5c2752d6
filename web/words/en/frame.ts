// In English: the frame round every page: head, navigation, connection, signing in, what goes wrong.
import { many } from '../../strings.ts';

export const frame = {
  product: 'Takewell',
  skipToMain: 'Skip to the page',
  menu: 'Main',
  pageTitle: (page: string) => `${page} · Takewell`,
  nav: {
    overview: 'Chambers',
    alarms: 'Alarms',
    batches: 'Batches',
    profiles: 'Profiles',
    sensors: 'Sensors',
    people: 'People',
    settings: 'Settings',
    more: 'More',
    mine: 'My alerts, sign out',
    mineOf: (name: string) => `${name}: my alerts, sign out`,
    open: (count: number) => `${many(count, 'alarm', 'alarms')} not acknowledged`,
  },
  demo: 'Demo data, invented',
  live: {
    connecting: 'connecting',
    none: 'no connection',
    fresh: 'up to date',
    heard: (age: string) => `as of ${age}`,
    lost: (time: string, age: string) =>
      `No connection. What you see is from ${time}, ${age} old. It catches up by itself when the connection is back.`,
    underAMinute: 'less than a minute',
    lostShort: (age: string) => `no connection, ${age} old`,
    neverHeard: 'No connection to the service yet. Check that this device is in the same network.',
    back: 'Connection is back; everything is up to date.',
  },
  printed: (site: string, time: string) => (site === '' ? `As of ${time}` : `${site}, as of ${time}`),
  version: {
    newer: 'There is a newer version of Takewell.',
    load: 'Load it now',
  },
  problems: {
    unreachable: 'The service cannot be reached. Check the network; what you typed is kept.',
    timeOut: 'The service took too long to answer. Try again.',
    badAnswer: 'The service answered with something this page does not understand. Reload the page.',
    notAllowed: 'Your role does not allow this. Ask a manager.',
    notFound: 'That does not exist any more. Reload the page.',
    tooMany: 'Too many tries. Wait a minute, then try again.',
    server: 'The service had a problem. Nothing was changed; try again in a minute.',
    signInAgain: 'You are signed out. Sign in again.',
    seeFields: 'Please change what is marked; nothing else is lost.',
    again: 'Try again',
    loading: 'Loading…',
  },
  notFound: {
    title: 'Nothing here',
    text: 'There is no page at this address.',
    home: 'Go to the chambers',
  },
  signIn: {
    title: 'Sign in',
    name: 'Name',
    password: 'Password',
    act: 'Sign in',
    needsSetup: 'No manager exists yet. Open the set-up address that the service printed when it first started.',
  },
  language: {
    label: 'Language',
  },
};
