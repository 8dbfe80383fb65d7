// Which door a fix comes through, and what is said when there is none. The plugin is stood in for: no phone runs these tests.
import { clearMocks, mockIPC } from '@tauri-apps/api/mocks';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import type { Said } from '../generated/Said';
import { watchFixes, type WatchedFix } from './position';

const reading = { timestamp: 1_700_000_000_123.4, coords: { latitude: 51.5, longitude: -0.12, accuracy: 4 } };
let fixes: WatchedFix[];
let troubles: Said[];
const watch = () =>
  watchFixes(
    (fix) => fixes.push(fix),
    (said) => troubles.push(said),
  );

beforeEach(() => {
  fixes = [];
  troubles = [];
});

afterEach(() => vi.unstubAllGlobals());

describe('a plain browser', () => {
  type Tell = (found: typeof reading) => void;
  type Fail = (error: { code: number; PERMISSION_DENIED: number }) => void;
  let tell: Tell;
  let fail: Fail;
  const clearWatch = vi.fn();

  beforeEach(() => {
    const watchPosition = (found: Tell, failed: Fail): number => {
      tell = found;
      fail = failed;
      return 7;
    };
    vi.stubGlobal('window', {});
    vi.stubGlobal('navigator', { userAgent: 'X11', maxTouchPoints: 0, geolocation: { watchPosition, clearWatch } });
  });

  it('tells fixes until it is stopped', () => {
    const stop = watch();
    tell(reading);
    tell({ ...reading, coords: { ...reading.coords, accuracy: 0 } });
    expect(fixes).toEqual([
      { lat: 51.5, lon: -0.12, accuracy_m: 4, at_ms: 1_700_000_000_123 },
      { lat: 51.5, lon: -0.12, accuracy_m: null, at_ms: 1_700_000_000_123 },
    ]);
    stop();
    expect(clearWatch).toHaveBeenCalledWith(7);
  });

  it('says a refusal and a receiver that finds nothing apart', () => {
    watch();
    fail({ code: 1, PERMISSION_DENIED: 1 });
    fail({ code: 3, PERMISSION_DENIED: 1 });
    expect(troubles.map((said) => said.code)).toEqual(['position-refused', 'position-not-found']);
  });

  it('says so where the page is given no position', () => {
    vi.stubGlobal('navigator', { userAgent: 'X11', maxTouchPoints: 0 });
    watch();
    expect(troubles.map((said) => said.code)).toEqual(['position-not-here']);
  });
});

describe('the window', () => {
  const calls: string[] = [];
  let answer: (cmd: string) => unknown;

  beforeEach(() => {
    calls.length = 0;
    vi.stubGlobal('window', { crypto: globalThis.crypto });
    vi.stubGlobal('isTauri', true);
    vi.stubGlobal('navigator', { userAgent: 'Android 14', maxTouchPoints: 5 });
    mockIPC((cmd, args) => {
      calls.push(cmd.replace('plugin:geolocation|', ''));
      if (cmd.endsWith('watch_position')) {
        const channel = (args as { channel: { onmessage: (told: unknown) => void } }).channel;
        channel.onmessage(reading);
        channel.onmessage('the receiver is off');
      }
      return answer(cmd);
    });
  });

  afterEach(() => clearMocks());

  it('asks to be allowed, tells fixes and stops', async () => {
    answer = (cmd) => {
      if (cmd.endsWith('check_permissions')) return { location: 'prompt' };
      return cmd.endsWith('request_permissions') ? { location: 'granted' } : null;
    };
    const stop = watch();
    await vi.waitFor(() => expect(troubles).toHaveLength(1));
    expect(fixes).toEqual([{ lat: 51.5, lon: -0.12, accuracy_m: 4, at_ms: 1_700_000_000_123 }]);
    expect(troubles[0]).toEqual({
      code: 'position-failed',
      args: { detail: { kind: 'text', value: 'the receiver is off' } },
    });
    stop();
    await vi.waitFor(() => expect(calls.at(-1)).toBe('clear_watch'));
    expect(calls).toEqual(['check_permissions', 'request_permissions', 'watch_position', 'clear_watch']);
  });

  it('says that it was refused', async () => {
    answer = () => ({ location: 'denied' });
    watch();
    await vi.waitFor(() => expect(troubles.map((said) => said.code)).toEqual(['position-refused']));
  });

  it('says that a desktop window has no position', () => {
    vi.stubGlobal('navigator', { userAgent: 'X11; Linux', maxTouchPoints: 0 });
    watch();
    expect(troubles.map((said) => said.code)).toEqual(['position-not-here']);
  });
});
