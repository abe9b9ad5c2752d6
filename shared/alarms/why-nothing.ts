// Why a person's act changed nothing, as data, and how that is said.
import type { SharedWords } from '../words/shared-words.ts';
import type { AlarmState } from './alarm.ts';

export type WhyNothing =
  | { readonly why: 'alarm-over' }
  | { readonly why: 'acknowledged-already'; readonly person: string }
  | { readonly why: 'no-such-step'; readonly state: AlarmState }
  | { readonly why: 'rule-taken-already'; readonly person: string }
  | { readonly why: 'rule-in-service' };

/** One sentence for the person who tried. */
export function sayWhyNothing(reason: WhyNothing, { names, problems }: SharedWords): string {
  switch (reason.why) {
    case 'alarm-over':
      return problems.alarmOver;
    case 'acknowledged-already':
      return problems.acknowledgedBy(reason.person);
    case 'no-such-step':
      return problems.alarmUnchanged(names.states[reason.state]);
    case 'rule-taken-already':
      return problems.ruleTaken(reason.person);
    case 'rule-in-service':
      return problems.ruleInService;
  }
}
