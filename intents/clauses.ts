// The clauses of a statement: what tells a defect is a note, what measures is measured, each in its turn.
import { fieldOf } from '#data';
import type { Item } from './items.ts';
import { isValue } from './refine/cells.ts';
import { isPlausibleFor } from './refine/compatible.ts';
import { brokenAt, defectAt, partAt } from './rules/remark.ts';
import type { Token } from './tokens.ts';

interface Clause {
  readonly is: 'remark' | 'measures';
  readonly items: readonly Item[];
}

/** No clause that tells a defect has more parts. */
const longest = 60;

/** Clauses in the order said; a statement that tells no defect is one clause of measures. */
export function clausesOf(items: readonly Item[], tokens: readonly Token[]): readonly Clause[] {
  const others = items.some((item) => isOtherPart(item, tokens));
  if (!others && !defectAt(tokens, items[0]?.start ?? 0, items.at(-1)?.end ?? 0)) return [{ is: 'measures', items }];
  const pieces = split(items)
    .flatMap((piece) => (piece.length > longest ? [piece] : parted(piece, tokens)))
    .map((piece) => ({ items: piece, is: piece.length > longest ? 'measures' : kindOf(piece, tokens) }));
  if (pieces.every(({ is }) => is !== 'remark')) return [{ is: 'measures', items }];
  const clauses: { is: Clause['is']; items: Item[] }[] = [];
  for (const [at, { is, items: piece }] of pieces.entries()) {
    const last = clauses.at(-1);
    const kind = is === 'words' ? sideOf(piece, last?.is, pieces[at + 1]?.is) : is;
    if (last?.is === kind) last.items.push(...piece);
    else clauses.push({ is: kind, items: [...piece] });
  }
  return clauses;
}

function split(items: readonly Item[]): Item[][] {
  const pieces: Item[][] = [[]];
  for (const item of items) {
    pieces.at(-1)?.push(item);
    if (item.is === 'stop' || item.is === 'and') pieces.push([]);
  }
  return pieces.filter((piece) => piece.length > 0);
}

/** "Left hanger cracked hub face seventy-two": a defect told of one thing before another is named and measured, or after. */
function parted(piece: readonly Item[], tokens: readonly Token[]): (readonly Item[])[] {
  const first = piece.findIndex((item) => isValue(item) && isMeasured(item, piece, tokens));
  const last = piece.findLastIndex(isValue);
  const name = piece.findLastIndex((item, at) => item.is === 'names' && at < first);
  if (name < 0) return [piece];
  const from = nameStart(piece, name);
  const [before, after] = [piece.slice(0, from), piece.slice(last + 1)];
  const [leads, trails] = [tellsDefect(before, tokens), tellsDefect(after, tokens)];
  return [leads ? before : [], piece.slice(leads ? from : 0, trails ? last + 1 : piece.length), trails ? after : []].filter(
    ({ length }) => length > 0,
  );
}

/** The place right before a name goes with it, but not "on the left" after what is said to be there. */
function nameStart(piece: readonly Item[], name: number): number {
  const isPlace = (at: number) => piece[at]?.is === 'place' || piece[at]?.is === 'position';
  let from = name;
  while (isPlace(from - 1)) from -= 1;
  return piece[from - 1]?.is === 'filler' ? name : from;
}

type Kind = Clause['is'] | 'words';

function kindOf(piece: readonly Item[], tokens: readonly Token[]): Kind {
  const values = piece.filter(isValue);
  if (values.some((value) => isMeasured(value, piece, tokens))) return 'measures';
  if (tellsDefect(piece, tokens) || sizesOther(piece, tokens)) return 'remark';
  return values.length > 0 ? 'measures' : 'words';
}

/** Words without a value go with the defect beside them, unless they name what the next clause measures. */
function sideOf(words: readonly Item[], last: Kind | undefined, next: Kind | undefined): Clause['is'] {
  const names = next === 'measures' && words.some(({ is }) => is === 'names');
  return (last === 'remark' && !names) || next === 'remark' ? 'remark' : 'measures';
}

/** "Two studs", "steel wheels" only tell which part, "bent half an inch" how much; what a name calls for was measured. */
function isMeasured(value: Item, piece: readonly Item[], tokens: readonly Token[]): boolean {
  if (value.is === 'stamp') return true;
  if (value.is !== 'number') return false;
  const { unit, hedge, to, number, value: size } = value.quantity;
  const counts =
    number.shape === 'whole' && unit === undefined && hedge === undefined && to === undefined && size.compare(24) <= 0;
  if (counts && brokenAt(tokens, value.end)) return false;
  const names = piece.filter((item) => item.is === 'names' && (!counts || item.end <= value.start));
  const fields = names.flatMap((item) => (item.is === 'names' ? item.fields : []));
  return fields.some((field) => fieldOf(field).unit !== '1' && isPlausibleFor(value, field));
}

/** "Ball size two inch", "the jack is two thousand pound": of a part that has no field, told before its size. */
function sizesOther(piece: readonly Item[], tokens: readonly Token[]): boolean {
  const [value] = piece.filter(isValue);
  const named = piece.some(({ is }) => is === 'names' || is === 'position');
  return value?.is === 'number' && !named && piece.some((item) => item.end <= value.start && isOtherPart(item, tokens));
}

const isOtherPart = ({ is, start }: Item, tokens: readonly Token[]): boolean => is === 'stray' && partAt(tokens, start);

/** A condition outside of what is one choice by name: a "bent tang" is none. */
function tellsDefect(piece: readonly Item[], tokens: readonly Token[]): boolean {
  const [start, end] = [piece[0]?.start ?? 0, piece.at(-1)?.end ?? 0];
  const chosen = piece.filter(({ is }) => is === 'choice');
  const defect = defectAt(tokens, start, end);
  return defect !== undefined && !chosen.some((choice) => choice.start <= defect.start && defect.end <= choice.end);
}
