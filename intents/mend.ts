// Mishearings and spellings put right before reading: rows of data/mishearings.json, homophones only where a number can stand,
// and, as a last resort, a field's name by its sound. What was heard is kept on the token.
import { fields, type Mishearing, mishearings } from '#data';
import { fieldNames, holds } from './fields.ts';
import { lexicon, sequencesOf } from './lexicon.ts';
import { classOf, isNumberWord } from './numbers/classes.ts';
import { readParts } from './numbers/fraction.ts';
import { readUnit } from './numbers/unit.ts';
import { anyOf } from './phrase.ts';
import { bySound, known } from './sound.ts';
import { bySpelling } from './spelling.ts';
import { type Token, tokenOf } from './tokens.ts';
import { wordList } from './wordbook.ts';
import { changeWords } from './words/correcting.ts';
import { denominators, unitOrdinals } from './words/fractions.ts';
import { joinedWords } from './words/numbers.ts';

/** "ate" may be eight or eighths: the first row whose place fits is taken. */
const heard = new Map<string, Mishearing[]>();
for (const row of mishearings) heard.set(row.heard.toLowerCase(), [...(heard.get(row.heard.toLowerCase()) ?? []), row]);
for (const [joined, meant] of joinedWords)
  heard.set(joined, [{ heard: joined, meant, reason: 'written in one', source: 'rule' }]);
const joined = new Set(joinedWords.map(([word]) => word));
const rows = lexicon([...heard].map(([words, meanings]) => [meanings, [words]] as const));

/** The same text as it was meant. Spans still point into the text as it was given. */
export function mend(given: readonly Token[]): readonly Token[] {
  const plain = given.filter((token, at) => !isNumberHyphen(token, given[at - 1], given[at + 1]));
  const tokens = sidesTold(bySpelling(plain));
  const mended: Token[] = [];
  for (let at = 0; at < tokens.length; ) {
    const found = rows.longest(tokens, at);
    const row = found?.meaning.find(({ where }) => holdsHere(where, tokens, at, found.end, mended));
    if (found && row) {
      mended.push(...replaced(tokens, at, found.end, row.meant));
      at = found.end;
    } else {
      const token = tokens[at];
      if (token) mended.push(...(isContraction(token) ? apart(token) : [token]));
      at += 1;
    }
  }
  return bySound(mended);
}

/** "Left at two hundred, right at one twenty": once a left was said, "right at" is no hedge but the other side. */
function sidesTold(tokens: readonly Token[]): readonly Token[] {
  const left = tokens.findIndex(({ word }) => word === 'left');
  if (left < 0) return tokens;
  return tokens.flatMap((token, at) =>
    at > left && token.word === 'right' && tokens[at + 1]?.word === 'at'
      ? [token, tokenOf('side', token.kind, token.span, true, token.heard)]
      : [token],
  );
}

/** "the drop's four", "hub's at": a known noun and "is", unless the two together are a word of their own ("driver's side"). */
const isContraction = ({ word }: Token): boolean => word.endsWith("'s") && !isKnown(word) && isKnown(word.slice(0, -2));

const isKnown = (word: string): boolean => known.has(word) || spelt.has(word);

/** Other spellings of one word by one word: "tire". */
const spelt: ReadonlyMap<string, string> = new Map(
  mishearings
    .filter(({ heard: word, meant, where }) => where === undefined && !/ /.test(word + meant))
    .map(({ heard: word, meant }) => [word, meant]),
);

function apart(token: Token): Token[] {
  const [start, end] = token.span;
  const noun = token.word.slice(0, -2);
  return [
    tokenOf(spelt.get(noun) ?? noun, token.kind, [start, end - 2], token.glued, token.heard),
    tokenOf('is', token.kind, [end - 2, end], true, token.heard),
  ];
}

/** "seventy-two", "one-hundred", "half-inch": the hyphen says nothing; between digits it does. */
function isNumberHyphen(token: Token, before: Token | undefined, after: Token | undefined): boolean {
  if (token.word !== '-') return false;
  if (token.glued && isNumberWord(before) && after?.word === 'to') return true;
  if (before?.kind !== 'word' || after?.kind !== 'word') return false;
  if (classOf(before)?.is === 'tens' && classOf(after)?.is === 'digit') return true;
  return (
    token.glued &&
    after.glued &&
    (isNumberWord(before) ||
      joined.has(before.word) ||
      before.word === 'half' ||
      before.word === 'quarter' ||
      before.word === 'and')
  );
}

function replaced(tokens: readonly Token[], at: number, end: number, meant: string): Token[] {
  const first = tokens[at];
  const last = tokens[end - 1];
  if (!first || !last) return [];
  const span = [first.span[0], last.span[1]] as const;
  const heard = tokens
    .slice(at, end)
    .map(({ word }) => word)
    .join(' ');
  return meant.split(' ').map((word, index) => tokenOf(word, 'word', span, index === 0 && first.glued, heard));
}

function holdsHere(
  where: string | undefined,
  tokens: readonly Token[],
  at: number,
  end: number,
  before: readonly Token[],
): boolean {
  const last = before.at(-1);
  switch (where) {
    case undefined:
      return true;
    case 'digit':
      return isDigitHere(tokens, at, end, before);
    case 'denominator':
      return (
        classOf(last)?.is === 'article' ||
        classOf(last)?.is === 'digit' ||
        classOf(last)?.is === 'teen' ||
        last?.kind === 'number'
      );
    case 'part':
      return isPartHere(tokens, end, before);
    case 'joint':
      return isNumberWord(last) && last?.kind === 'word' && readParts(tokens, end).length > 0;
    case 'number':
      return isNumberish(tokens, end) || isNumberWord(last) || readUnit(tokens, end) !== undefined;
    default:
      return (
        isNumberish(tokens, end) || ((tokens[end]?.word === 'is' || tokens[end]?.word === 'at') && isNumberish(tokens, end + 1))
      );
  }
}

/** "three and seven eight": after a whole, "and" and a digit only a part can follow. */
function isPartHere(tokens: readonly Token[], end: number, before: readonly Token[]): boolean {
  const [whole, and, top] = [before.at(-3), before.at(-2), classOf(before.at(-1))];
  const counts = top?.is === 'digit' || top?.is === 'teen';
  return (
    counts &&
    classOf(and)?.is === 'and' &&
    isNumberWord(whole) &&
    !isNumberish(tokens, end) &&
    !denominators.has(tokens[end]?.word ?? '')
  );
}

const isNumberish = (tokens: readonly Token[], at: number) => isNumberWord(tokens[at]) || classOf(tokens[at])?.is === 'point';

/** "Is one sixty too hot": no two. */
const tooWhat = new Set(
  'hot warm cold high low loose tight wide narrow long short big small much many heavy light thick thin deep soft hard far close near'.split(
    ' ',
  ),
);

/** "Balance point to six hundred": the point of a name begins no decimals. */
const pointNames = new Set(fields.flatMap(({ said }) => said).flatMap((name) => /(\w+) point$/.exec(name)?.[1] ?? []));

/** "to", "for", "ate", "won" and their like are digits only between the other parts of a number. */
function isDigitHere(tokens: readonly Token[], at: number, end: number, before: readonly Token[]): boolean {
  const word = tokens[at]?.word ?? '';
  if (word === 'too' && tooWhat.has(tokens[end]?.word ?? '')) return false;
  const named = pointNames.has(before.at(-2)?.word ?? '');
  const previous = named && before.at(-1)?.word === 'point' ? undefined : classOf(before.at(-1));
  const range = (word === 'to' || word === 'for') && isNumberish(tokens, end) && previous?.is !== 'point';
  const afterTens = previous?.is === 'tens' && !endsFraction(before) && !range;
  const inDecimal =
    previous?.is === 'point' || (isDigit(previous?.is) && before.slice(-6).some((token) => classOf(token)?.is === 'point'));
  if (afterTens || (inDecimal && !range)) return true;
  const starts = before.length === 0 || classOf(before.at(-1))?.is === 'and' || !isNumberWord(before.at(-1));
  return starts && leadsNumber(tokens, end, word, before);
}

/** "Change the serial to kilo oh seven": what is spelled has no units. */
const spelledNames = new Set(
  fields
    .filter(({ id }) => /^(serial|vin)$/.test(holds(id)))
    .flatMap(({ said }) => said.map((name) => name.split(' ').at(-1) ?? '')),
);

const changing = wordList(sequencesOf(anyOf(changeWords)).flatMap(([first = '']) => first));
const isDigit = (is: string | undefined) => is === 'zero' || is === 'digit';
const endsFraction = (before: readonly Token[]) => unitOrdinals.has(before.at(-1)?.word ?? '');

/** What follows shows that a number began: "won hundred", "for on", "to and three", "sex inch". */
function leadsNumber(tokens: readonly Token[], end: number, word: string, before: readonly Token[]): boolean {
  const next = tokens[end];
  if (denominatorWords.has(next?.word ?? '') && classOf(before.at(-1))?.is === 'and') return true;
  const follows = classOf(next);
  if ((word === 'won' || word === 'too') && (follows?.is === 'tens' || follows?.is === 'teen')) return true;
  if (follows?.is === 'hundred' || (follows?.is === 'scale' && next?.word !== 'score')) return true;
  if (next?.word === 'on' || next?.word === 'by' || next?.word === 'lug') return canCount(tokens, end + 1) && before.length === 0;
  if (before.at(-1)?.word === 'on' || before.at(-1)?.word === 'by') return isNumberWord(before.at(-2));
  const alone = word === 'to' || word === 'for' || word === 'too';
  if (follows?.is === 'and') return canCount(tokens, end + 1);
  const last = before.at(-1)?.word ?? '';
  // "Change the drop to inch and a half".
  const changes = word === 'to' && changing(before[0]);
  const named = fieldNames.vocabulary.has(last) && !spelledNames.has(last) && !changes;
  const parted = follows?.is === 'tens' && unitOrdinals.has(tokens[end + 1]?.word ?? '');
  if (named && (readUnit(tokens, end) || parted || (word !== 'to' && word !== 'for' && next === undefined))) return true;
  const sized = readUnit(tokens, end) !== undefined || denominators.has(next?.word ?? '') || follows?.is === 'point';
  return sized && (!alone || before.length === 0 || classOf(before.at(-1))?.is === 'and');
}

const digitWords = new Set(mishearings.filter(({ where }) => where === 'digit').map(({ heard }) => heard));
const denominatorWords = new Set(mishearings.filter(({ where }) => where === 'denominator').map(({ heard }) => heard));
const canCount = (tokens: readonly Token[], at: number) =>
  isNumberWord(tokens[at]) ||
  digitWords.has(tokens[at]?.word ?? '') ||
  classOf(tokens[at])?.is === 'article' ||
  tokens[at]?.word === 'half';
