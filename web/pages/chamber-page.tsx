// One chamber: what its climate does now and where it is heading, what has been done, what is due, and everything one can do.
import { useEffect, useState } from 'preact/hooks';
import type { ChamberView } from '../../shared/api/chambers.ts';
import { ApiProblem } from '../api.ts';
import { calls } from '../calls.ts';
import { chamberIds, chamberSignal, putChamber } from '../chamber-store.ts';
import { changes } from '../live.ts';
import { LoadState } from '../parts/load-state.tsx';
import { PageHead } from '../parts/page-head.tsx';
import { useLoad } from '../parts/use-load.ts';
import { mayAct, maySetUp } from '../session.ts';
import { words } from '../strings.ts';
import { ClimateChart } from '../strip/climate-chart.tsx';
import { HealingStrip } from '../strip/healing-strip.tsx';
import { StripLegend } from '../strip/strip-legend.tsx';
import type { Window } from '../strip/zoom.ts';
import { BatchFacts } from './batch-facts.tsx';
import { ChamberAlarms } from './chamber-alarms.tsx';
import { ChamberHead } from './chamber-head.tsx';
import { ChamberSettings } from './chamber-settings.tsx';
import { Checks } from './checks.tsx';
import { ExposureTable } from './exposure-table.tsx';
import { LogButtons } from './log-buttons.tsx';
import { LogList } from './log-list.tsx';
import { NextOpening } from './next-opening.tsx';
import { OpenBatch } from './open-batch.tsx';
import { RulesOutOfService } from './rules-out-of-service.tsx';
import { AwaitedStep, SteerBatch } from './steer-batch.tsx';

function useBatch(chamber: ChamberView) {
  const id = chamber.batch?.id ?? '';
  const batch = useLoad(() => (id === '' ? Promise.resolve(null) : calls.batch(id)), id, [changes.batches]);
  const checks = useLoad(() => (id === '' ? Promise.resolve([]) : calls.checks(id)), id, [changes.batches]);
  const reload = () => {
    batch.reload();
    checks.reload();
    void calls.chamber(chamber.id).then(putChamber);
  };
  return { batch: batch.data ?? null, checks: checks.data ?? [], reload };
}

function Chamber({ chamber, alarmId }: { readonly chamber: ChamberView; readonly alarmId: string }) {
  const [window, setWindow] = useState<Window>();
  const { batch, checks, reload } = useBatch(chamber);
  // What is logged most often stands within the first screenful of a phone, unless a check asks first.
  const isDue = checks.some(({ status }) => status === 'due' || status === 'overdue');
  const marked = window === undefined ? null : ([window.fromMs / 1000, window.toMs / 1000] as const);
  return (
    <main id="main" class="chamber">
      <ChamberHead chamber={chamber} />
      {chamber.batch !== null && <HealingStrip chamber={chamber} marked={marked} />}
      <div class="chamber-body">
        <div class="doing">
          {batch !== null && mayAct.value && <AwaitedStep batch={batch} onChanged={reload} />}
          <ChamberAlarms chamber={chamber} alarmId={alarmId} />
          {chamber.batch !== null && <NextOpening batchId={chamber.batch.id} onLogged={reload} />}
          {chamber.batch !== null && isDue && <Checks batchId={chamber.batch.id} checks={checks} onAnswered={reload} />}
          {chamber.batch !== null && mayAct.value && <LogButtons batchId={chamber.batch.id} onLogged={reload} />}
          {chamber.batch !== null && !isDue && (
            <Checks batchId={chamber.batch.id} checks={checks} onAnswered={reload} />
          )}
          {chamber.batch === null && mayAct.value && <OpenBatch chamber={chamber} onOpened={reload} />}
        </div>
        <div class="seeing">
          <ClimateChart key={chamber.batch?.id ?? 'none'} chamber={chamber} onWindow={setWindow} />
          {chamber.batch !== null && <ExposureTable batchId={chamber.batch.id} />}
          <div class="papers">
            {batch !== null && <LogList log={batch.log} />}
            <div>
              {batch !== null && <BatchFacts batch={batch} />}
              {batch !== null && mayAct.value && <SteerBatch batch={batch} onChanged={reload} />}
              {maySetUp.value && <ChamberSettings chamber={chamber} />}
              <RulesOutOfService chamber={chamber} />
            </div>
          </div>
          <StripLegend />
        </div>
      </div>
    </main>
  );
}

export function ChamberPage({ id, alarmId }: { readonly id: string; readonly alarmId: string }) {
  const chamber = chamberSignal(id).value;
  const [problem, setProblem] = useState<ApiProblem>();
  const ask = async () => {
    try {
      putChamber(await calls.chamber(id));
    } catch (caught) {
      if (!(caught instanceof ApiProblem)) throw caught;
      setProblem(caught);
    }
  };
  useEffect(() => {
    if (chamber === undefined) void ask();
  }, [id, chamber === undefined]);
  if (chamber !== undefined) return <Chamber key={id} chamber={chamber} alarmId={alarmId} />;
  const isGone = problem?.status === 404 || chamberIds.value?.includes(id) === false;
  return (
    <main id="main" class="plain">
      <PageHead title={words.chamber.title} />
      {isGone ? (
        <>
          <p class="problem">{words.chamber.notFound}</p>
          <a class="button" href="/">
            {words.chamber.back}
          </a>
        </>
      ) : (
        <LoadState problem={problem} reload={() => void ask()} />
      )}
    </main>
  );
}
