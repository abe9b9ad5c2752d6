// The messages that could not be admitted, with the reason: the first place to look when a sensor does not appear.
import { calls } from '../calls.ts';
import { slowNowMs } from '../clock.ts';
import { words } from '../late-strings.ts';
import { changes } from '../live.ts';
import { LoadState } from '../parts/load-state.tsx';
import { useLoad } from '../parts/use-load.ts';
import { zone } from '../session.ts';
import { dayAndTime } from '../when.ts';

const { sensors } = words;

export function RefusedList() {
  const refused = useLoad(calls.refused, 'refused', [changes.probes]);
  const names = [sensors.columns.at, sensors.columns.topic, sensors.columns.reason, sensors.columns.payload];
  return (
    <section aria-labelledby="refused">
      <h2 id="refused">{sensors.refused}</h2>
      {refused.data === undefined && <LoadState {...refused} />}
      {refused.data?.length === 0 && <p class="quiet-line">{sensors.noRefused}</p>}
      {refused.data !== undefined && refused.data.length > 0 && (
        <table class="stacking">
          <caption class="unseen">{sensors.refusedCaption}</caption>
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
            {refused.data.map((message) => (
              <tr key={message.id}>
                <th scope="row">{dayAndTime(Date.parse(message.at), slowNowMs.value, zone.value)}</th>
                <td data-name={names[1]}>
                  <code>{message.topic}</code>
                </td>
                <td data-name={names[2]}>{sensors.refusedWhere(message.reason, message.where)}</td>
                <td data-name={names[3]}>
                  <code>{message.payloadStart}</code>
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
    </section>
  );
}
