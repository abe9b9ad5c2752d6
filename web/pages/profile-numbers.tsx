// The numbers of a profile: stages with their limits, checks with what to do, each with its basis.
import type { CheckPlan, Limit, LimitEnd, LimitSet, ProfileDocument } from '../../shared/healing/profile.ts';
import { limitText } from '../quantities.ts';
import { words } from '../strings.ts';

const { profiles } = words;

function endWords(end: LimitEnd): string {
  return typeof end === 'number' ? limitText(end) : profiles.house(end.houseOffset, limitText(end.fallback));
}

function limitWords(limit: Limit): string {
  if (limit.shape === 'constant') return profiles.constant(limitText(limit.value));
  if (limit.shape === 'levels') return profiles.levels(limit.values.map(endWords));
  if (limit.shape === 'ramp') return profiles.ramp(limitText(limit.from), endWords(limit.to));
  return profiles.stairs(limitText(limit.from), endWords(limit.to), limit.steps);
}

function setWords(set: LimitSet): string {
  const outer = [
    ...(set.lowLow === undefined ? [] : [profiles.outer(profiles.lowLow, limitWords(set.lowLow))]),
    ...(set.highHigh === undefined ? [] : [profiles.outer(profiles.highHigh, limitWords(set.highHigh))]),
  ];
  return [profiles.lowToHigh(limitWords(set.low), limitWords(set.high)), ...outer].join('; ');
}

function basesOf(set: LimitSet): string {
  const limits = [set.low, set.high, set.lowLow, set.highHigh].filter((limit) => limit !== undefined);
  return [...new Set(limits.map((limit) => limit.basis))].join('; ');
}

function checkTime(check: CheckPlan): string {
  const first =
    check.atStage === undefined
      ? profiles.checkAfter(check.afterHours ?? 0)
      : profiles.checkAtStage(check.afterHours ?? 0, words.stages[check.atStage]);
  return check.everyHours === undefined ? first : `${first}, ${profiles.checkEvery(check.everyHours)}`;
}

function beginWords({ stage, afterHours, notBefore }: ProfileDocument['stages'][number]): string {
  if (stage === 'loading') return profiles.whileLoading;
  return notBefore === undefined ? profiles.after(afterHours) : profiles.notBefore(afterHours, notBefore);
}

function StageTable({ document }: { readonly document: ProfileDocument }) {
  const names = [profiles.stage, profiles.from, profiles.temperature, profiles.humidity];
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
            {[plan.temperature, plan.humidity].map((set, index) => (
              <td key={names[index + 2]} data-name={names[index + 2]}>
                {setWords(set)} <small>{profiles.basis(basesOf(set))}</small>
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
      <p class="details">
        {profiles.lastsHours(document.endsAfterHours)} {profiles.silence(document.silenceMinutes)}
      </p>
      {document.checks.length > 0 && (
        <>
          <h3>{profiles.checks}</h3>
          <ul class="check-list">
            {document.checks.map((check) => (
              <li key={check.id}>
                <b>{check.question}</b> {checkTime(check)}{' '}
                <small>
                  {words.checks.ifNo(check.ifNo)} {profiles.basis(check.basis)}
                </small>
              </li>
            ))}
          </ul>
        </>
      )}
    </details>
  );
}
