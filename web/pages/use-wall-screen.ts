// What a screen that hangs for months needs: kept awake, its picture moved a little so that nothing burns in, a new version taken at once.
import { useEffect } from 'preact/hooks';
import { MINUTE_MS } from '../../shared/units.ts';
import { slowNowMs } from '../clock.ts';
import { isOutdated } from '../new-version.ts';
import { isNight } from '../wall-steps.ts';
import { zoneOffsetMs } from '../when.ts';

/** Places the picture is moved between, minute by minute. */
const shifts = 4;

function keepAwake(): () => void {
  let lock: WakeLockSentinel | undefined;
  const ask = async () => {
    if (document.visibilityState !== 'visible' || !('wakeLock' in navigator)) return;
    try {
      lock = await navigator.wakeLock.request('screen');
    } catch (problem) {
      // A browser may refuse, for example on a low battery: then the screen sleeps as it is set to.
      if (!(problem instanceof DOMException)) throw problem;
    }
  };
  const onShow = () => void ask();
  void ask();
  document.addEventListener('visibilitychange', onShow);
  return () => {
    document.removeEventListener('visibilitychange', onShow);
    void lock?.release();
  };
}

/** Keeps the screen awake and the page new; returns how the picture is to be shown now. */
export function useWallScreen(zone: string): { readonly shift: number; readonly isNight: boolean } {
  useEffect(keepAwake, []);
  useEffect(() => {
    if (isOutdated.value) location.reload();
  }, [isOutdated.value]);
  const nowMs = slowNowMs.value;
  const hour = new Date(nowMs + zoneOffsetMs(nowMs, zone)).getUTCHours();
  return { shift: Math.floor(nowMs / MINUTE_MS) % shifts, isNight: isNight(hour) };
}
