// One profile: its newest plan, its versions with the batches that follow them, and what changed between any two.

import { useState } from 'preact/hooks';
import type { BatchView } from '../../shared/api/batches.ts';
import type { ProfileView } from '../../shared/api/profiles.ts';
import { compareProfiles } from '../../shared/healing/compare-profiles.ts';
import { calls } from '../calls.ts';
import { changeWords } from '../change-words.ts';
import { slowNowMs } from '../clock.ts';
import { words } from '../late-strings.ts';
import { changes } from '../live.ts';
import { route } from '../navigation.ts';
import { Choice } from '../parts/fields.tsx';
import { LoadState } from '../parts/load-state.tsx';
import { PageHead } from '../parts/page-head.tsx';
import { useLoad } from '../parts/use-load.ts';
import { planText } from '../plan-text.ts';
import { chamberPath } from '../router.ts';
import { zone } from '../session.ts';
import { dayAndTime } from '../when.ts';
import '../style/profiles.css';
import { ProfileActs } from './profile-acts.tsx';
import { ProfileNumbers } from './profile-numbers.tsx';
import { ProfilePlan } from './profile-plan.tsx';

function BatchesOf({ batches }: { readonly batches: readonly BatchView[] }) {
  const running = batches.filter(({ finishedAt }) => finishedAt === null);
  const ran = batches.length - running.length;
  if (batches.length === 0) return <p class="details">{words.versions.unused}</p>;
  return (
    <p class="details">
      {running.length > 0 && (
        <span>
          {words.versions.running}
          {running.map(({ id, chamberId, code }, index) => (
            <span key={id}>
              {index > 0 && ', '}
              <a class="roomy" href={chamberPath(chamberId)}>
                {code}
              </a>
            </span>
          ))}
        </span>
      )}
      {ran > 0 && <span>{words.versions.ran(ran)}</span>}
    </p>
  );
}

interface VersionsProps {
  readonly history: readonly ProfileView[];
  readonly batches: readonly BatchView[];
}

function Versions({ history, batches }: VersionsProps) {
  return (
    <section aria-labelledby="versions">
      <h2 id="versions">{words.versions.title}</h2>
      <ol class="versions">
        {history.map(({ version, createdAt, createdBy }) => (
          <li key={version}>
            <h3>
              {words.versions.made(version, createdBy, dayAndTime(Date.parse(createdAt), slowNowMs.value, zone.value))}
            </h3>
            <BatchesOf batches={batches.filter(({ profileVersion }) => profileVersion === version)} />
          </li>
        ))}
      </ol>
      {history.length === 1 && <p class="quiet-line">{words.versions.only}</p>}
    </section>
  );
}

/** Between the newest and the one before it, until others are chosen. */
function Compare({ history }: { readonly history: readonly ProfileView[] }) {
  const newest = history[0]?.version ?? 1;
  const [from, setFrom] = useState(newest - 1);
  const [to, setTo] = useState(newest);
  const documentOf = (version: number) => history.find((one) => one.version === version)?.document;
  const [before, after] = [documentOf(from), documentOf(to)];
  const found = before === undefined || after === undefined ? [] : compareProfiles(before, after);
  const options = history.map(({ version }) => [String(version), words.versions.option(version)] as const);
  return (
    <section aria-labelledby="compare-versions">
      <h2 id="compare-versions">{words.versions.compare}</h2>
      <div class="field-pair compare-pair">
        <Choice
          name="from"
          label={words.versions.between}
          value={String(from)}
          options={options}
          onChoose={(value) => setFrom(Number(value))}
        />
        <Choice
          name="to"
          label={words.versions.and}
          value={String(to)}
          options={options}
          onChoose={(value) => setTo(Number(value))}
        />
      </div>
      <div role="status">
        {found.length === 0 && <p>{words.versions.same}</p>}
        <ul class="changes">
          {found.map((change) => (
            <li key={JSON.stringify(change)}>{changeWords(change)}</li>
          ))}
        </ul>
      </div>
    </section>
  );
}

export function ProfilePage() {
  const { id } = route.value;
  const history = useLoad(() => calls.profileHistory(id), id);
  const batches = useLoad(calls.batches, 'batches', [changes.batches]);
  const newest = history.data?.[0];
  const own = (batches.data ?? []).filter(({ profileId }) => profileId === id);
  return (
    <main id="main" class="plain">
      <p>
        <a class="roomy" href="/profiles">
          {words.versions.back}
        </a>
      </p>
      <PageHead title={newest === undefined ? words.profiles.title : planText(newest.document.name)} />
      {history.data === undefined && <LoadState {...history} />}
      {newest !== undefined && history.data !== undefined && (
        <>
          <article class="profile">
            <ProfilePlan profile={newest} />
            <ProfileActs profile={newest} isOwnPage={true} />
            <ProfileNumbers document={newest.document} />
          </article>
          <div class="columns">
            <Versions history={history.data} batches={own} />
            {history.data.length > 1 && <Compare key={newest.version} history={history.data} />}
          </div>
        </>
      )}
    </main>
  );
}
