// The numbers of a profile: stages with their limits, checks with what to do, each with its basis.

import type { LimitSet, ProfileDocument } from '../../shared/healing/profile.ts';
import { words } from '../late-strings.ts';
import { checkTimeWords, limitWords, momentWords, type Quantity } from '../limit-words.ts';
import { planText } from '../plan-text.ts';
import { temperatureUnit } from '../temperature-unit.ts';

const { profiles } = words;

function setWords(set: LimitSet, quantity: Quantity): string {
  const outer = [
    ...(set.lowLow === undefined ? [] : [profiles.outer(profiles.lowLow, limitWords(set.lowLow, quantity))]),
    ...(set.highHigh === undefined ? [] : [profiles.outer(profiles.highHigh, limitWords(set.highHigh, quantity))]),
  ];
  return [profiles.lowToHigh(limitWords(set.low, quantity), limitWords(set.high, quantity)), ...outer].join('; ');
}

function basesOf(set: LimitSet): string {
  const limits = [set.low, set.high, set.lowLow, set.highHigh].filter((limit) => limit !== undefined);
  return [...new Set(limits.map((limit) => planText(limit.basis)))].join('; ');
}

function beginWords({ stage, afterHours, notBefore }: ProfileDocument['stages'][number]): string {
  return stage === 'loading' ? profiles.whileLoading : momentWords(afterHours, notBefore ?? null);
}

function StageTable({ document }: { readonly document: ProfileDocument }) {
  const temperatureName = profiles.temperature(temperatureUnit.value);
  const names = [profiles.stage, profiles.from, temperatureName, profiles.humidity];
  const cells = ({ temperature, humidity }: ProfileDocument['stages'][number]) =>
    [
      [temperatureName, temperature, 'temperature'],
      [profiles.humidity, humidity, 'humidity'],
    ] as const;
  return (
    <table class="stacking">
      <caption class="unseen">{profiles.numbers}</caption>
      <thead>
        <tr>
          {names.map((name) => (
            <th key={name} scope="col">
              {name}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {document.stages.map((plan) => (
          <tr key={plan.stage}>
            <th scope="row">{words.stages[plan.stage]}</th>
            <td data-name={profiles.from}>{beginWords(plan)}</td>
            {cells(plan).map(([name, set, quantity]) => (
              <td key={name} data-name={name}>
                {setWords(set, quantity)} <small>{profiles.basis(basesOf(set))}</small>
              </td>
            ))}
          </tr>
        ))}
      </tbody>
    </table>
  );
}

export function ProfileNumbers({ document }: { readonly document: ProfileDocument }) {
  return (
    <details>
      <summary>{profiles.numbers}</summary>
      <StageTable document={document} />
      <p class="details">{profiles.lastsHours(document.endsAfterHours)}</p>
      {document.checks.length > 0 && (
        <>
          <h3>{profiles.checks}</h3>
          <ul class="check-list">
            {document.checks.map((check) => (
              <li key={check.id}>
                <b>{planText(check.question)}</b> {checkTimeWords(check)}{' '}
                <small>
                  {profiles.ifNo(planText(check.ifNo))} {profiles.basis(planText(check.basis))}
                </small>
              </li>
            ))}
          </ul>
        </>
      )}
    </details>
  );
}
