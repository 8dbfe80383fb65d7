// Spoken prompts, where the system has a voice. The words come from the catalogue; a prompt that is overtaken by the next
// one is cut short, since what is said late is said wrong.
import { LOUDEST, settings } from './settings.svelte';
import { spokenTongue } from './words';

/** Whether this system can speak. */
export const canSpeak = (): boolean => 'speechSynthesis' in globalThis;

/** Says this aloud, when a voice is wanted. */
export function sayAloud(text: string): void {
  if (!settings.withVoice || settings.isMuted || !canSpeak()) return;
  speechSynthesis.cancel();
  const words = new SpeechSynthesisUtterance(text);
  words.lang = spokenTongue();
  words.volume = settings.volume / LOUDEST;
  speechSynthesis.speak(words);
}

/** Falls silent. */
export function fallSilent(): void {
  if (canSpeak()) speechSynthesis.cancel();
}
