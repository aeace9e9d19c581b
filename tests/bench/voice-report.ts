// Which clips the voice bench makes, and the table of what came of them.
import type { Expects } from '#intents';
import { nothing, type Utterance } from './voice-sets.ts';

const conditions = [
  ['clean', Number.POSITIVE_INFINITY],
  ['20 dB', 20],
  ['10 dB', 10],
  ['5 dB', 5],
] as const;

export type Set =
  | 'whole'
  | 'narrowed'
  | 'bare'
  | 'phrases'
  | 'recorded numbers'
  | 'hub service'
  | 'chatter'
  | 'chatter, waiting'
  | 'noise'
  | 'noise, waiting';

export interface Clip {
  readonly id: number;
  /** Clips of one recording share it, and go to the same process. */
  readonly source: number;
  readonly set: Set;
  readonly text: string;
  readonly expects: Expects;
  readonly voice: number;
  readonly condition: string;
  readonly db: number;
}

export interface Result extends Clip {
  readonly best: string;
  readonly kind: string;
  readonly fit: number;
  readonly lead: number;
  readonly ms: number;
  /** The same in processor time, which a busy machine does not stretch. */
  readonly cpuMs: number;
  readonly seconds: number;
  readonly right: boolean;
  readonly band: 'take' | 'ask' | 'refuse';
  /** If it is asked about, the right value is among what is offered. */
  readonly offered: boolean;
}

interface Wanted {
  readonly named: readonly Utterance[];
  readonly bare: readonly Utterance[];
  readonly phrases: readonly Utterance[];
  readonly job: readonly Utterance[];
  readonly recorded: readonly Utterance[];
  readonly chatter: readonly Utterance[];
  readonly voices: number;
}

const waiting: Expects = { fields: ['hubFace'], yesNo: false };
const voicesInAll = 6;
/** Comes after the synthetic voices. */
const recordedVoice = voicesInAll;

export function clipsOf({ named, bare, phrases, job, recorded, chatter, voices }: Wanted): Clip[] {
  const clips: Clip[] = [];
  let source = 0;
  const add = (set: Set, { text, expects }: Utterance, voice: number, which: readonly (typeof conditions)[number][]): void => {
    for (const [condition, db] of which) clips.push({ id: clips.length, source, set, text, expects, voice, condition, db });
  };
  const each = (utterances: readonly Utterance[], many: number, sets: (utterance: Utterance, voice: number) => void): void => {
    utterances.forEach((utterance, index) => {
      for (let turn = 0; turn < many; turn += 1) {
        sets(utterance, (index + turn * Math.ceil(voicesInAll / many)) % voicesInAll);
        source += 1;
      }
    });
  };
  each(named, voices, (utterance, voice) => {
    add('whole', { ...utterance, expects: nothing }, voice, conditions);
    add(
      'narrowed',
      utterance,
      voice,
      conditions.filter(([name]) => name === '10 dB'),
    );
  });
  each(bare, voices, (utterance, voice) => add('bare', utterance, voice, conditions));
  each(phrases, 1, (utterance, voice) => add('phrases', utterance, voice, conditions));
  const some = conditions.filter(([name]) => name === 'clean' || name === '10 dB');
  each(job, voicesInAll, (utterance, voice) => add('hub service', utterance, voice, some));
  each(recorded, 1, (utterance) => add('recorded numbers', utterance, recordedVoice, conditions));
  each(chatter, 1, (utterance, voice) => {
    add('chatter', utterance, voice, some);
    add('chatter, waiting', { ...utterance, expects: waiting }, voice, some);
  });
  for (let index = 0; index < 16; index += 1) {
    add(index % 2 ? 'noise' : 'noise, waiting', { text: '', expects: index % 2 ? nothing : waiting }, 0, conditions.slice(0, 1));
    source += 1;
  }
  return clips;
}

const percent = (part: number, whole: number): string => ((100 * part) / Math.max(1, whole)).toFixed(1).padStart(6);
const quantile = (values: readonly number[], at: number): number =>
  [...values].sort((a, b) => a - b)[Math.floor(at * (values.length - 1))] ?? 0;

export function table(results: readonly Result[]): string {
  const groups = grouped(results);
  const rows = [...groups]
    .sort(([, [a]], [, [b]]) => (a?.id ?? 0) - (b?.id ?? 0))
    .map(([name, group]) => (/^(chatter|noise)/.test(name) ? strangers(name, group) : row(name, group)));
  const short = results.filter(({ seconds }) => seconds <= 4.6);
  const times = (of: (result: Result) => number): string => {
    const sorted = short.map(of);
    return `p50 ${quantile(sorted, 0.5).toFixed(0)} ms, p95 ${quantile(sorted, 0.95).toFixed(0)} ms`;
  };
  const factor =
    results.reduce((sum, { cpuMs }) => sum + cpuMs, 0) / 1000 / results.reduce((sum, { seconds }) => sum + seconds, 0);
  return [
    'percent of clips                   right | taken right | taken WRONG | asked, right one offered | asked, not offered | refused |   n',
    ...rows,
    `decoding, utterances to 4 s: by the clock ${times(({ ms }) => ms)}; by the processor ${times(({ cpuMs }) => cpuMs)}; real-time factor ${factor.toFixed(2)}`,
  ].join('\n');
}

function grouped(results: readonly Result[]): Map<string, Result[]> {
  const groups = new Map<string, Result[]>();
  for (const result of results) {
    const name = `${result.set} | ${result.condition}`;
    groups.set(name, [...(groups.get(name) ?? []), result]);
  }
  return groups;
}

function row(name: string, group: readonly Result[]): string {
  const share = (fits: (result: Result) => boolean) => percent(group.filter(fits).length, group.length);
  const cells = [
    share(({ right }) => right),
    share(({ right, band }) => right && band === 'take'),
    share(({ right, band }) => !right && band === 'take'),
    share(({ offered, band }) => band === 'ask' && offered),
    share(({ offered, band }) => band === 'ask' && !offered),
    share(({ band }) => band === 'refuse'),
  ];
  return `${name.padEnd(33)} ${cells.join('  ')}  ${group.length}`;
}

/** Nothing of this is for us: how much of it was let in, as a measurement or as a command. */
function strangers(name: string, group: readonly Result[]): string {
  const number = ({ kind }: Result) => kind === 'measure' || kind === 'bare';
  const share = (fits: (result: Result) => boolean) => percent(group.filter(fits).length, group.length);
  const taken = share((result) => result.band === 'take' && number(result));
  const command = share((result) => result.band === 'take' && !number(result));
  const asked = share(({ band }) => band === 'ask');
  return `${name.padEnd(33)} taken as a measurement ${taken}, as a command ${command}, asked about ${asked}  ${group.length}`;
}
