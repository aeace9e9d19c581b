// Reads a conversation file and holds each expectation against what happened. One line, one check.
import { expect } from 'vitest';
import { aTechnician, type Moment, standing, type Technician } from './conversation.ts';

interface Line {
  readonly at: number;
  readonly text: string;
}

const seconds: Readonly<Record<string, number>> = { s: 1, min: 60, h: 3600, d: 86400 };

type Check = (moment: Moment, rest: string, line: Line) => void;

const keys = (moment: Moment, status: string) =>
  (moment.record?.steps ?? []).filter((step) => step.status === status).map(({ step }) => step);

/** The words an expectation starts with. `not` before any of them turns it round. */
const checks: Readonly<Record<string, Check>> = {
  has: ({ record }, rest) => expect(standing(record)).toContain(rest),
  step: ({ record }, rest) => expect(record?.currentStep).toBe(rest),
  asks: ({ record }, rest) => expect(record?.asked?.about ?? 'nothing').toBe(rest),
  code: ({ reply }, rest) => expect(reply.code).toBe(rest),
  tone: ({ reply }, rest) => expect(reply.tone).toBe(rest),
  caution: ({ record }, rest) => expect(record?.cautions.map(({ id }) => id)).toContain(rest),
  done: (moment, rest) => expect(keys(moment, 'done')).toContain(rest),
  skipped: (moment, rest) => expect(keys(moment, 'skipped')).toContain(rest),
  status: ({ record }, rest) => expect(record?.status).toBe(rest),
  speaks: ({ reply }, rest) => expect(reply.speak.toLowerCase()).toContain(rest.toLowerCase()),
  open: ({ view }, rest) => expect(view?.open.map(({ kind, text }) => `${kind}: ${text}`).join('\n')).toContain(rest),
  clear: ({ view }, rest) => expect(view?.open.map(({ kind }) => kind)).not.toContain(rest),
  verdict: ({ record }, rest) => expect(record?.verdict?.verdict).toContain(rest),
  reminders: ({ record }, rest) => expect(record?.reminders.map(({ text }) => text).join('\n')).toContain(rest),
  events: ({ events }, rest) => expect(events.map(({ kind }) => kind).join(' ')).toContain(rest),
  noEvents: ({ events }, rest) => expect(events.map(({ kind }) => kind)).not.toContain(rest),
  kind: ({ record }, rest) => expect(record?.kind).toBe(rest),
  lost: ({ record }, rest) => expect(standing(record).join('\n')).not.toContain(rest),
};

function hold(moment: Moment, line: Line): void {
  const [word = '', ...rest] = line.text.split(' ');
  const check = checks[word];
  if (!check) throw new TypeError(`line ${line.at}: no expectation '${word}'`);
  try {
    check(moment, rest.join(' '), line);
  } catch (cause) {
    const seen = JSON.stringify(
      {
        reply: moment.reply.speak,
        code: moment.reply.code,
        standing: standing(moment.record),
        asked: moment.record?.asked?.about,
        step: moment.record?.currentStep,
      },
      null,
      1,
    );
    throw new Error(`line ${line.at}: expected ${line.text}\n${seen}\n${String(cause)}`, { cause });
  }
}

/** Plays the file: `> said`, `= expectation`, `@ what happens besides`, `#` a remark. @returns how much was said and held */
export function play(script: string, technician: Technician = aTechnician()): { readonly said: number; readonly held: number } {
  let moment: Moment | undefined;
  let manner: Parameters<Technician['say']>[1] = { heardBy: 'typed' };
  let late = 0;
  let held = 0;
  for (const [i, raw] of script.split('\n').entries()) {
    const line = { at: i + 1, text: raw.slice(2).trim() };
    if (raw.startsWith('> ')) {
      moment = technician.say(line.text, manner, late);
      manner = { heardBy: manner.heardBy };
      late = 0;
    } else if (raw.startsWith('= ')) {
      if (!moment) throw new TypeError(`line ${line.at}: nothing was said yet`);
      hold(moment, line);
      held += 1;
    } else if (raw.startsWith('@ ')) {
      const [what, ...rest] = line.text.split(' ');
      if (what === 'wait') technician.wait(ms(rest[0] ?? ''));
      else if (what === 'late') late = ms(rest[0] ?? '');
      else if (what === 'restart') technician.restart();
      else if (what === 'leave') technician.leave();
      else if (what === 'voice') manner = { heardBy: 'builtIn', confidence: Number(rest[0] ?? '0.95') };
      else if (what === 'typed') manner = { heardBy: 'typed' };
      else if (what === 'or') manner = { ...manner, alternatives: [...(manner.alternatives ?? []), rest.join(' ')] };
      else throw new TypeError(`line ${line.at}: no direction '${what}'`);
    } else if (raw.trim() !== '' && !raw.startsWith('#')) throw new TypeError(`line ${line.at}: a line starts with > = @ or #`);
  }
  return { said: technician.turnsSaid(), held };
}

function ms(text: string): number {
  const [, count, unit = 's'] = /^(\d+)([a-z]+)$/.exec(text) ?? [];
  return Number(count) * (seconds[unit] ?? 1) * 1000;
}
