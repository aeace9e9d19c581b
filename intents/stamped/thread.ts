// Threads: "half twenty", "nine-sixteenths eighteen", "1/2-20", "M12 by one point five".
import Fraction from 'fraction.js';
import { unitAndPart } from '../numbers/amount.ts';
import { type NumberReading, readNumbers } from '../numbers/number.ts';
import { readUnit } from '../numbers/unit.ts';
import type { Token } from '../tokens.ts';
import type { Stamp } from './types.ts';

/** Coarse and fine threads an inch, by size: ASME B1.1 unified series (from memory). Without a field's name only these count. */
const unified: ReadonlyMap<string, readonly number[]> = new Map([
  ['1/4', [20, 28]],
  ['5/16', [18, 24]],
  ['3/8', [16, 24]],
  ['7/16', [14, 20]],
  ['1/2', [13, 20]],
  ['9/16', [12, 18]],
  ['5/8', [11, 18]],
  ['3/4', [10, 16]],
  ['7/8', [9, 14]],
  ['1', [8, 12, 14]],
  ['9/8', [7, 12]],
  ['5/4', [7, 12]],
  ['3/2', [6, 12]],
]);

const joints = new Set(['by', 'x', '-', 'dash', 'thread', '*']);
const series = new Set(['unf', 'unc', 'fine', 'coarse', 'thread', 'threads']);

export function readThread(tokens: readonly Token[], at: number, asked: boolean): Stamp | undefined {
  return metric(tokens, at) ?? inch(tokens, at, asked);
}

function metric(tokens: readonly Token[], at: number): Stamp | undefined {
  const inMm = readNumbers(tokens, at).find(({ value, end }) => value.d === 1n && readUnit(tokens, end)?.unit === 'mm');
  const by = inMm && readUnit(tokens, inMm.end)?.end;
  const fine = by && readNumbers(tokens, joints.has(tokens[by]?.word ?? '') ? by + 1 : by).find(isPitch);
  if (inMm && fine && joints.has(tokens[by]?.word ?? '') && fine.value.compare(4) <= 0 && inMm.value.compare(30) <= 0)
    return stamp(fine.end, `M${inMm.value.toFraction()}x${fine.value.toString()}`);
  // "Fourteen millimetre one point five": a size of bolt and a decimal.
  if (inMm && fine && fine.shape === 'decimal' && metricSizes.has(Number(inMm.value.n)))
    return stamp(fine.end, `M${inMm.value.toFraction()}x${fine.value.toString()}`);
  const bare = by && !joints.has(tokens[by]?.word ?? '') && fine && series.has(tokens[fine.end]?.word ?? '');
  if (inMm && bare) return stamp(afterSeries(tokens, fine.end), `M${inMm.value.toFraction()}x${fine.value.toString()}`);
  const letter = tokens[at]?.word;
  if (letter !== 'm' && letter !== 'em' && letter !== 'metric') return undefined;
  for (const size of readNumbers(tokens, at + 1)) {
    const joined = joints.has(tokens[size.end]?.word ?? '');
    const [pitch] = readNumbers(tokens, joined ? size.end + 1 : size.end);
    if (size.value.d !== 1n || size.value.compare(64) > 0 || !pitch || !isPitch(pitch)) continue;
    // "M fourteen one point five": only a decimal can be a pitch with no joint before it.
    if (joined || pitch.shape === 'decimal') return stamp(pitch.end, `M${size.value.toFraction()}x${pitch.value.toString()}`);
  }
  return undefined;
}

/** Sizes of metric wheel studs and U-bolts (from memory). */
const metricSizes: ReadonlySet<number> = new Set([8, 10, 12, 14, 16, 18, 20, 22, 24]);

const isPitch = ({ value }: NumberReading) => value.s > 0n && value.compare(6) <= 0;

function inch(tokens: readonly Token[], at: number, asked: boolean): Stamp | undefined {
  for (const size of sizes(tokens, at)) {
    const unit = readUnit(tokens, size.end);
    const afterUnit = unit?.unit === 'in' && unit.times.compare(1) === 0 ? unit.end : size.end;
    const joined = joints.has(tokens[afterUnit]?.word ?? '');
    const bare = size.value.d === 1n && afterUnit === size.end && !joined;
    if (bare && !asked) continue;
    const named = pitchNamed(tokens[afterUnit]?.word, size.value);
    if (named) return stamp(afterSeries(tokens, afterUnit), `${size.value.toFraction()}-${named}`);
    const pitch = readNumbers(tokens, joined ? afterUnit + 1 : afterUnit).find(
      ({ value, shape }) => shape === 'whole' && value.compare(4) >= 0 && value.compare(64) <= 0,
    );
    if (!pitch || tokens[pitch.end]?.word === '/') continue;
    const known = unified.get(size.value.toFraction())?.includes(Number(pitch.value.n)) ?? false;
    if (!known && !(asked && !bare && size.value.compare(3) < 0 && 16n % size.value.d === 0n && pitch.value.compare(6) >= 0))
      continue;
    return stamp(afterSeries(tokens, pitch.end), `${size.value.toFraction()}-${pitch.value.toFraction()}`);
  }
  return undefined;
}

/** "half inch fine": the one coarse and the one fine thread of a size in the table. */
function pitchNamed(word: string | undefined, size: Fraction): number | undefined {
  const pitches = unified.get(size.toFraction());
  if (word === 'coarse' || word === 'unc') return pitches?.[0];
  return word === 'fine' || word === 'unf' ? pitches?.[1] : undefined;
}

/** "fine thread", "right hand": heard as belonging to the thread, no part of its name. */
function afterSeries(tokens: readonly Token[], at: number): number {
  let end = at;
  while (series.has(tokens[end]?.word ?? '')) end += 1;
  const hand = tokens[end + 1]?.word === 'hand' && (tokens[end]?.word === 'right' || tokens[end]?.word === 'left');
  return hand && tokens[end + 2]?.word !== 'side' ? end + 2 : end;
}

/** A size in inches; "inch" alone is one. */
function sizes(tokens: readonly Token[], at: number): Pick<NumberReading, 'value' | 'end'>[] {
  const bare = unitAndPart(tokens, at);
  const one = tokens[at]?.word === 'inch' ? [{ value: new Fraction(1), end: at + 1 }] : [];
  const numbers = readNumbers(tokens, at).filter(({ shape }) => shape !== 'decimal' || tokens[at]?.kind === 'number');
  return [...(bare?.unit === 'in' ? [bare] : []), ...numbers, ...one];
}

const stamp = (end: number, value: string): Stamp => ({ end, holds: 'thread', field: 'studThread', value });
