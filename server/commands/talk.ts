// The conversation in a terminal or a pipe: a line in, the reply out. The same turn line as the page's.
import { createInterface } from 'node:readline';
import { parseArgs } from 'node:util';
import type { TurnResponse } from '#wire';
import { addDemo, logPath, openHouse } from '../http/house.ts';
import { createTurns, type Outcome } from '../http/turns.ts';
import { complain } from './complain.ts';

const options = { db: { type: 'string' }, job: { type: 'string' }, json: { type: 'boolean' } } as const;

/** `talk [--db FILE] [--job ID|new] [--json]`. Reads lines to the end of input; exits 0 there. */
export async function run(args: readonly string[]): Promise<number> {
  try {
    const { values } = parseArgs({ args: [...args], options });
    const house = await openHouse(values.db ?? logPath());
    try {
      if (house.log.isNew) await addDemo(house);
      const job = values.job === undefined || values.job === 'new' ? null : values.job;
      if (job !== null && !house.log.job(job))
        return refuse(`there is no job ${job}. Say --job new, or a number from the log book.`);
      return await converse(createTurns(house.log, house.speech, house.clock), house.clock, job, values.json === true);
    } finally {
      house.log.close();
    }
  } catch (error) {
    return complain(error);
  }
}

type Turns = ReturnType<typeof createTurns>;

async function converse({ take }: Turns, clock: () => string, first: string | null, json: boolean): Promise<number> {
  // Whoever reads us may have heard enough: a closed pipe is an end, not a fault.
  process.stdout.on('error', ({ code }: NodeJS.ErrnoException) => process.exit(code === 'EPIPE' ? 0 : 1));
  const lines = createInterface({ input: process.stdin, terminal: false });
  let job = first;
  for await (const text of lines) {
    if (text.trim() === '') continue;
    const outcome = take({ id: crypto.randomUUID(), job, text, heardBy: 'typed', heardAt: clock() }, 'terminal');
    if (outcome.ok) job = outcome.value.job ?? job;
    console.log(json ? JSON.stringify(asLine(text, outcome)) : plain(outcome));
  }
  return 0;
}

function asLine(heard: string, outcome: Outcome<TurnResponse>): object {
  if (!outcome.ok) return { heard, error: outcome };
  const { intents, reply, events, job } = outcome.value;
  return { heard, job, intents, reply, events };
}

const plain = (outcome: Outcome<TurnResponse>): string =>
  outcome.ok ? `${outcome.value.reply.show}\n` : `Not taken: ${outcome.code}\n`;

function refuse(text: string): number {
  console.error(`axlehand: ${text}`);
  return 1;
}
