// The door over the loopback address that `evensward-serve` opens. The header keeps other pages out: a browser sends it
// across origins only when allowed to, and it is not.
import type { Answer } from '../generated/Answer';
import type { Ask } from '../generated/Ask';

/** Asks over loopback HTTP; a failure told by the core is thrown as it came. */
export async function askOverHttp(ask: Ask): Promise<Answer> {
  const response = await fetch('/api/ask', {
    method: 'POST',
    headers: { 'content-type': 'application/json', 'x-evensward': '1' },
    body: JSON.stringify(ask),
    // What is still being typed when the page goes away must arrive all the same.
    keepalive: ask.ask === 'put_draft',
  });
  const body: unknown = await response.json();
  if (!response.ok) throw body;
  return body as Answer;
}
