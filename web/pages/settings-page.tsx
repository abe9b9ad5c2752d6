// The settings of the site: its name, time zone, altitude, and the unit temperatures are shown in. Managers change them.
import { useState } from 'preact/hooks';
import type { SiteSettings } from '../../shared/api/telling.ts';
import { showNote } from '../announce.ts';
import { ApiProblem } from '../api.ts';
import { calls } from '../calls.ts';
import { slowNowMs } from '../clock.ts';
import { words } from '../late-strings.ts';
import { Choice, Field } from '../parts/fields.tsx';
import { Form, numberOf, textOf } from '../parts/form.tsx';
import { LoadState } from '../parts/load-state.tsx';
import { PageHead } from '../parts/page-head.tsx';
import { useLoad } from '../parts/use-load.ts';
import { loadSession, maySetUp } from '../session.ts';
import { clockTime, isZone, zoneNames } from '../when.ts';
import { RetiredChambers } from './retired-chambers.tsx';
import { WallLinks } from './wall-links.tsx';

const { settings: say } = words;
const unitOptions = Object.entries(say.units);

function ZoneField({ zone }: { readonly zone: string }) {
  const [typed, setTyped] = useState(zone);
  const isKnown = isZone(typed.trim());
  return (
    <Field
      name="zone"
      label={say.zone}
      hint={isKnown ? say.zoneNow(clockTime(slowNowMs.value, typed.trim())) : say.zoneHint}
      value={zone}
      suggestions={zoneNames()}
      onText={setTyped}
      required
      autoComplete="off"
    />
  );
}

function changesOf(fields: FormData): Omit<SiteSettings, 'mappings'> {
  const zone = textOf(fields, 'zone');
  if (!isZone(zone)) throw new ApiProblem(say.zoneBad, 400, [{ where: '/zone', reason: say.zoneBad }]);
  return {
    siteName: textOf(fields, 'siteName'),
    zone,
    altitudeM: numberOf(fields, 'altitudeM'),
    temperatureUnit: textOf(fields, 'temperatureUnit') === '°F' ? '°F' : '°C',
  };
}

async function save(fields: FormData): Promise<void> {
  const changes = changesOf(fields);
  // Read anew, so that what this page does not show is sent back as it stands now.
  await calls.saveSettings({ ...(await calls.settings()), ...changes });
  await loadSession();
  showNote(say.saved);
}

function SettingsForm({ settings }: { readonly settings: SiteSettings }) {
  return (
    <div class="settings-form">
      <Form onSend={save} act={say.save} label={say.title}>
        <Field
          name="siteName"
          label={say.siteName}
          hint={say.siteNameHint}
          value={settings.siteName}
          required
          autoComplete="off"
        />
        <ZoneField zone={settings.zone} />
        <Field
          name="altitudeM"
          label={say.altitude}
          hint={say.altitudeHint}
          type="number"
          value={settings.altitudeM}
          min={-430}
          max={5000}
          step="any"
          required
        />
        <Choice
          name="temperatureUnit"
          label={say.unit}
          hint={say.unitHint}
          value={settings.temperatureUnit}
          options={unitOptions}
        />
      </Form>
    </div>
  );
}

function SettingsFacts({ settings }: { readonly settings: SiteSettings }) {
  const facts = [
    [say.siteName, settings.siteName],
    [say.zone, settings.zone],
    [say.altitude, say.metres(settings.altitudeM)],
    [say.unit, settings.temperatureUnit],
  ] as const;
  return (
    <>
      <dl class="facts">
        {facts.map(([name, value]) => (
          <div key={name}>
            <dt>{name}</dt>
            <dd>{value}</dd>
          </div>
        ))}
      </dl>
      <p class="quiet-line">{say.managerOnly}</p>
    </>
  );
}

export function SettingsPage() {
  const settings = useLoad(calls.settings, 'settings');
  return (
    <main id="main" class="plain">
      <PageHead title={say.title}>
        <p>{say.intro}</p>
      </PageHead>
      <section aria-label={say.title}>
        {settings.data === undefined && <LoadState {...settings} />}
        {settings.data !== undefined &&
          (maySetUp.value ? <SettingsForm settings={settings.data} /> : <SettingsFacts settings={settings.data} />)}
      </section>
      {maySetUp.value && (
        <div class="columns">
          <WallLinks />
          <RetiredChambers />
        </div>
      )}
    </main>
  );
}
