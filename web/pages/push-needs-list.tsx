// What an alert on this device needs, checked while it is looked at; for what is missing the way there, and what can tell meanwhile.
import { useEffect, useState } from 'preact/hooks';
import type { PhonesView } from '../../shared/api/telling.ts';
import { showNote } from '../announce.ts';
import { slowNowMs } from '../clock.ts';
import { words } from '../late-strings.ts';
import { judgePushNeeds, type PushFacts, type PushNeed } from '../push-needs.ts';
import { readPushFacts } from '../push-subscription.ts';
import { maySetUp, zone } from '../session.ts';
import { dayAndTime } from '../when.ts';

const { people: say } = words;
const { needs } = say;

/** Read anew when the page is looked at again, the permission changes or the worker starts. */
function usePushFacts(phones: PhonesView): PushFacts | undefined {
  const [facts, setFacts] = useState<PushFacts>();
  useEffect(() => {
    let isShown = true;
    const read = () => {
      readPushFacts()
        .then((found) => isShown && setFacts(found))
        .catch((problem: unknown) => showNote(say.browserSaid(String(problem)), true));
    };
    const stop = new AbortController();
    const { signal } = stop;
    read();
    document.addEventListener('visibilitychange', read, { signal });
    if ('serviceWorker' in navigator) void navigator.serviceWorker.ready.then(() => isShown && read());
    // Not every browser tells of notifications here: then coming back to the page does.
    navigator.permissions?.query({ name: 'notifications' }).then(
      (status) => status.addEventListener('change', read, { signal }),
      () => undefined,
    );
    return () => {
      isShown = false;
      stop.abort();
    };
  }, [phones]);
  return facts;
}

function sayNeed(one: PushNeed): string {
  switch (one.need) {
    case 'secure':
      return one.isMet ? needs.secure(one.origin) : needs.notSecure(one.origin);
    case 'address':
      if (one.publicUrl === null) return needs.noAddress;
      return one.isMet ? needs.address(one.publicUrl) : needs.otherAddress(one.publicUrl);
    case 'worker':
      if (one.worker === 'not-secure') return needs.workerWaits;
      return one.worker === 'none' ? say.noWorker : needs.workers[one.worker];
    case 'permission':
      if (one.permission === 'not-secure') return needs.permissionWaits;
      if (one.permission === 'no-push') return say.noPush;
      return one.permission === 'denied' ? say.denied : needs.permissions[one.permission];
    case 'subscription':
      return one.how === 'no-key' ? say.noKey : needs.subscriptions[one.how];
    case 'confirmed':
      if (one.phone === null) return needs.notConfirmed;
      return needs.confirmed(one.phone.name, dayAndTime(Date.parse(one.phone.at), slowNowMs.value, zone.value));
  }
}

function Need({ one }: { readonly one: PushNeed }) {
  return (
    <li class={one.isMet ? 'is-met' : ''}>
      <strong>{one.isMet ? needs.met : needs.missing}</strong>
      <div>
        {sayNeed(one)}
        {one.need === 'address' && !one.isMet && one.publicUrl !== null && (
          <>
            {' '}
            <a href={`${one.publicUrl}/my-alerts`}>{needs.openThere}</a>
          </>
        )}
        {one.need === 'address' && one.publicUrl === null && (
          <details>
            <summary>{needs.forOperator}</summary>
            <p>{needs.setAddress}</p>
          </details>
        )}
      </div>
    </li>
  );
}

function WayToHttps() {
  return (
    <details>
      <summary>{needs.waysTitle}</summary>
      <ul class="ways">
        {needs.ways.map((way) => (
          <li key={way}>{way}</li>
        ))}
      </ul>
      <p>{needs.afterwards}</p>
    </details>
  );
}

function Meanwhile() {
  return (
    <p>
      {needs.meanwhile} <a href="#mine">{needs.myAddress}</a>
      {maySetUp.value && (
        <>
          , <a href="/channels#email">{needs.mailServer}</a>, <a href="/channels#webhooks">{words.channels.webhooks}</a>
        </>
      )}
    </p>
  );
}

export function PushNeedsList({ phones }: { readonly phones: PhonesView }) {
  const facts = usePushFacts(phones);
  if (facts === undefined) return null;
  const list = judgePushNeeds(facts, phones);
  return (
    <section class="push-needs" aria-labelledby="push-needs">
      <h3 id="push-needs">{needs.title}</h3>
      <ul class="needs">
        {list.map((one) => (
          <Need key={one.need} one={one} />
        ))}
      </ul>
      {!facts.isSecure && <WayToHttps />}
      {list.some(({ isMet }) => !isMet) && <Meanwhile />}
    </section>
  );
}
