// Where the phone says it is, fix by fix, while a lawn is walked round. On a phone the window asks its own position plugin;
// a plain browser asks the page's; a desktop window has neither and says so. What a fix is worth is worked out elsewhere.
import { checkPermissions, clearWatch, requestPermissions, watchPosition } from '@tauri-apps/plugin-geolocation';
import type { Said } from '../generated/Said';
import { isInWindow } from './tauri';

/** One fix, as a walked round takes it. */
export interface WatchedFix {
  lat: number;
  lon: number;
  accuracy_m: number | null;
  at_ms: number | null;
}

/** Why no fixes come. Each is the code of a sentence, too. */
export type PositionTrouble = 'position-refused' | 'position-not-here' | 'position-not-found' | 'position-failed';

/** Fresh fixes only, from the best receiver there is; a minute without one is worth saying. */
const WANTED = { enableHighAccuracy: true, maximumAge: 0, timeout: 60_000 };

/** Whether the window is a phone's: tablets that pass for a desktop have a touch screen. */
function isPhone(): boolean {
  const agent = navigator.userAgent;
  return /Android|iPhone|iPad|iPod/.test(agent) || (agent.includes('Macintosh') && navigator.maxTouchPoints > 1);
}

const troubleSaid = (code: PositionTrouble, detail?: string): Said => ({
  code,
  args: detail === undefined ? {} : { detail: { kind: 'text', value: detail } },
});

/** The page's and the plugin's reading have one shape. */
interface Reading {
  timestamp: number;
  coords: { latitude: number; longitude: number; accuracy: number };
}

function fixOf(reading: Reading): WatchedFix {
  const { latitude, longitude, accuracy } = reading.coords;
  return {
    lat: latitude,
    lon: longitude,
    // A receiver without an estimate says nought or less.
    accuracy_m: accuracy > 0 ? accuracy : null,
    at_ms: Number.isFinite(reading.timestamp) ? Math.round(reading.timestamp) : null,
  };
}

/**
 * Tells every fix until it is stopped. Troubles may come at any time, also after fixes: the receiver may find itself
 * again, so that only a refusal and a missing receiver are final.
 */
export function watchFixes(onFix: (fix: WatchedFix) => void, onTrouble: (said: Said) => void): () => void {
  if (!isInWindow()) return watchPage(onFix, onTrouble);
  if (isPhone()) return watchPlugin(onFix, onTrouble);
  onTrouble(troubleSaid('position-not-here'));
  return () => {};
}

function watchPage(onFix: (fix: WatchedFix) => void, onTrouble: (said: Said) => void): () => void {
  // Pages that came over an open network are given no position by the browser, which then lacks the whole object.
  if (!('geolocation' in navigator)) {
    onTrouble(troubleSaid('position-not-here'));
    return () => {};
  }
  const watch = navigator.geolocation.watchPosition(
    (reading) => onFix(fixOf(reading)),
    (error) => {
      const isRefused = error.code === error.PERMISSION_DENIED;
      onTrouble(troubleSaid(isRefused ? 'position-refused' : 'position-not-found'));
    },
    WANTED,
  );
  return () => navigator.geolocation.clearWatch(watch);
}

function watchPlugin(onFix: (fix: WatchedFix) => void, onTrouble: (said: Said) => void): () => void {
  let isStopped = false;
  let watch: number | null = null;
  const failed = (error: unknown): void => {
    if (!isStopped) onTrouble(troubleSaid('position-failed', error instanceof Error ? error.message : String(error)));
  };
  const begin = async (): Promise<void> => {
    let allowed = (await checkPermissions()).location;
    if (allowed !== 'granted') allowed = (await requestPermissions(['location'])).location;
    if (isStopped) return;
    if (allowed !== 'granted') {
      onTrouble(troubleSaid('position-refused'));
      return;
    }
    const begun = await watchPosition(WANTED, (reading, error) => {
      if (isStopped) return;
      if (reading) onFix(fixOf(reading));
      else if (error) onTrouble(troubleSaid('position-failed', error));
    });
    // Stopped while the plugin was still starting.
    if (isStopped) await clearWatch(begun);
    else watch = begun;
  };
  begin().catch(failed);
  return () => {
    isStopped = true;
    if (watch !== null) clearWatch(watch).catch(failed);
  };
}
