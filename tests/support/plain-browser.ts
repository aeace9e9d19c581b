// A Chromium that nobody looks over the shoulder of: a browser-driving library has the page keep a copy of all that it fetches, which
// counts as the page's memory and as its time. Here only the protocol's few commands that a bench needs go through a pipe.
import { spawn } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Readable, Writable } from 'node:stream';
import { chromiumPath, quietSwitches } from './browser.ts';

export interface PlainPage {
  goto(url: string): Promise<void>;
  /** Resolves when the expression holds. */
  until(expression: string): Promise<void>;
  /** Holds the thumb on the middle of what the selector finds, for so long. */
  hold(selector: string, ms: number): Promise<void>;
  /** Of the largest page process, in megabytes: its own memory, as the browser's task manager shows it, and with what it shares. */
  memory(): { readonly own: number; readonly withShared: number };
  close(): Promise<void>;
}

interface Answer {
  readonly id?: number;
  readonly result?: unknown;
  readonly error?: { readonly message: string };
}

const lookEveryMs = 20;
const patienceMs = 60_000;
export const pause = (ms: number): Promise<void> => new Promise((resolve) => setTimeout(resolve, ms));

export async function openPlain(extra: readonly string[] = []): Promise<PlainPage> {
  const profile = mkdtempSync(join(tmpdir(), 'axlehand-'));
  const own = ['--headless', '--no-first-run', '--window-size=1280,800', '--remote-debugging-pipe', `--user-data-dir=${profile}`];
  const child = spawn(chromiumPath(), [...own, ...quietSwitches, ...extra, 'about:blank'], {
    stdio: ['ignore', 'ignore', 'ignore', 'pipe', 'pipe'],
  });
  const send = conversation(child.stdio[3] as Writable, child.stdio[4] as Readable);

  async function firstPage(): Promise<string> {
    for (;;) {
      const { targetInfos } = await send<{ targetInfos: { targetId: string; type: string }[] }>('Target.getTargets', {});
      const page = targetInfos.find(({ type }) => type === 'page');
      if (page) return page.targetId;
      await pause(lookEveryMs);
    }
  }
  const attached = { targetId: await firstPage(), flatten: true };
  const { sessionId } = await send<{ sessionId: string }>('Target.attachToTarget', attached);
  const ask = <T>(method: string, params: object = {}): Promise<T> => send<T>(method, params, sessionId);

  /** The value of an expression. @throws Error with what the page threw */
  async function evaluate<T>(expression: string): Promise<T> {
    const { result, exceptionDetails } = await ask<{ result: { value: T }; exceptionDetails?: { text: string } }>(
      'Runtime.evaluate',
      { expression, returnByValue: true },
    );
    if (exceptionDetails) throw new Error(`${expression}: ${exceptionDetails.text}`);
    return result.value;
  }

  async function until(expression: string): Promise<void> {
    const end = performance.now() + patienceMs;
    // While one page goes and another comes there is none to ask.
    while (!(await evaluate(expression).catch(() => false))) {
      if (performance.now() > end) throw new Error(`in ${patienceMs / 1000} s it did not come to ${expression}`);
      await pause(lookEveryMs);
    }
  }

  async function hold(selector: string, ms: number): Promise<void> {
    const middle = await evaluate<{ x: number; y: number }>(
      `(({ x, y, width, height }) => ({ x: x + width / 2, y: y + height / 2 }))(document.querySelector('${selector}').getBoundingClientRect())`,
    );
    const thumb = { ...middle, button: 'left', clickCount: 1 };
    await ask('Input.dispatchMouseEvent', { ...thumb, type: 'mousePressed' });
    await pause(ms);
    await ask('Input.dispatchMouseEvent', { ...thumb, type: 'mouseReleased' });
  }

  return {
    goto: (url) => ask('Page.navigate', { url }),
    until,
    hold,
    memory: pageMemory,
    async close() {
      const gone = new Promise((resolve) => child.once('exit', resolve));
      await send('Browser.close', {});
      await gone;
      // Its other processes may be a moment longer at it.
      rmSync(profile, { recursive: true, force: true, maxRetries: 20, retryDelay: 100 });
    },
  };
}

/** Messages end with a zero byte; an answer has its question's number. */
function conversation(to: Writable, from: Readable) {
  const waiting = new Map<number, (answer: Answer) => void>();
  let unread = '';
  from.setEncoding('utf8').on('data', (chunk: string) => {
    const messages = (unread + chunk).split('\0');
    unread = messages.pop() ?? '';
    for (const answer of messages.map((text) => JSON.parse(text) as Answer)) waiting.get(answer.id ?? 0)?.(answer);
  });
  let asked = 0;
  return async <T>(method: string, params: object, sessionId?: string): Promise<T> => {
    asked += 1;
    const id = asked;
    const answered = new Promise<Answer>((resolve) => waiting.set(id, resolve));
    to.write(`${JSON.stringify({ id, method, params, ...(sessionId && { sessionId }) })}\0`);
    const { result, error } = await answered;
    waiting.delete(id);
    if (error) throw new Error(`${method}: ${error.message}`);
    return result as T;
  };
}

function pageMemory(): { readonly own: number; readonly withShared: number } {
  const sizes = readdirSync('/proc').flatMap((pid) => {
    try {
      if (!readFileSync(`/proc/${pid}/cmdline`, 'utf8').includes('--type=renderer')) return [];
      const status = readFileSync(`/proc/${pid}/status`, 'utf8');
      const megabytes = (line: string): number =>
        Math.round(Number(new RegExp(`${line}:\\s+(\\d+) kB`).exec(status)?.[1] ?? 0) / 1000);
      return [{ own: megabytes('RssAnon') + megabytes('VmSwap'), withShared: megabytes('VmRSS') }];
    } catch {
      return [];
    }
  });
  return sizes.reduce((most, size) => (size.withShared > most.withShared ? size : most), { own: 0, withShared: 0 });
}
