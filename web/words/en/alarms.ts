// In English: the page of alarms.
import { many } from '../../strings.ts';

export const alarms = {
  alarms: {
    title: 'Alarms',
    ofService: 'Alarm of Takewell itself',
    active: 'In force',
    recent: 'Earlier',
    showAll: (count: number) => `Show all ${count}`,
    noneActive: 'No alarm is in force.',
    noneRecent: 'There has been no alarm yet.',
    before: 'Show those before',
    loading: 'Asking for the alarms…',
    chamberBatch: (chamber: string, batch: string) => `${chamber}, batch ${batch}`,
    summary: (open: number, taken: number, quiet: number) => {
      const parts = [
        ...(open === 0 ? [] : [`${open} not acknowledged`]),
        ...(taken === 0 ? [] : [`${taken} acknowledged or shelved`]),
        ...(quiet === 0 ? [] : [`${quiet} quiet for now`]),
      ];
      return `${parts.join(', ')}.`;
    },
    newAlarm: (chamber: string, sentence: string) => `Alarm in ${chamber}: ${sentence}`,
    over: (chamber: string) => `Alarm in ${chamber} is over`,
  },
  howOften: {
    title: 'How often',
    caption: 'Alarms of the last 30 days beside their targets',
    columns: { measure: 'Last 30 days', found: 'Found', target: 'Target' },
    none: (span: string) => `There was no alarm in the last ${span}.`,
    count: (count: number, span: string) => `${many(count, 'alarm', 'alarms')} in ${span}.`,
    days: (count: number) => many(count, 'day', 'days'),
    hours: (count: number) => many(count, 'hour', 'hours'),
    tooEarly: 'too early to say',
    within: 'That is within the targets.',
    many: 'That is more than is good: look at what comes most often.',
    tooMany: 'That is more than anybody can answer: look at what comes most often.',
    tooStale: 'Too many stood for more than a day: settle them, or shelve them with a reason.',
    someChatter: 'Some chatter, which teaches people not to listen.',
    aDay: 'Alarms a day',
    aDayTarget: (acceptable: string, most: string) => `${acceptable} or fewer, ${most} at most`,
    busiestDay: 'On the busiest day',
    shares: { low: 'Low priority', medium: 'Medium priority', high: 'High and critical' },
    stale: 'Standing for more than a day, on the worst day',
    chattering: 'Chattering',
    percent: (percent: number) => `${percent} %`,
    about: (percent: string) => `about ${percent}`,
    fewerThan: (count: number) => `fewer than ${count}`,
    atMost: (count: number) => `at most ${count}`,
    noneAllowed: 'none',
    chatteringTitle: 'What chatters',
    mostTitle: 'What comes most often',
    source: (chamber: string, rule: string, alarms: number) =>
      `${chamber}: ${rule.toLowerCase()} (${many(alarms, 'alarm', 'alarms')})`,
    chatteringAdvice: 'It began three times within a minute: look at the probe, its cable and where it hangs.',
    goneChamber: 'A chamber that is gone',
    basis: 'Targets of IEC 62682 for all alarms that one person answers. They judge the alarms, not the people.',
  },
};
