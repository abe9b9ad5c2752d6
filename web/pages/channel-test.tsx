// Tries one channel and says honestly what became of it: taken over by whom and when, or why not. That a person saw it, only they can say.
import { useState } from 'preact/hooks';
import type { DeliveryResult } from '../../shared/api/telling.ts';
import { slowNowMs } from '../clock.ts';
import { words } from '../late-strings.ts';
import { ActButton } from '../parts/act-button.tsx';
import { zone } from '../session.ts';
import { dayAndTime } from '../when.ts';

interface ChannelTestProps {
  readonly test: () => Promise<DeliveryResult>;
  readonly label: string;
  /** For screen readers, where the visible word alone would be ambiguous. */
  readonly fullLabel?: string;
}

export function ChannelTest({ test, label, fullLabel }: ChannelTestProps) {
  const [result, setResult] = useState<DeliveryResult>();
  const time = (at: string) => dayAndTime(Date.parse(at), slowNowMs.value, zone.value);
  return (
    <>
      <ActButton work={async () => setResult(await test())} {...(fullLabel !== undefined && { label: fullLabel })}>
        {label}
      </ActButton>
      {result !== undefined && (
        <p class="test-result" role="status">
          {result.delivered
            ? words.channels.testTaken(result.reason, time(result.at))
            : words.channels.testNot(result.reason)}
        </p>
      )}
    </>
  );
}
