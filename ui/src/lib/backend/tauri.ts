// The door inside the app's own window. Nothing outside this file may import `@tauri-apps`.
import { invoke, isTauri } from '@tauri-apps/api/core';
import type { Answer } from '../generated/Answer';
import type { Ask } from '../generated/Ask';

/** Whether the screens run inside the app's own window. */
export const isInWindow = (): boolean => isTauri();

/** Asks through the window's bridge. */
export const askThroughWindow = (ask: Ask): Promise<Answer> => invoke<Answer>('ask', { ask });
