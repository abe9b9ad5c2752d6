// One probe: where it is, what it said last and when, whether that can be trusted; a manager can place and change it.
import type { ProbeView } from '../../shared/api/probes.ts';
import { MINUTE_MS } from '../../shared/units.ts';
import { agoWords, spanWords } from '../age.ts';
import { showNote } from '../announce.ts';
import { calls } from '../calls.ts';
import { chamberNames } from '../chamber-store.ts';
import { slowNowMs } from '../clock.ts';
import { words } from '../late-strings.ts';
import { loadEverything } from '../live.ts';
import { Disclosure } from '../parts/disclosure.tsx';
import { Choice, Field, Tick } from '../parts/fields.tsx';
import { Form, numberOf, textOf } from '../parts/form.tsx';
import { ShapeMark } from '../parts/shape-mark.tsx';
import { batteryWords, wetAirWords } from '../probe-hints.ts';
import { qualityWords } from '../probe-quality.ts';
import { withHumidity, withTemperature } from '../quantities.ts';
import { maySetUp } from '../session.ts';
import { ProbeCalibration } from './probe-calibration.tsx';

const { sensors } = words;

interface Props {
  readonly probe: ProbeView;
  readonly onChanged: () => void;
}

function Heard({ probe }: { readonly probe: ProbeView }) {
  if (probe.last === null) return <p class="details">{sensors.neverHeard}</p>;
  const age = slowNowMs.value - Date.parse(probe.last.at);
  const isSilent = age > probe.silenceMinutes * MINUTE_MS;
  return (
    <>
      <p class={isSilent ? 'heard is-old' : 'heard'}>
        <b>{sensors.hears(withTemperature(probe.last.temperature), withHumidity(probe.last.humidity))}</b>
      </p>
      <p class="details">
        <span class={isSilent ? 'taken' : ''}>
          {isSilent && !probe.outOfService && <ShapeMark shape="silent" />}{' '}
          {isSilent
            ? sensors.silentFor(spanWords(age), spanWords(probe.silenceMinutes * MINUTE_MS))
            : sensors.heardAgo(agoWords(age))}
        </span>
        <span>{probe.outOfService ? sensors.outOfService : qualityWords(probe.last)}</span>
      </p>
    </>
  );
}

function Hints({ probe }: { readonly probe: ProbeView }) {
  const battery = batteryWords(probe.battery, slowNowMs.value);
  const wetAir = wetAirWords(probe);
  return (
    <>
      {battery !== null && <p class="details">{battery}</p>}
      {wetAir !== null && <p class="details wet-air">{wetAir}</p>}
    </>
  );
}

function PlaceForm({ probe, onChanged, close }: Props & { readonly close: () => void }) {
  const send = async (fields: FormData) => {
    const place = textOf(fields, 'place');
    const chamberId = textOf(fields, 'chamberId');
    await calls.changeProbe(probe.id, {
      name: textOf(fields, 'name'),
      place: place === '' ? null : place,
      chamberId: chamberId === '' ? null : chamberId,
      silenceMinutes: numberOf(fields, 'silenceMinutes'),
      outOfService: fields.has('outOfService'),
    });
    showNote(sensors.saved(textOf(fields, 'name')));
    close();
    onChanged();
    // A chamber may have gained or lost the probe.
    await loadEverything();
  };
  const chambers = chamberNames.value;
  const places = Object.entries(words.places);
  return (
    <Form onSend={send} act={sensors.save} onCancel={close}>
      <Field name="name" label={sensors.name} value={probe.name} required autoComplete="off" />
      <Choice
        name="chamberId"
        label={sensors.chamberLabel}
        value={probe.chamberId ?? chambers[0]?.[0] ?? ''}
        options={[...chambers, ['', sensors.noChamber]]}
      />
      <Choice
        name="place"
        label={sensors.placeLabel}
        value={probe.place ?? 'canopy'}
        options={[...places, ['', sensors.unplaced]]}
      />
      <Field
        name="silenceMinutes"
        label={sensors.silence}
        hint={sensors.silenceHint}
        type="number"
        value={probe.silenceMinutes}
        min={1}
        max={240}
        step="any"
        required
      />
      <Tick name="outOfService" label={sensors.outLabel} hint={sensors.outHint} isOn={probe.outOfService} />
    </Form>
  );
}

/** Stands in a list that says which chamber it is in. */
export function ProbeItem({ probe, onChanged }: Props) {
  const isNew = probe.place === null;
  const act = isNew ? sensors.place : sensors.change;
  // Until somebody names it a probe is called by its node and address.
  const isNamed = probe.name !== `${probe.nodeId} ${probe.address}`.trim();
  return (
    <li class="probe">
      <div>
        <h3>{probe.name}</h3>
        {isNamed && <p class="details">{sensors.where(probe.nodeId, probe.address)}</p>}
      </div>
      <p class="probe-place">{probe.place === null ? sensors.unplaced : words.placeNames[probe.place]}</p>
      <div class="probe-heard">
        <Heard probe={probe} />
        <Hints probe={probe} />
      </div>
      {maySetUp.value && (
        <Disclosure title={act} label={`${act}: ${probe.name}`} kind={isNew ? 'main' : 'plain'}>
          {(close) => <PlaceForm probe={probe} onChanged={onChanged} close={close} />}
        </Disclosure>
      )}
      <ProbeCalibration probe={probe} />
    </li>
  );
}
