// What a proposal for the gap rests on: the rates that were found, how sure they are, and which changes of the gap told nothing.
import type { VentingView } from '../../shared/api/venting.ts';
import { slowNowMs } from '../clock.ts';
import { humidityLimitText, numberText } from '../quantities.ts';
import { zone } from '../session.ts';
import { words } from '../strings.ts';
import { dayAndTime } from '../when.ts';

const { columns } = words.venting;

function Rates({ fit, time }: { fit: NonNullable<VentingView['fit']>; time: (at: string) => string }) {
  const percent = Math.floor(100 * Math.max(0, fit.r2));
  return (
    <>
      <p>{words.venting.basisWords(fit.readings, fit.windows, percent, time(fit.at))}</p>
      <table>
        <caption class="unseen">{words.venting.caption}</caption>
        <thead>
          <tr>
            {[columns.gap, columns.rate, columns.error, columns.windows].map((name) => (
              <th key={name} scope="col">
                {name}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {fit.levels.map(({ gapPercent, ratePerHour, standardError, windows }) => (
            <tr key={gapPercent}>
              <th scope="row">
                {humidityLimitText(gapPercent)} {words.units.percent}
              </th>
              <td>{numberText(ratePerHour, 1)}</td>
              <td>{numberText(standardError, 1)}</td>
              <td>{windows}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </>
  );
}

export function OpeningBasis({ view }: { readonly view: VentingView }) {
  const time = (at: string) => dayAndTime(Date.parse(at), slowNowMs.value, zone.value);
  const { fit, leftOut } = view;
  if (fit === null && leftOut.length === 0) return null;
  return (
    <details>
      <summary>{words.venting.basis}</summary>
      {fit !== null && <Rates fit={fit} time={time} />}
      {leftOut.length > 0 && (
        <>
          <h3>{words.venting.leftOut}</h3>
          <ul class="plain-list">
            {leftOut.map(({ gapPercent, at, reason }) => (
              <li key={at}>{words.venting.leftOutLine(gapPercent, time(at), reason)}</li>
            ))}
          </ul>
        </>
      )}
    </details>
  );
}
