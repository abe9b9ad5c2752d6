// What the shown climate is worth, in one quiet line each: the ± of VPD and dew point, and whether the film is expected to be wet.
import type { ClimateNow } from '../../shared/api/chambers.ts';
import { filmWords, uncertaintyWords } from '../air-words.ts';

function AirLine({ parts }: { readonly parts: readonly string[] }) {
  if (parts.length === 0) return null;
  return (
    <p class="air">
      {parts.map((part) => (
        <span key={part}>{part}</span>
      ))}
    </p>
  );
}

export function AirCertainty({ climate }: { readonly climate: ClimateNow }) {
  return (
    <>
      <AirLine parts={uncertaintyWords(climate)} />
      <AirLine parts={filmWords(climate.film)} />
    </>
  );
}
