// Starts a server on a data folder of its own for each test, and ends it afterwards. `ask` asks it directly, for tests
// that want to begin in the middle of things.
import { spawn, type ChildProcess } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { createInterface } from 'node:readline';
import { test as base } from '@playwright/test';
import type { Answer } from '../src/lib/generated/Answer';
import type { Ask } from '../src/lib/generated/Ask';
import type { Failure } from '../src/lib/generated/Failure';

const top = resolve(import.meta.dirname, '..', '..');
const program = process.env['EVENSWARD_SERVE'] ?? join(top, 'target', 'debug', 'evensward-serve');

export class Refused extends Error {
  constructor(readonly failure: Failure) {
    super(JSON.stringify(failure));
  }
}

export class App {
  constructor(
    readonly url: string,
    readonly folder: string,
    readonly process: ChildProcess,
  ) {}

  /** Asks as a screen would. */
  async ask(ask: Ask): Promise<Answer> {
    const response = await fetch(new URL('/api/ask', this.url), {
      method: 'POST',
      headers: { 'content-type': 'application/json', 'x-evensward': '1' },
      body: JSON.stringify(ask),
    });
    const body: unknown = await response.json();
    if (!response.ok) throw new Refused(body as Failure);
    return body as Answer;
  }

  /** The address of a page of the screens. */
  at(hash = '', query = ''): string {
    return `${this.url}${query}${hash}`;
  }

  end(): void {
    this.process.removeAllListeners('exit');
    this.process.kill('SIGKILL');
    rmSync(this.folder, { recursive: true, force: true });
  }
}

/** Starts a server: with the invented firm, or on an empty folder, or on one that was prepared. */
export async function startApp(isEmpty = false, prepare: (folder: string) => void = () => undefined): Promise<App> {
  const folder = mkdtempSync(join(tmpdir(), 'evensward-browser-'));
  prepare(folder);
  const load = isEmpty ? [] : ['--load', join(top, 'demo-data', 'firm.json')];
  const child = spawn(program, ['--data', folder, '--port', '0', '--ui', join(top, 'ui', 'dist'), ...load], {
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  let said = '';
  child.stderr.on('data', (bytes: Buffer) => (said += bytes.toString()));
  const url = await new Promise<string>((found, failed) => {
    child.on('error', failed);
    child.on('exit', (code) => failed(new Error(`${program} ended with ${code}: ${said}`)));
    createInterface({ input: child.stdout }).on('line', (line) => {
      if (line.startsWith('http://')) found(line.trim());
    });
  });
  return new App(url, folder, child);
}

/** A test with a server of its own, and one that stands on an empty folder. */
export const test = base.extend<{ app: App; emptyApp: App }>({
  app: async ({}, use) => {
    const app = await startApp();
    await use(app);
    app.end();
  },
  emptyApp: async ({}, use) => {
    const app = await startApp(true);
    await use(app);
    app.end();
  },
});

export { expect } from '@playwright/test';
