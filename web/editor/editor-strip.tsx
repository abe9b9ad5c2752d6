// The strip of a draft with its handles: the borders of the stages, and the limits of the stage that is looked at.
import { useEffect, useMemo, useRef, useState } from 'preact/hooks';
import type { ProfileDocument } from '../../shared/healing/profile.ts';
import { HOUR_MS } from '../../shared/units.ts';
import { words } from '../late-strings.ts';
import { humidityLimitText, temperatureLimitText, withHumidity, withTemperature } from '../quantities.ts';
import { planSeries } from '../strip/plan-series.ts';
import type { PlotInput } from '../strip/plot.ts';
import { stripData } from '../strip/strip-data.ts';
import { summarizePlan } from '../strip/summary.ts';
import { usePlot } from '../strip/use-plot.ts';
import { valueRanges } from '../strip/value-ranges.ts';
import { temperatureUnit } from '../temperature-unit.ts';
import { type BorderHandle, borderHandles, type LimitHandle, limitHandles } from './handles.ts';
import {
  hoursPerPx,
  type StripBox,
  stageLayout,
  valuePerPx,
  wholeLayout,
  xOfHours,
  yOfValue,
} from './strip-geometry.ts';
import { StripHandle } from './strip-handle.tsx';

interface Props {
  readonly draft: ProfileDocument;
  /** The last draft whose hours and numbers could be drawn. */
  readonly drawn: ProfileDocument;
  /** Index of the stage whose limits have handles; null for the whole plan with its borders only. */
  readonly focus: number | null;
  readonly onDraft: (draft: ProfileDocument) => void;
}

const secondsPerHour = HOUR_MS / 1000;

/** The part of the plan that is shown, hours: a stage with a little of its neighbours, or all of it. */
function shownHours(drawn: ProfileDocument, focus: number | null): readonly [number, number] {
  const plan = focus === null ? undefined : drawn.stages[focus];
  if (plan === undefined || focus === null || plan.stage === 'loading') return [0, drawn.endsAfterHours];
  const until = drawn.stages[focus + 1]?.afterHours ?? drawn.endsAfterHours;
  const margin = (until - plan.afterHours) * 0.08;
  return [Math.max(0, plan.afterHours - margin), Math.min(drawn.endsAfterHours, until + margin)];
}

function useSize(host: { readonly current: HTMLElement | null }): readonly [number, number] {
  const [size, setSize] = useState<readonly [number, number]>([0, 0]);
  useEffect(() => {
    const element = host.current;
    if (element === null) return;
    const observer = new ResizeObserver(() => setSize([element.clientWidth, element.clientHeight]));
    observer.observe(element);
    return () => observer.disconnect();
  }, []);
  return size;
}

/** The picture under the handles; made anew for another layout, which a plot keeps for life. */
function Canvas({ input, label }: { readonly input: PlotInput; readonly label: string }) {
  const host = useRef<HTMLDivElement>(null);
  usePlot(host, input);
  return <div class="strip-canvas" role="img" aria-label={label} ref={host} />;
}

export function EditorStrip({ draft, drawn, focus, onDraft }: Props) {
  const host = useRef<HTMLElement>(null);
  const [width, height] = useSize(host);
  const unit = temperatureUnit.value;
  const data = useMemo(() => {
    const series = planSeries(drawn);
    return stripData(series, series.startsAt, true);
  }, [drawn]);
  const [fromHours, toHours] = shownHours(drawn, focus);
  const layout = focus === null ? wholeLayout : stageLayout;
  const input = useMemo<PlotInput>(() => {
    const window = [fromHours * secondsPerHour, toHours * secondsPerHour] as const;
    return { data, layout, zone: 'UTC', unit, window, marked: null };
  }, [data, layout, unit, fromHours, toHours]);
  const ranges = valueRanges(data.series, layout.kind, null);
  const box: StripBox = { width, height, layout, fromHours, toHours, ranges };
  return (
    <section class={focus === null ? 'editor-strip' : 'editor-strip is-one'} aria-label={words.editor.strip} ref={host}>
      <Canvas
        key={layout === wholeLayout}
        input={input}
        label={`${words.strip.planName(drawn.name)}. ${summarizePlan(data)}`}
      />
      {width > 0 && (
        <>
          {borderHandles(draft).map((handle) => (
            <Border key={handle.key} handle={handle} box={box} onDraft={onDraft} />
          ))}
          {(focus === null ? [] : limitHandles(draft, focus)).map((handle) => (
            <LimitMark key={handle.key} handle={handle} box={box} onDraft={onDraft} />
          ))}
        </>
      )}
      {drawn !== draft && <p class="strip-waits">{words.editor.noPicture}</p>}
    </section>
  );
}

interface MarkProps<Handle> {
  readonly handle: Handle;
  readonly box: StripBox;
  readonly onDraft: (draft: ProfileDocument) => void;
}

function Border({ handle, box, onDraft }: MarkProps<BorderHandle>) {
  const { stage, value, min, max, step, set } = handle;
  const isShown = value >= box.fromHours && value <= box.toHours;
  if (!Number.isFinite(value) || !isShown || min > max) return null;
  const label = stage === 'end' ? words.editor.endsHandle : words.editor.begins(words.editor.stageNames[stage]);
  return (
    <StripHandle
      {...{ kind: 'border', label, value, min, max, step, largeStep: 6 }}
      left={xOfHours(value, box)}
      top={0}
      shown={words.editor.borderShort(value)}
      valueText={words.editor.borderText(value, Math.floor(value / 24) + 1)}
      perPx={hoursPerPx(box)}
      onValue={(next) => onDraft(set(next))}
    />
  );
}

function partWords({ part, name, quantity, stage }: LimitHandle): string {
  const { editor } = words;
  const place = part.at === 'level' ? editor.level(part.level + 1) : editor.parts[part.at];
  const lower = (text: string) => text.toLowerCase();
  return editor.limitHandle(
    editor.stageNames[stage],
    lower(editor.quantities[quantity]),
    lower(editor.limits[name]),
    place,
  );
}

function LimitMark({ handle, box, onDraft }: MarkProps<LimitHandle>) {
  const { name, quantity, value, min, max, step, isHouse, atHours, set } = handle;
  const text = quantity === 'temperature' ? withTemperature(value) : withHumidity(value);
  return (
    <StripHandle
      {...{ kind: name === 'low' || name === 'lowLow' ? 'low' : 'high', value, min, max, step }}
      largeStep={step * 5}
      label={partWords(handle)}
      left={xOfHours(atHours, box)}
      top={yOfValue(value, quantity, box)}
      shown={quantity === 'temperature' ? temperatureLimitText(value) : humidityLimitText(value)}
      valueText={isHouse ? words.editor.ifHouseUnknown(text) : text}
      perPx={valuePerPx(quantity, box)}
      onValue={(next) => onDraft(set(next))}
    />
  );
}
