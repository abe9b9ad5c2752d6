// The numbers of a profile: stages with their limits, checks with what to do, each with its basis.
import type { CheckPlan, Limit, LimitEnd, LimitSet, ProfileDocument } from '../../shared/healing/profile.ts';
import { humidityLimitText, temperatureDifferenceText, temperatureLimitText } from '../quantities.ts';
import { words } from '../strings.ts';
import { temperatureUnit } from '../temperature-unit.ts';

const { profiles } = words;

/** How the numbers of one quantity are written: a value, and the size of a difference. */
interface Writing {
  readonly value: (value: number) => string;
  readonly difference: (value: number) => string;
}

const inTemperature: Writing = { value: temperatureLimitText, difference: temperatureDifferenceText };
const inHumidity: Writing = { value: humidityLimitText, difference: (value) => humidityLimitText(Math.abs(value)) };

function offsetWords(offset: number, { difference }: Writing): string {
  if (offset === 0) return '';
  return offset > 0 ? profiles.more(difference(offset)) : profiles.less(difference(offset));
}

function endWords(end: LimitEnd, writing: Writing): string {
  if (typeof end === 'number') return writing.value(end);
  return profiles.house(offsetWords(end.houseOffset, writing), writing.value(end.fallback));
}

function limitWords(limit: Limit, writing: Writing): string {
  if (limit.shape === 'constant') return profiles.constant(writing.value(limit.value));
  if (limit.shape === 'levels') return profiles.levels(limit.values.map((end) => endWords(end, writing)));
  const from = writing.value(limit.from);
  const to = endWords(limit.to, writing);
  return limit.shape === 'ramp' ? profiles.ramp(from, to) : profiles.stairs(from, to, limit.steps);
}

function setWords(set: LimitSet, writing: Writing): string {
  const outer = [
    ...(set.lowLow === undefined ? [] : [profiles.outer(profiles.lowLow, limitWords(set.lowLow, writing))]),
    ...(set.highHigh === undefined ? [] : [profiles.outer(profiles.highHigh, limitWords(set.highHigh, writing))]),
  ];
  return [profiles.lowToHigh(limitWords(set.low, writing), limitWords(set.high, writing)), ...outer].join('; ');
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
  const temperatureName = profiles.temperature(temperatureUnit.value);
  const names = [profiles.stage, profiles.from, temperatureName, profiles.humidity];
  const cells = ({ temperature, humidity }: ProfileDocument['stages'][number]) =>
    [
      [temperatureName, temperature, inTemperature],
      [profiles.humidity, humidity, inHumidity],
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
            {cells(plan).map(([name, set, writing]) => (
              <td key={name} data-name={name}>
                {setWords(set, writing)} <small>{profiles.basis(basesOf(set))}</small>
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
                  {profiles.ifNo(check.ifNo)} {profiles.basis(check.basis)}
                </small>
              </li>
            ))}
          </ul>
        </>
      )}
    </details>
  );
}
