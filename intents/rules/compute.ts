// Sums asked mid-job: "half of seventy-two and a quarter", "ninety foot pounds in newton metres", "difference between a and b".
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
const infix: ReadonlyMap<string, Op> = new Map([
  ['plus', 'add'],
  ['+', 'add'],
  ['minus', 'subtract'],
  ['less', 'subtract'],
  ['times', 'multiply'],
  ['multiplied by', 'multiply'],
  ['divided by', 'divide'],
  ['over', 'divide'],
]);

/** Before the first amount; `joint` stands between the two, `swap` when the second is taken from. */
const prefix: readonly { readonly said: string; readonly op: Op; readonly joint: readonly string[]; readonly swap?: boolean }[] =
  [
    { said: 'difference between', op: 'subtract', joint: ['and'] },
    { said: 'difference of', op: 'subtract', joint: ['and'] },
    { said: 'difference from', op: 'subtract', joint: ['to'] },
    { said: 'sum of', op: 'add', joint: ['and'] },
    { said: 'total of', op: 'add', joint: ['and'] },
    { said: 'product of', op: 'multiply', joint: ['and'] },
    { said: 'add', op: 'add', joint: ['and', 'to', 'plus'] },
    { said: 'subtract', op: 'subtract', joint: ['from'], swap: true },
    { said: 'take', op: 'subtract', joint: ['from', 'off', 'away from'], swap: true },
    { said: 'divide', op: 'divide', joint: ['by'] },
    { said: 'multiply', op: 'multiply', joint: ['by', 'times'] },
  ];

/** A share or a multiple of one amount. */
const shares: readonly (readonly [string, Op, string])[] = [
  ['half of', 'divide', '2'],
  ['one half of', 'divide', '2'],
  ['a half of', 'divide', '2'],
  ['a third of', 'divide', '3'],
  ['one third of', 'divide', '3'],
  ['a quarter of', 'divide', '4'],
  ['one quarter of', 'divide', '4'],
  ['twice', 'multiply', '2'],
  ['double', 'multiply', '2'],
  ['two times', 'multiply', '2'],
];

/** No sum takes more words. */
const longest = 60;

/** The sum that a statement asks, when it asks one and nothing else. */
export function computeIn(all: readonly Token[], start: number, stop: number): QuestionIntent | undefined {
  if (stop - start > longest) return undefined;
  const tokens = all.slice(start, stop);
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
  for (const row of prefix) {
    const start = afterWords(tokens, at, row.said) || afterWords(tokens, at - 1, row.said);
    const a = start ? readAmount(tokens, start) : undefined;
    if (!a) continue;
    for (const joint of row.joint) {
      const b = readAfter(tokens, a.end, joint);
      if (b) return row.swap ? sum(row.op, b, a) : sum(row.op, a, b);
    }
  }
  return undefined;
}

function shared(tokens: readonly Token[], at: number): Sum | undefined {
  for (const [said, op, by] of shares) {
    const start = afterWords(tokens, at, said);
    // "one third of an inch" is a length; "double oh seven" a number.
    const plain = tokens[start]?.word === 'a' || tokens[start]?.word === 'an' || tokens[start]?.word === 'oh';
    const a = start && !plain ? readAmount(tokens, start) : undefined;
    if (a && isEnd(tokens, a.end)) return { op, a: amountSaid(a), b: { value: by, unit: '1' } };
  }
  return undefined;
}

/** "how many inches is six foot two", "how many millimetres in an inch". */
function howMany(tokens: readonly Token[], at: number): Sum | undefined {
  const start = afterWords(tokens, at, 'how many') || afterWords(tokens, at, 'how much');
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
  if (!a) return undefined;
  for (const [said, op] of infix) {
    const b = readAfter(tokens, a.end, said);
    if (b && isEnd(tokens, b.end)) return sum(op, a, b);
  }
  return undefined;
}

const isEnd = (tokens: readonly Token[], at: number) =>
  tokens[at] === undefined || tokens[at].word === '?' || tokens[at].word === '.' || tokens[at].word === 'please';

function readAfter(tokens: readonly Token[], at: number, said: string): QuantityReading | undefined {
  const start = afterWords(tokens, at, said);
  return start ? readAmount(tokens, start) : undefined;
}

function afterWords(tokens: readonly Token[], at: number, said: string): number {
  const words = said.split(' ');
  return words.every((word, offset) => tokens[at + offset]?.word === word) ? at + words.length : 0;
}

function sum(op: Op, a: QuantityReading, b: QuantityReading): Sum {
  const unit = a.unit ?? (op === 'add' || op === 'subtract' ? b.unit : undefined);
  return { op, a: { ...amountSaid(a), ...(unit ? { unit } : {}) }, b: amountSaid(b) };
}

function amountSaid(reading: QuantityReading): Said {
  return { value: reading.value.toFraction(), unit: reading.unit ?? '1', unitSaid: reading.unit !== undefined };
}
