// What can be heard and felt beside what is seen: a short tick for a tap that was accepted, a lower one for a tap that
// was refused. Devices without sound or vibration stay silent: sight always says it too.
import { settings } from './settings.svelte';

let audio: AudioContext | undefined;

function beep(hertz: number, seconds: number): void {
  audio ??= new AudioContext();
  void audio.resume();
  const tone = audio.createOscillator();
  const loud = audio.createGain();
  const now = audio.currentTime;
  tone.frequency.value = hertz;
  loud.gain.setValueAtTime(0.25, now);
  loud.gain.exponentialRampToValueAtTime(0.001, now + seconds);
  tone.connect(loud).connect(audio.destination);
  tone.start(now);
  tone.stop(now + seconds);
}

function feel(pattern: number | number[]): void {
  if ('vibrate' in navigator) navigator.vibrate(pattern);
}

/** A tap was accepted and is on disk. */
export function tickAccepted(): void {
  if (settings.isMuted) return;
  feel(40);
  if ('AudioContext' in window) beep(1200, 0.08);
}

/** A tap was refused. */
export function tickRefused(): void {
  if (settings.isMuted) return;
  feel([60, 60, 60]);
  if ('AudioContext' in window) beep(300, 0.25);
}

/** Keeps the screen on; answers with how to let it go. Where the device cannot, nothing happens. */
export function stayAwake(): () => void {
  let lock: WakeLockSentinel | undefined;
  let isOver = false;
  const hold = (): void => {
    if (isOver || document.visibilityState !== 'visible' || !('wakeLock' in navigator)) return;
    navigator.wakeLock.request('screen').then(
      (given) => {
        if (isOver) void given.release();
        else lock = given;
      },
      // A device low on power refuses; the walk goes on all the same.
      () => undefined,
    );
  };
  hold();
  document.addEventListener('visibilitychange', hold);
  return () => {
    isOver = true;
    document.removeEventListener('visibilitychange', hold);
    void lock?.release();
  };
}
