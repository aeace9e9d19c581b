// Plays a conversation written as said/expected through the real turn line and a real log in a temporary file.
import { expect } from 'vitest';
import type { FieldId, StockAxle } from '#data';
import type { JobView, Reply } from '#dialogue';
import { openLog } from '#log';
import { type EventBody, foldAll, type HeardBy, type JobRecord, type ValueRecord } from '#log/events';
import rack from '../../data/demo/stock.json' with { type: 'json' };
import { loadSpeech } from '../../server/http/load-speech.ts';
import { createTurns } from '../../server/http/turns.ts';
import { somewhere } from './log.ts';

/** What one line of the script can be checked against. */
export interface Moment {
  readonly record: JobRecord | null;
  readonly view: JobView | null;
  readonly reply: Reply;
  readonly events: readonly EventBody[];
}

interface Manner {
  heardBy: HeardBy;
  confidence?: number;
  alternatives?: readonly string[];
}

const speech = await loadSpeech();

/** A technician at a shop of its own: says things, lets time pass, comes back another day. */
export function aTechnician(path = somewhere()) {
  let log = openLog(path);
  if (log.isNew) log.putStock(rack.rows as readonly StockAxle[]);
  let now = Date.parse('2026-11-25T08:00:00.000Z');
  const clock = () => new Date(now).toISOString();
  let turns = createTurns(log, speech, clock);
  let job: string | null = null;
  let said = 0;

  return {
    say(text: string, manner: Manner = { heardBy: 'typed' }, lateMs = 0): Moment {
      now += 5000;
      const id = `turn-${String(++said).padStart(8, '0')}`;
      const kept = lateMs > 0 ? { waitedMs: lateMs } : {};
      const outcome = turns.take({ id, job, text, heardAt: clock(), ...kept, ...manner }, 'bay 1');
      if (!outcome.ok) throw new TypeError(`turn refused: ${outcome.code}`);
      job = outcome.value.job ?? job;
      const record = job === null ? null : log.job(job);
      if (job !== null && record) expect(foldAll(job, log.events(job))).toEqual(record);
      return { record, view: outcome.value.view, reply: outcome.value.reply, events: outcome.value.events };
    },
    wait(ms: number): void {
      now += ms;
    },
    /** The server is stopped and started again on the same file. */
    restart(): void {
      log.close();
      log = openLog(path);
      turns = createTurns(log, speech, clock);
    },
    job: (): JobRecord | null => (job === null ? null : log.job(job)),
    leave: (): void => {
      job = null;
    },
    events: () => (job === null ? [] : log.events(job)),
    turnsSaid: () => said,
    close: () => log.close(),
  };
}

export type Technician = ReturnType<typeof aTechnician>;

/** Values that stand, as `field[.side][@axle]:stage=value unit status`. */
export function standing(job: JobRecord | null): readonly string[] {
  return (job?.values ?? []).filter(({ status }) => status === 'heard' || status === 'confirmed').map(nameOf);
}

function nameOf({ field, side, axle, stage, value, unit, status }: ValueRecord): string {
  return `${field satisfies FieldId}${side ? `.${side}` : ''}${axle ? `@${axle}` : ''}:${stage}=${value}${unit && unit !== '1' ? ` ${unit}` : ''} ${status}`;
}
