// A sentence on its way: into the outbox first, then to the server; the answer, or what could be read here, onto the screen.
import type { Expects } from '#intents';
import type { JobView, Reply, TurnRequest, TurnResponse } from '#wire';
import { api, type Failure } from '../shared/api.ts';
import { newId } from '../shared/ids.ts';
import type { Outbox, Waiting } from '../shared/outbox.ts';
import { createSender, type Sent } from '../shared/sender.ts';
import { play } from './earcon.ts';
import { readHere } from './kept.ts';
import { bay, type Line } from './state.ts';

export type How = Pick<TurnRequest, 'heardBy' | 'confidence' | 'alternatives'>;

export interface Turns {
  readonly say: (text: string, how: How) => Promise<void>;
  readonly show: (view: JobView) => void;
  /** Puts what was kept before this page was opened back on it. */
  readonly remind: (waiting: readonly Waiting[]) => void;
  readonly kick: () => Promise<void>;
}

const nothing: Expects = { fields: [], yesNo: false };
const linesKept = 200;

export function createTurns(outbox: Outbox, speak: (text: string, pace?: Reply['pace']) => void): Turns {
  const session = newId();
  const mine = new Set<string>();
  const sender = createSender(outbox, ({ request }) => api.turn({ ...request, waitedMs: waited(request) }), {
    settled,
    held,
    changed,
  });

  async function say(text: string, how: How): Promise<void> {
    const request: TurnRequest = { id: newId(), job: bay.get().job, text, heardAt: new Date().toISOString(), ...how };
    mine.add(request.id);
    addLine({ id: request.id, who: 'heard', text, at: request.heardAt, mark: 'sending' });
    bay.set({ last: { turn: request.id, heard: text } });
    await outbox.add(session, request);
    if (bay.get().link === 'down') keptHere(request);
    await sender.kick();
  }

  function settled({ item, outcome }: Sent): void {
    const { request } = item;
    bay.set({ kept: bay.get().kept.filter(({ turn }) => turn !== request.id) });
    if (outcome.ok) {
      bay.set({ link: 'up' });
      const wasKept = lineOf(request.id)?.mark === 'kept';
      unmark(request.id);
      if (mine.delete(request.id)) answered(request, outcome.value, wasKept);
      else if (outcome.value.view) show(outcome.value.view);
    } else if (mine.delete(request.id)) refused(request, outcome);
  }

  function answered({ id, text }: TurnRequest, { job, reply, view }: TurnResponse, wasKept: boolean): void {
    addLine({ id: `${id} reply`, who: 'answered', text: reply.show, at: new Date().toISOString() });
    bay.set({ job, last: { turn: id, heard: text, taken: reply.show, tone: reply.tone } });
    if (view) show(view);
    // Twenty turns sent late are not read out one by one: only what still needs an answer is.
    if (wasKept && reply.tone !== 'ask') return;
    play(reply.tone === 'ask' ? 'ask' : reply.tone === 'refused' ? 'refused' : 'taken');
    speak(reply.speak, reply.pace);
  }

  function refused({ id, text }: TurnRequest, why: Failure): void {
    const words = `${why.message} ${why.whatToDo}`;
    mark(id, 'refused');
    addLine({ id: `${id} reply`, who: 'answered', text: words, at: new Date().toISOString() });
    bay.set({ last: { turn: id, heard: text, taken: words, tone: 'refused' }, giveBack: text });
    play('refused');
  }

  function held(why: Failure, waiting: readonly Waiting[]): void {
    if (why.status === 401 || why.status === 403) bay.set({ notice: `${why.message} ${why.whatToDo}` });
    bay.set({ link: 'down', waiting: waiting.length, late: true });
    for (const { request } of waiting) if (mine.has(request.id) && lineOf(request.id)?.mark === 'sending') keptHere(request);
  }

  function keptHere({ id, text }: TurnRequest): void {
    const { view, settings, kept } = bay.get();
    const reading = readHere(id, text, view?.expects ?? nothing, settings);
    mark(id, 'kept');
    addLine({ id: `${id} kept`, who: 'answered', text: reading.show, at: new Date().toISOString() });
    bay.set({ kept: [...kept, ...reading.values], last: { turn: id, heard: text, taken: reading.show, tone: 'kept' } });
    play('kept');
    speak(reading.speak);
  }

  function remind(waiting: readonly Waiting[]): void {
    bay.set({ waiting: waiting.length, late: waiting.length > 0 });
    for (const { request } of waiting) {
      const { view, settings, kept } = bay.get();
      const { values } = readHere(request.id, request.text, view?.expects ?? nothing, settings);
      addLine({ id: request.id, who: 'heard', text: request.text, at: request.heardAt, mark: 'kept' });
      bay.set({ kept: [...kept, ...values] });
    }
  }

  function changed(waiting: readonly Waiting[]): void {
    bay.set({ waiting: waiting.length, late: bay.get().late && waiting.length > 0 });
  }

  function show(view: JobView): void {
    const now = bay.get();
    if (now.view?.id === view.id && now.view.version > view.version) return;
    if (now.job === view.id || now.job === null) bay.set({ job: view.id, view });
    void outbox.keepView(view).catch(() => undefined);
  }

  return { say, show, remind, kick: sender.kick };
}

/** Since it was spoken, by this device's clock alone. */
const waited = ({ heardAt }: TurnRequest): number => Math.max(0, Date.now() - Date.parse(heardAt));

export function addLine(line: Line): void {
  const { lines } = bay.get();
  if (lines.some(({ id }) => id === line.id)) return;
  bay.set({ lines: [...lines, line].slice(-linesKept) });
}

function lineOf(id: string): Line | undefined {
  return bay.get().lines.find((line) => line.id === id);
}

function mark(id: string, how: NonNullable<Line['mark']>): void {
  bay.set({ lines: bay.get().lines.map((line) => (line.id === id ? { ...line, mark: how } : line)) });
}

function unmark(id: string): void {
  bay.set({ lines: bay.get().lines.map((line) => (line.id === id ? bare(line) : line)) });
}

function bare({ mark: _gone, ...line }: Line): Line {
  return line;
}
