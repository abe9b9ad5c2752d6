// The healing day as a large numeral in the margin, to be read from three metres.
import type { ChamberView } from '../../shared/api/chambers.ts';
import { words } from '../strings.ts';

export function Folio({ batch }: { readonly batch: ChamberView['batch'] }) {
  if (batch === null)
    return (
      <div class="folio is-empty" aria-hidden="true">
        <b>{words.units.none}</b>
      </div>
    );
  const isClosed = batch.closedAt !== null;
  return (
    <div class="folio">
      <small>{isClosed ? words.overview.day : words.overview.filling}</small>{' '}
      <b>{isClosed ? batch.healingDay : words.overview.fillingMark}</b>
    </div>
  );
}
