// The calibration of a probe: its history for everybody, and for a manager the form of a new entry: an offset, or two points over salts.

import { useState } from 'preact/hooks';
import type { ProbeView } from '../../shared/api/probes.ts';
import { saltNames, saltPoints } from '../../shared/readings/salt-points.ts';
import { showNote } from '../announce.ts';
import { ApiProblem } from '../api.ts';
import { atFields, calibrationBody } from '../calibration-body.ts';
import { calls } from '../calls.ts';
import { words } from '../late-strings.ts';
import { Disclosure } from '../parts/disclosure.tsx';
import { Choice, Field } from '../parts/fields.tsx';
import { Form } from '../parts/form.tsx';
import { numberText } from '../quantities.ts';
import { maySetUp, zone } from '../session.ts';
import { CalibrationHistory } from './calibration-history.tsx';

const { calibration, units } = words;

const salts = saltNames.map((name) => [name, `${name} (${saltPoints[name].formula})`] as const);

function OffsetFields() {
  return (
    <div class="field-pair">
      <Field name="temperatureOffset" label={calibration.temperatureOffset} hint={calibration.offsetHint} />
      <Field name="humidityOffset" label={calibration.humidityOffset} />
    </div>
  );
}

function SaltFields() {
  return (
    <>
      <Field name="airTemperature" label={calibration.airTemperature} value="25" required />
      {(['first', 'second'] as const).map((order, index) => (
        <div class="field-pair" key={order}>
          <Choice
            name={`salt${index}`}
            label={calibration.salt(order)}
            options={salts}
            value={index === 0 ? 'sodium chloride' : 'potassium sulfate'}
          />
          <Field
            name={`measured${index}`}
            label={calibration.measured(order)}
            hint={calibration.measuredHint}
            required
          />
        </div>
      ))}
    </>
  );
}

interface EntryProps {
  readonly probe: ProbeView;
  readonly onSaved: () => void;
  readonly close: () => void;
}

function EntryForm({ probe, onSaved, close }: EntryProps) {
  const [kind, setKind] = useState('offset');
  const send = async (fields: FormData) => {
    await calls.calibrate(probe.id, calibrationBody(fields, zone.peek())).catch((caught: unknown) => {
      throw caught instanceof ApiProblem ? atFields(caught) : caught;
    });
    showNote(calibration.saved(probe.name));
    onSaved();
  };
  return (
    <Form onSend={send} act={calibration.save} onCancel={close} clears>
      <Choice
        name="kind"
        label={calibration.kind}
        value={kind}
        onChoose={setKind}
        options={[
          ['offset', calibration.kinds.offset],
          ['two-point', calibration.kinds['two-point']],
        ]}
      />
      {kind === 'two-point' ? <SaltFields /> : <OffsetFields />}
      <Field name="from" label={calibration.from} hint={calibration.fromHint} type="datetime-local" />
      <Field name="note" label={calibration.note} autoComplete="off" />
    </Form>
  );
}

function Raw({ probe: { last } }: { readonly probe: ProbeView }) {
  if (last === null) return null;
  const say = (value: number | null, unit: string) => (value === null ? units.none : `${numberText(value, 2)} ${unit}`);
  return (
    <p class="details">{calibration.raw(say(last.rawTemperature, '°C'), say(last.rawHumidity, units.humidity))}</p>
  );
}

export function ProbeCalibration({ probe }: { readonly probe: ProbeView }) {
  const [saved, setSaved] = useState(0);
  return (
    <div class="probe-calibration">
      <Disclosure title={calibration.title} label={calibration.calibrateLabel(probe.name)} kind="quiet">
        {(close) => (
          <>
            <Raw probe={probe} />
            {maySetUp.value && <EntryForm probe={probe} onSaved={() => setSaved((count) => count + 1)} close={close} />}
            <CalibrationHistory probeId={probe.id} saved={saved} />
          </>
        )}
      </Disclosure>
    </div>
  );
}
