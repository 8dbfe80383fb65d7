// The one door between a screen and the trade. A question goes in; the answer of the matching kind comes out, or a
// `Trouble` is thrown. This folder alone knows whether the door is a window's inner bridge or a loopback address.
import type { Answer } from '../generated/Answer';
import type { Ask } from '../generated/Ask';
import type { Failure } from '../generated/Failure';
import { handedOver } from '../words/typing';
import { askOverHttp } from './http';
import { askThroughWindow, isInWindow } from './tauri';

/** What went wrong: told by the core, or nothing came back at all. */
export type Trouble = Omit<Failure, 'code'> & { code: Failure['code'] | 'unreachable' };

/** The value that an answer of this kind carries. */
export type AnswerValue<K extends Answer['answer']> =
  Extract<Answer, { answer: K }> extends { value: infer V } ? V : null;

function isFailure(thrown: unknown): thrown is Failure {
  return typeof thrown === 'object' && thrown !== null && 'code' in thrown && 'said' in thrown;
}

/** Turns whatever was thrown at the door into something a screen can show. */
export function asTrouble(thrown: unknown): Trouble {
  if (isFailure(thrown)) return thrown;
  const detail = thrown instanceof Error ? thrown.message : String(thrown);
  return {
    code: 'unreachable',
    said: { code: 'failure-unreachable', args: { detail: { kind: 'text', value: detail } } },
    problems: [],
    checks: [],
  };
}

/** Asks, and answers with whatever comes back. */
export async function ask(question: Ask): Promise<Answer> {
  const handed = handedOver(question);
  return isInWindow() ? askThroughWindow(handed) : askOverHttp(handed);
}

/** Asks a question whose answer is of one known kind. */
export async function askFor<K extends Answer['answer']>(kind: K, question: Ask): Promise<AnswerValue<K>> {
  const answer = await ask(question);
  if (answer.answer !== kind) throw new Error(`asked for ${kind}, was told ${answer.answer}`);
  return ('value' in answer ? answer.value : null) as AnswerValue<K>;
}
