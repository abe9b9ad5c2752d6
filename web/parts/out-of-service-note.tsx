// Says beside a chamber's state which rules raise no alarm there, so that quiet is not taken for good.
import type { ChamberView } from '../../shared/api/chambers.ts';
import { outOfServiceWords } from '../out-of-service-words.ts';

export function OutOfServiceNote({ chamber }: { readonly chamber: ChamberView }) {
  const text = outOfServiceWords(chamber.outOfService);
  return text === '' ? null : <p class="details">{text}</p>;
}
