// Sums asked mid-job: "half of seventy-two and a quarter", "ninety foot pounds in newton metres", "difference between a and b".
import { lexicon } from '../lexicon.ts';
import { isNumberWord } from '../numbers/classes.ts';
import { type QuantityReading, readAmount } from '../numbers/quantity.ts';
import { readUnit } from '../numbers/unit.ts';
import { phrase } from '../phrase.ts';
import { matches } from '../read.ts';
import { spanOf } from '../refine/intents.ts';
import type { Token } from '../tokens.ts';
import type { QuestionIntent, Said, Sum } from '../types.ts';

/** What may come before a sum. */
const lead = phrase(
  "[okay|so|and] [(what|how much|what's|whats) [is|are|was|would be|does|do] [the]|calculate|work out|figure [out]|compute|tell me [what]|give me|convert|turn|change|find|add|subtract|take|divide|multiply|split|how many|sum] [is|the|a]",
);

type Op = Exclude<Sum['op'], 'convert'>;

/** Between two amounts. */
const infix = lexicon<Op>([
  ['add', ['plus', '+']],
  ['subtract', ['minus', 'less']],
  ['multiply', ['times', 'multiplied by']],
  ['divide', ['divided by', 'over']],
]);

/** Before the first amount; `joint` stands between the two, `swap` when the second is what is taken from. */
interface Prefix {
  readonly op: Op;
  readonly joint: readonly string[];
  readonly swap?: boolean;
}

const prefix = lexicon<Prefix>([
  [{ op: 'subtract', joint: ['and', 'to'] }, ['difference (between|of|from)']],
  [{ op: 'add', joint: ['and'] }, ['(sum|total) of']],
  [{ op: 'multiply', joint: ['and'] }, ['product of']],
  [{ op: 'add', joint: ['and', 'to', 'plus'] }, ['add']],
  [{ op: 'subtract', joint: ['from', 'off'], swap: true }, ['(subtract|take)']],
  [{ op: 'divide', joint: ['by'] }, ['divide']],
  [{ op: 'multiply', joint: ['by', 'times'] }, ['multiply']],
]);

/** A share or a multiple of one amount. */
const shares = lexicon<{ readonly op: Op; readonly by: string }>([
  [{ op: 'divide', by: '2' }, ['[a|one] half of']],
  [{ op: 'divide', by: '3' }, ['(a|one) third of']],
  [{ op: 'divide', by: '4' }, ['(a|one) quarter of']],
  [{ op: 'multiply', by: '2' }, ['(twice|double|two times)']],
]);

/** Without one of these nothing is computed. */
const signs: ReadonlySet<string> = new Set(
  'plus + minus less times multiplied divided over difference sum total product add subtract take divide multiply of twice double in into as many much convert turn'.split(
    ' ',
  ),
);

/** No sum takes more words. */
const longest = 60;

/** The sum that a statement asks, when it asks one and nothing else. */
export function computeIn(all: readonly Token[], start: number, stop: number): QuestionIntent | undefined {
  if (stop - start > longest) return undefined;
  const tokens = all.slice(start, stop);
  if (!tokens.some(({ word }) => signs.has(word)) || !tokens.some(isNumberWord)) return undefined;
  for (const { end } of matches(lead, tokens, 0, tokens.length)) {
    const sum =
      prefixed(tokens, end) ??
      shared(tokens, end) ??
      howMany(tokens, 0) ??
      converted(tokens, end, end > 0) ??
      joined(tokens, end);
    if (!sum) continue;
    const of = tokens.map(({ word }) => word).join(' ');
    return { kind: 'question', topic: 'compute', of, sum, span: spanOf(all, start, stop) };
  }
  return undefined;
}

function prefixed(tokens: readonly Token[], at: number): Sum | undefined {
  const found = prefix.longest(tokens, at) ?? prefix.longest(tokens, at - 1);
  const a = found && readAmount(tokens, found.end);
  if (!a) return undefined;
  const { op, joint, swap } = found.meaning;
  const b = joint.includes(tokens[a.end]?.word ?? '') ? readAmount(tokens, a.end + 1) : undefined;
  if (!b) return undefined;
  return swap ? sum(op, b, a) : sum(op, a, b);
}

function shared(tokens: readonly Token[], at: number): Sum | undefined {
  const found = shares.longest(tokens, at);
  // "one third of an inch" is a length; "double oh seven" a number.
  const word = found && tokens[found.end]?.word;
  if (!found || word === 'a' || word === 'an' || word === 'oh') return undefined;
  const a = readAmount(tokens, found.end);
  return a && isEnd(tokens, a.end)
    ? { op: found.meaning.op, a: amountSaid(a), b: { value: found.meaning.by, unit: '1' } }
    : undefined;
}

/** "how many inches is six foot two", "how many millimetres in an inch". */
function howMany(tokens: readonly Token[], at: number): Sum | undefined {
  const asked = tokens[at]?.word === 'how' && (tokens[at + 1]?.word === 'many' || tokens[at + 1]?.word === 'much');
  const start = asked ? at + 2 : 0;
  const unit = start ? readUnit(tokens, start) : undefined;
  if (!unit) return undefined;
  let from = unit.end;
  while (
    ['is', 'are', 'in', 'there', 'to', 'does', 'do', 'make', 'makes', 'would', 'be', 'equals', 'equal'].includes(
      tokens[from]?.word ?? '',
    )
  )
    from += 1;
  const a = readAmount(tokens, from);
  return a ? { op: 'convert', a: amountSaid(a), into: unit.unit } : undefined;
}

/** "ninety foot pounds in newton metres", "convert 72 inches to millimetres". */
function converted(tokens: readonly Token[], at: number, opened: boolean): Sum | undefined {
  const a = readAmount(tokens, at);
  const joint = a && tokens[a.end]?.word;
  if (!a || !(joint === 'in' || joint === 'into' || joint === 'to' || joint === 'as')) return undefined;
  const unit = readUnit(tokens, a.end + 1);
  const final = unit && isEnd(tokens, unit.end);
  return unit && final && (opened || a.unit !== undefined) ? { op: 'convert', a: amountSaid(a), into: unit.unit } : undefined;
}

function joined(tokens: readonly Token[], at: number): Sum | undefined {
  const a = readAmount(tokens, at);
  const op = a && infix.longest(tokens, a.end);
  const b = op && readAmount(tokens, op.end);
  return a && b && isEnd(tokens, b.end) ? sum(op.meaning, a, b) : undefined;
}

const isEnd = (tokens: readonly Token[], at: number) =>
  tokens[at] === undefined || tokens[at].word === '?' || tokens[at].word === '.' || tokens[at].word === 'please';

function sum(op: Op, a: QuantityReading, b: QuantityReading): Sum {
  const unit = a.unit ?? (op === 'add' || op === 'subtract' ? b.unit : undefined);
  return { op, a: { ...amountSaid(a), ...(unit ? { unit } : {}) }, b: amountSaid(b) };
}

function amountSaid(reading: QuantityReading): Said {
  return { value: reading.value.toFraction(), unit: reading.unit ?? '1', unitSaid: reading.unit !== undefined };
}
