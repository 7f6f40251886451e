/**
 * A browser of the machine, driven without a library: Chromium takes commands on one pipe and
 * answers on another, messages of JSON with a zero byte between them.
 *
 * References
 * - Chrome DevTools Protocol, https://chromedevtools.github.io/devtools-protocol/;
 *   `--remote-debugging-pipe` reads file descriptor 3 and writes 4.
 */
import { spawn } from 'node:child_process';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Readable, Writable } from 'node:stream';

export interface BrowserPage {
  /** One command of the protocol to the page. @throws With the browser's own words if it refuses. */
  send(method: string, params?: object): Promise<Record<string, unknown>>;
  close(): Promise<void>;
}

/** Nothing is fetched behind the page's back, and nothing of the reader's own browser is used. */
const flags = [
  '--headless=new',
  '--remote-debugging-pipe',
  '--disable-gpu',
  '--no-first-run',
  '--no-default-browser-check',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
  '--hide-scrollbars',
];

interface Message {
  readonly id?: number;
  readonly result?: Record<string, unknown>;
  readonly error?: { readonly message: string };
}

/** Start the browser at `path` with one empty page. */
export async function openPage(path: string): Promise<BrowserPage> {
  const folder = await mkdtemp(join(tmpdir(), 'mirrorleaf-browser-'));
  // Chromium refuses its sandbox to the administrator, as whom containers often run.
  const asRoot = process.getuid?.() === 0 ? ['--no-sandbox'] : [];
  const child = spawn(path, [...flags, ...asRoot, `--user-data-dir=${folder}`, 'about:blank'], {
    stdio: ['ignore', 'ignore', 'ignore', 'pipe', 'pipe'],
  });
  const [, , , commands, answers] = child.stdio as unknown as [
    null,
    null,
    null,
    Writable,
    Readable,
  ];
  const waiting = new Map<number, PromiseWithResolvers<Record<string, unknown>>>();
  const ended = Promise.withResolvers<void>();
  const failAll = (reason: Error) => {
    for (const one of waiting.values()) one.reject(reason);
    waiting.clear();
  };
  child.on('error', (error) => {
    failAll(new Error(`The browser ${path} did not start: ${error.message}`));
    ended.resolve();
  });
  child.on('exit', (code) => {
    failAll(new Error(`The browser ${path} ended by itself (exit code ${code ?? 'none'}).`));
    ended.resolve();
  });
  commands.on('error', () => undefined);
  readMessages(answers, ({ id, result, error }) => {
    if (id === undefined) return;
    const one = waiting.get(id);
    waiting.delete(id);
    if (error) one?.reject(new Error(error.message));
    else one?.resolve(result ?? {});
  });

  let last = 0;
  const send = (method: string, params: object = {}, sessionId?: string) => {
    const answer = Promise.withResolvers<Record<string, unknown>>();
    last += 1;
    waiting.set(last, answer);
    commands.write(`${JSON.stringify({ id: last, method, params, sessionId })}\0`);
    return answer.promise;
  };
  const close = async () => {
    child.kill();
    await ended.promise;
    await rm(folder, { recursive: true, force: true, maxRetries: 5 });
  };
  try {
    const { targetId } = await send('Target.createTarget', { url: 'about:blank' });
    const { sessionId } = await send('Target.attachToTarget', { targetId, flatten: true });
    return { send: (method, params) => send(method, params, sessionId as string), close };
  } catch (error) {
    await close();
    throw error;
  }
}

function readMessages(from: Readable, take: (message: Message) => void): void {
  let rest: Buffer[] = [];
  from.on('data', (bytes: Buffer) => {
    let begin = 0;
    for (let end = bytes.indexOf(0); end >= 0; end = bytes.indexOf(0, begin)) {
      rest.push(bytes.subarray(begin, end));
      take(JSON.parse(Buffer.concat(rest).toString('utf8')) as Message);
      rest = [];
      begin = end + 1;
    }
    rest.push(bytes.subarray(begin));
  });
}
