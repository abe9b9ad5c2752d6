// The name of the site and its clock: times of day in a plan follow it.
import { useState } from 'preact/hooks';
import type { SiteSettings } from '../../shared/api/telling.ts';
import { ApiProblem } from '../api.ts';
import { calls } from '../calls.ts';
import { slowNowMs } from '../clock.ts';
import { words } from '../late-strings.ts';
import { Field } from '../parts/fields.tsx';
import { Form, textOf } from '../parts/form.tsx';
import type { Loaded } from '../parts/use-load.ts';
import { loadSession } from '../session.ts';
import { clockTime, isZone, zoneNames } from '../when.ts';
import { Step } from './step.tsx';

interface Props {
  readonly settings: Loaded<SiteSettings>;
  readonly isDone: boolean;
  readonly onSaved: () => void;
}

export function SiteStep({ settings, isDone, onSaved }: Props) {
  const { data, reload } = settings;
  const [typed, setTyped] = useState<string>();
  if (data === undefined) return null;
  const zone = typed ?? data.zone;
  const send = async (fields: FormData) => {
    const chosen = textOf(fields, 'zone');
    if (!isZone(chosen))
      throw new ApiProblem(words.settings.zoneBad, 400, [{ where: '/zone', reason: words.settings.zoneBad }]);
    await calls.saveSettings({ ...(await calls.settings()), siteName: textOf(fields, 'siteName'), zone: chosen });
    await loadSession();
    reload();
    onSaved();
  };
  return (
    <Step title={words.guide.site} why={words.guide.siteWhy} state={isDone ? 'done' : 'now'}>
      {isDone ? (
        <p>{words.guide.siteDone(data.siteName, data.zone, clockTime(slowNowMs.value, data.zone))}</p>
      ) : (
        <Form onSend={send} act={words.guide.siteSave} label={words.guide.site}>
          <Field name="siteName" label={words.settings.siteName} value={data.siteName} required autoComplete="off" />
          <Field
            name="zone"
            label={words.settings.zone}
            hint={
              isZone(zone.trim())
                ? words.settings.zoneNow(clockTime(slowNowMs.value, zone.trim()))
                : words.settings.zoneHint
            }
            value={data.zone}
            suggestions={zoneNames()}
            onText={setTyped}
            required
            autoComplete="off"
          />
        </Form>
      )}
    </Step>
  );
}
