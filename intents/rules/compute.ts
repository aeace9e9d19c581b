// Sums asked mid-job: "half of seventy-two and a quarter", "ninety foot pounds in newton metres", "three eighths plus a quarter plus a sixteenth".
import Fraction from 'fraction.js';
import { fieldOf } from '#data';
import { fieldNames } from '../fields.ts';
import { itemAt } from '../items.ts';
import { lexicon } from '../lexicon.ts';
import { part } from '../memo.ts';
import type { Amount } from '../numbers/amount.ts';
import { isNumberWord } from '../numbers/classes.ts';
import { readAmount } from '../numbers/likeliest.ts';
import { readUnit } from '../numbers/unit.ts';
import { phrase } from '../phrase.ts';
import { readerOf } from '../read.ts';
import { spanOf } from '../refine/intents.ts';
import type { Token } from '../tokens.ts';
import type { QuestionIntent, Said, Side, Sum, Term } from '../types.ts';
import { wordList } from '../wordbook.ts';
import {
  infixWords,
  leadWords,
  mannerWords,
  multipleWords,
  nearestWords,
  type Op,
  type Prefix,
  prefixWords,
  shySigns,
  signs,
} from '../words/sums.ts';
import { sideWords } from '../words/where.ts';

const leads = readerOf(phrase(leadWords));
const infix = lexicon(infixWords);
const prefix = lexicon(prefixWords);
const multiples = lexicon(multipleWords);
const manners = lexicon(mannerWords);
const nearestParts = lexicon(nearestWords);
const sides = lexicon(sideWords);
const isSign = wordList(signs);
const isShy = wordList(shySigns);
const isComma = wordList([',']);

/** No sum takes more words. */
const longest = 60;

interface Reading {
  readonly term: Term;
  readonly end: number;
  /** What the same words come to in another order of working them out. */
  readonly otherwise?: Term;
}

/** The sum that a statement asks, when it asks one and nothing else. */
export function computeIn(all: readonly Token[], start: number, stop: number): QuestionIntent | undefined {
  if (stop - start > longest) return undefined;
  const said = part(all, start, stop);
  const tokens = said.some(isComma) ? said.filter((token) => !isComma(token)) : said;
  if (!tokens.some((token) => isSign(token) || isShy(token))) return undefined;
  if (!tokens.some((token, at) => isNumberWord(token) || fieldNames.longest(tokens, at))) return undefined;
  for (const { end } of leads(tokens, 0, tokens.length)) {
    const found = asked(tokens, end) ?? asked(tokens, end - 1);
    if (!found || !('op' in found.term)) continue;
    if (isChoice(tokens)) return undefined;
    const of = tokens.map(({ word }) => word).join(' ');
    const other = found.otherwise && 'op' in found.otherwise ? { otherwise: found.otherwise } : {};
    return { kind: 'question', topic: 'compute', of, sum: found.term, ...other, span: spanOf(all, start, stop) };
  }
  return undefined;
}

/** A "double axle" is a tandem. */
function isChoice(tokens: readonly Token[]): boolean {
  const whole = itemAt(tokens, 0);
  return whole.is === 'choice' && isEnd(tokens, whole.end);
}

/** A sum to its last word, and how its result is to be told. `at` is after the lead, or on the verb that the lead ends with. */
function asked(tokens: readonly Token[], at: number): Reading | undefined {
  if (at < 0) return undefined;
  const opened = at > 0;
  const found = howMany(tokens) ?? nearest(tokens, at) ?? expression(tokens, at, opened);
  if (!found) return undefined;
  const told = mannered(tokens, found, opened);
  return told && isEnd(tokens, told.end) && (opened || reckons(told.term)) ? told : undefined;
}

/** A value of the job by itself is asked for as a value; a number by itself is a number. */
const reckons = (term: Term): boolean => 'op' in term;

/** "how many inches is six foot two", "how many sixteenths in five eighths". */
function howMany(tokens: readonly Token[]): Reading | undefined {
  if (tokens[0]?.word !== 'how' || (tokens[1]?.word !== 'many' && tokens[1]?.word !== 'much')) return undefined;
  const into = intoAt(tokens, 2);
  if (!into) return undefined;
  let from = into.end;
  while (linking.has(tokens[from]?.word ?? '')) from += 1;
  const found = expression(tokens, from, true);
  return found && within(found, into.wrap);
}

const linking: ReadonlySet<string> = new Set('is are in there to does do make makes would be equals equal'.split(' '));

/** "nearest sixteenth to point seven one". */
function nearest(tokens: readonly Token[], at: number): Reading | undefined {
  const start = tokens[at]?.word === 'the' ? at + 1 : at;
  const manner = tokens[start]?.word === 'nearest' ? nearestParts.longest(tokens, start + 1) : undefined;
  if (!manner || !['to', 'of', 'for'].includes(tokens[manner.end]?.word ?? '')) return undefined;
  const found = expression(tokens, manner.end + 1, true);
  return found && within(found, (a) => ({ op: 'tell', a, ...manner.meaning }));
}

type Wrap = (a: Term) => Sum;

const within = ({ term, otherwise, end }: Reading, wrap: Wrap): Reading => ({
  term: wrap(term),
  end,
  ...(otherwise ? { otherwise: wrap(otherwise) } : {}),
});

/** A unit, or a manner of telling: "newton metres", "sixteenths", "a decimal". */
function intoAt(tokens: readonly Token[], at: number): { readonly end: number; readonly wrap: Wrap } | undefined {
  const manner = tokens[at - 1]?.word === 'nearest' ? nearestParts.longest(tokens, at) : manners.longest(tokens, at);
  if (manner) return { end: manner.end, wrap: (a) => ({ op: 'tell', a, ...manner.meaning }) };
  const unit = readUnit(tokens, at);
  return unit && { end: unit.end, wrap: (a) => ({ op: 'convert', a, into: unit.unit }) };
}

/** "… in newton metres", "… to the nearest sixteenth", "… as a decimal". */
function mannered(tokens: readonly Token[], found: Reading, opened: boolean): Reading | undefined {
  // "0.625 in sixteenths": the word between was read as inches.
  const inch = tokens[found.end - 1]?.word === 'in' ? manners.longest(tokens, found.end) : undefined;
  if (inch) return within({ ...found, end: inch.end }, (a) => ({ op: 'tell', a, ...inch.meaning }));
  const joint = tokens[found.end]?.word ?? '';
  if (!['in', 'into', 'to', 'as'].includes(joint)) return found;
  let at = found.end + 1;
  while (tokens[at]?.word === 'the' || tokens[at]?.word === 'nearest') at += 1;
  // "change tread to half" gives a new value; "to the nearest half" and "to halves" tell the old one.
  if (joint === 'to' && at === found.end + 1 && 'field' in found.term && one.has(tokens[at]?.word ?? '')) return undefined;
  const into = intoAt(tokens, at);
  const plain = joint === 'in' || joint === 'into' || joint === 'as' || tokens[at - 1]?.word === 'nearest';
  if (!into || !(opened || plain || unitIn(found.term))) return undefined;
  return within({ ...found, end: into.end }, into.wrap);
}

const one: ReadonlySet<string> = new Set(['half', 'quarter', 'eighth', 'sixteenth']);

const unitIn = (term: Term): boolean => {
  if ('op' in term) return unitIn(term.a) || ('b' in term && unitIn(term.b));
  return 'value' in term && term.unitSaid === true;
};

/** Amounts joined by signs; "offset minus twenty-four" is none. Worked out in the order said, and in the order of the schoolbook where that is another. */
function expression(tokens: readonly Token[], at: number, opened: boolean): Reading | undefined {
  const multiple = multiples.longest(tokens, at);
  const first = term(tokens, multiple?.end ?? at, true);
  if (!first || (multiple && isLength(tokens, multiple.end))) return undefined;
  const links: { readonly op: Op; readonly term: Term }[] = [];
  let { end } = first;
  for (let next = link(tokens, end, opened); next; next = link(tokens, end, opened)) {
    links.push(next);
    end = next.end;
  }
  if (!opened && !multiple && 'field' in first.term && !isBetweenValues(links[0])) return undefined;
  const times = (of: Term): Term => (multiple ? scaled(of, multiple.meaning) : of);
  const head = times(first.term);
  const inOrder = links.reduce<Term>((a, { op, term: b }) => ({ op, a, b }), head);
  const other = multiple && links.length > 0 ? times(chained(first.term, links)) : bound(head, links);
  return { term: inOrder, end, ...(other ? { otherwise: other } : {}) };
}

/** "hub face minus spring centre"; "axle over spring" is a way to hang it. */
const isBetweenValues = (next: { readonly op: Op; readonly term: Term } | undefined): boolean =>
  next !== undefined && !binds(next.op) && 'field' in next.term;

const chained = (first: Term, links: readonly { readonly op: Op; readonly term: Term }[]): Term =>
  links.reduce<Term>((a, { op, term: b }) => ({ op, a, b }), first);

/** "one third of an inch" is a length, "double oh seven" a number. */
const isLength = (tokens: readonly Token[], at: number) => {
  const word = tokens[at]?.word;
  return word === 'oh' || ((word === 'a' || word === 'an') && readUnit(tokens, at + 1) !== undefined);
};

const scaled = (a: Term, [n, d]: readonly [number, number]): Sum => ({
  op: 'multiply',
  a,
  b: { value: new Fraction(n, d).toFraction(), unit: '1' },
});

const binds = (op: Op) => op === 'multiply' || op === 'divide';

/** The schoolbook's order, where times or divided by stands behind plus or minus. */
function bound(first: Term, links: readonly { readonly op: Op; readonly term: Term }[]): Term | undefined {
  const late = links.findIndex(({ op }) => binds(op));
  if (late <= 0 || !links.slice(0, late).some(({ op }) => !binds(op))) return undefined;
  const groups: { readonly op: Op; term: Term }[] = [{ op: 'add', term: first }];
  for (const { op, term: b } of links) {
    const last = groups.at(-1);
    if (binds(op) && last) last.term = { op, a: last.term, b };
    else groups.push({ op, term: b });
  }
  const [head, ...rest] = groups;
  return head && chained(head.term, rest);
}

function link(tokens: readonly Token[], at: number, opened: boolean) {
  const sign = infix.longest(tokens, at);
  if (!sign || (isShy(tokens[at]) && !(opened && isApart(tokens, at)))) return undefined;
  const next = term(tokens, sign.end, true);
  return next && { op: sign.meaning, term: next.term, end: next.end };
}

/** A mark with room on both sides: "72 3/8 - 1/16" is no "72-3/8". */
const isApart = (tokens: readonly Token[], at: number): boolean => {
  const [before, sign, after] = [tokens[at - 1], tokens[at], tokens[at + 1]];
  return !!before && !!sign && !!after && before.span[1] < sign.span[0] && sign.span[1] < after.span[0];
};

/** One amount, a value of the job, or a sum named by its own word: "the difference between a and b". */
function term(tokens: readonly Token[], at: number, named: boolean): Reading | undefined {
  return prefixed(tokens, at) ?? shared(tokens, at) ?? amount(tokens, at) ?? (named ? noted(tokens, at) : undefined);
}

function amount(tokens: readonly Token[], at: number): Reading | undefined {
  const below = ['minus', 'negative', '-'].includes(tokens[at]?.word ?? '');
  const found = readAmount(tokens, below ? at + 1 : at);
  if (!found) return undefined;
  return { term: amountSaid(below ? { ...found, value: found.value.neg() } : found), end: found.end };
}

/** "three quarters of ninety", "ten percent of seven thousand". */
function shared(tokens: readonly Token[], at: number): Reading | undefined {
  const share = readAmount(tokens, at);
  if (!share || tokens[share.end]?.word !== 'of') return undefined;
  const { end } = share;
  const part = percents.has(share.unitWord ?? '');
  if (!part && (share.unit || share.value.compare(1) >= 0)) return undefined;
  const whole = term(tokens, tokens[end + 1]?.word === 'the' ? end + 2 : end + 1, true);
  const by = part ? share.value.div(100) : share.value;
  return whole && { term: scaled(whole.term, [Number(by.n), Number(by.d)]), end: whole.end };
}

const percents: ReadonlySet<string> = new Set(['percent', 'per cent', '%']);

function prefixed(tokens: readonly Token[], at: number): Reading | undefined {
  const found = prefix.longest(tokens, at);
  if (!found) return undefined;
  const { meaning } = found;
  const { terms, end } = joined(tokens, found.end, meaning) ?? atInnerJoint(tokens, found.end, meaning) ?? { terms: [], end: at };
  const [first, second, ...more] = terms;
  if (!first || !second) return undefined;
  if (meaning.swap) return { term: { op: meaning.op, a: second, b: first }, end };
  const whole = [second, ...more].reduce<Term>((a, b) => ({ op: meaning.op, a, b }), first);
  return { term: meaning.mean ? { op: 'divide', a: whole, b: { value: String(terms.length), unit: '1' } } : whole, end };
}

interface Joined {
  readonly terms: readonly Term[];
  readonly end: number;
}

/** Two terms at least, with a joint before each but the first. */
function joined(tokens: readonly Token[], at: number, meaning: Prefix, first = term(tokens, at, true)): Joined | undefined {
  if (!first) return undefined;
  const terms = [first.term];
  let { end } = first;
  for (let next = afterJoint(tokens, end, meaning); next; next = afterJoint(tokens, end, meaning)) {
    terms.push(next.term);
    end = next.end;
  }
  return terms.length > 1 ? { terms, end } : undefined;
}

/** "The difference between six and one sixteenth": what would read as one amount is two where two are due. */
function atInnerJoint(tokens: readonly Token[], at: number, meaning: Prefix): Joined | undefined {
  const joint = tokens.findIndex(({ word }, i) => i > at && meaning.joint.includes(word));
  const first = joint < 0 ? undefined : term(tokens.slice(0, joint), at, true);
  return first?.end === joint ? joined(tokens, at, meaning, first) : undefined;
}

function afterJoint(tokens: readonly Token[], at: number, { joint, op, mean }: Prefix): Reading | undefined {
  if (joint.includes(tokens[at]?.word ?? '')) return term(tokens, at + 1, true);
  return op === 'add' || mean ? amount(tokens, at) : undefined;
}

/** A value that the job holds: "hub face", "the left end play". */
function noted(tokens: readonly Token[], at: number): Reading | undefined {
  let from = at;
  while (['the', 'my', 'our'].includes(tokens[from]?.word ?? '')) from += 1;
  const side = sides.longest(tokens, from);
  const name = fieldNames.longest(tokens, side?.end ?? from);
  const field = name?.meaning.find((id) => fieldOf(id).unit !== undefined);
  if (!name || !field) return undefined;
  return { term: { field, ...(isSide(side?.meaning) ? { side: side.meaning } : {}) }, end: name.end } as Reading;
}

const isSide = (side: unknown): side is Exclude<Side, 'both'> => side === 'left' || side === 'right';

const ends: ReadonlySet<string> = new Set(['?', '.', 'please', '=', 'equals', 'equal', 'now', 'then']);
const isEnd = (tokens: readonly Token[], at: number) => tokens[at] === undefined || ends.has(tokens[at].word);

function amountSaid(reading: Amount): Said {
  return { value: reading.value.toFraction(), unit: reading.unit ?? '1', unitSaid: reading.unit !== undefined };
}
