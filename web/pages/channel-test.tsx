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
  /** True where the reason says all of it by itself: whether it went out, and when. */
  readonly saysAll?: boolean;
}

export function ChannelTest({ test, label, fullLabel, saysAll = false }: ChannelTestProps) {
  const [result, setResult] = useState<DeliveryResult>();
  const time = (at: string) => dayAndTime(Date.parse(at), slowNowMs.value, zone.value);
  const say = ({ delivered, reason, at }: DeliveryResult) => {
    if (saysAll) return reason;
    return delivered ? words.channels.testTaken(reason, time(at)) : words.channels.testNot(reason);
  };
  return (
    <>
      <ActButton work={async () => setResult(await test())} {...(fullLabel !== undefined && { label: fullLabel })}>
        {label}
      </ActButton>
      {result !== undefined && (
        <p class="test-result" role="status">
          {say(result)}
        </p>
      )}
    </>
  );
}
