// One word of command, one function. A command that moves on waits while a question of the same turn is open.
import type { CommandIntent, CommandName } from '#intents';
import { type Draft, openQuestion, say } from '../draft.ts';
import { hintsFor } from '../hints.ts';
import { askedNow, settle } from '../settle.ts';
import { repairLine } from '../wording/repair.ts';
import { adjust, moved, same } from './again.ts';
import { anyway, no, yes } from './asked.ts';
import { closeJob } from './closing.ts';
import { pause, rename, resume } from './jobs.ts';
import { remind } from './note.ts';
import { question } from './question.ts';
import { readBack, repeat } from './read.ts';
import { back, done, jump, next, skip } from './steps.ts';
import { notYet, told } from './told.ts';
import { undo } from './undo.ts';

type Obey = (draft: Draft, intent: CommandIntent) => Draft;

const moving: ReadonlySet<CommandName> = new Set([
  'next',
  'back',
  'goTo',
  'done',
  'told',
  'skip',
  'pause',
  'resume',
  'closeJob',
  'closeAnyway',
  'openJob',
  'readBack',
]);

const commands: Readonly<Record<CommandName, Obey>> = {
  next,
  nextNut: (draft) => question(draft, { kind: 'question', topic: 'sequence', of: 'next' }),
  back,
  goTo: (draft, { rest }) => jump(draft, rest ?? ''),
  done,
  skip,
  repeat,
  slower: (draft) => ({ ...repeat(draft), pace: 'slow' }),
  readBack,
  undo,
  confirm: yes,
  deny: no,
  pause,
  resume,
  openJob: (draft) => draft,
  renameJob: (draft, { rest }) => rename(draft, rest),
  closeJob: (draft) => (openQuestion(draft)?.about === 'close' ? yes(draft) : closeJob(draft)),
  closeAnyway: (draft) => anyway(draft) ?? closeJob(draft),
  help: (draft) => say(draft, repairLine('help', { could: hintsFor(draft.job, draft.know.shop) }, draft.know.shop)),
  same,
  adjust,
  moved,
  told,
  notYet,
  remind: (draft, { rest, said }) => remind(draft, rest, said),
};

/** What moves on reads back first, and waits while that asks something. */
export function obey(draft: Draft, intent: CommandIntent): Draft {
  if (!moving.has(intent.name)) return commands[intent.name](draft, intent);
  const settled = settle(draft);
  return askedNow(settled) ? settled : commands[intent.name](settled, intent);
}
