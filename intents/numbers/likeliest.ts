// The likeliest reading of a number and its unit, given what can be what is being measured.
import Fraction from 'fraction.js';
import type { UnitId } from '#data';
import { remembered } from '../memo.ts';
import type { Token } from '../tokens.ts';
import { type Amount, unitAndPart, withUnit } from './amount.ts';
import { classOf } from './classes.ts';
import { type NumberReading, readNumbers } from './number.ts';

/** Whether a number can be what is being measured; settles "seventy-two fifty-eight" and its like. */
export interface Plausible {
  (value: Fraction, unit: UnitId | undefined): boolean;
  /** Read off a gauge in decimals, whose point is often left unsaid. */
  readonly decimal?: boolean;
  /** Read off in thousandths, or in thirty-seconds, which are often called by their number alone. */
  readonly countedIn?: number;
}

/** Number with its unit; feet take the inches that follow. */
export function readAmount(tokens: readonly Token[], at: number, plausible?: Plausible): Amount | undefined {
  const [first] = likeliestAmount(tokens, at);
  const longer = plausible?.countedIn === 1000 && first ? andThou(tokens, first) : undefined;
  const likeliest = longer && plausible?.(longer.value, longer.unit) ? longer : first;
  if (!plausible || !likeliest || plausible(likeliest.value, likeliest.unit)) return likeliest;
  const small = thousandsForThousandths(tokens, likeliest.number);
  if (small && plausible(small.value, small.unit)) return small;
  const called = plausible.countedIn ? partUnsaid(tokens, likeliest, plausible.countedIn) : undefined;
  const counted = called && plausible(called.value, called.unit) ? called : undefined;
  // Only a run of chunks may be cut short; a fraction or a schoolbook number was said whole.
  if (likeliest.number.whole?.form !== 'run' || likeliest.number.shape !== 'whole') return counted ?? likeliest;
  const thousandths = withoutPoint(tokens, likeliest.number);
  if (thousandths && plausible(thousandths.value, thousandths.unit)) return thousandths;
  const pointed = plausible.decimal ? pointUnsaid(tokens, likeliest.number, plausible) : undefined;
  const decimal = pointed ?? counted;
  if (decimal) return decimal;
  const shorter = readNumbers(tokens, at)
    .slice(1)
    .map((number) => withUnit(tokens, number));
  return shorter.find(({ value, unit }) => plausible(value, unit)) ?? likeliest;
}

/** "two thousands" of an end play were thousandths, misheard. */
function thousandsForThousandths(tokens: readonly Token[], number: NumberReading): Amount | undefined {
  if (!/^thousands?$/.test(tokens[number.end - 1]?.word ?? '')) return undefined;
  const value = number.value.div(1_000_000);
  return withUnit(tokens, { ...number, value, soundsLike: [number.value], shape: 'decimal', resolution: '1/1000' });
}

/** "Drum ten and thirty thou" is 10.030; "four and six thou" are two readings, for no end play is four inches. */
function andThou(tokens: readonly Token[], whole: Amount): Amount | undefined {
  if (whole.number.shape !== 'whole' || classOf(tokens[whole.end])?.is !== 'and') return undefined;
  const [rest] = likeliestAmount(tokens, whole.end + 1);
  const isThou = rest?.unit === 'in' && rest.value.compare(1) < 0 && /^thou/.test(rest.unitWord ?? '');
  return isThou ? { ...whole, end: rest.end, unit: 'in', value: whole.value.add(rest.value), resolution: '1/1000' } : undefined;
}

/** "End play six" off a dial is .006, an inner journal typed 1375 is 1.375, and a tread of five is 5/32. */
function partUnsaid(tokens: readonly Token[], { number, unit }: Amount, size: number): Amount | undefined {
  if (number.shape !== 'whole' || unit !== undefined) return undefined;
  const value = number.value.div(size);
  const soundsLike = [number.value, ...number.soundsLike.map((like) => like.div(size))];
  return withUnit(tokens, { ...number, value, soundsLike, shape: 'decimal', resolution: `1/${size}` });
}

/** "oh oh five" off a dial is .005: digits that lead with nought, the point unsaid. */
function withoutPoint(tokens: readonly Token[], number: NumberReading): Amount | undefined {
  const digits = number.whole?.digits ?? '';
  if (!/^0\d\d/.test(digits)) return undefined;
  const value = new Fraction(`0.${digits}`);
  return withUnit(tokens, { ...number, value, soundsLike: [], shape: 'decimal', resolution: `1/${10 ** digits.length}` });
}

/** "one three seven four" of a journal is 1.374, "eleven nine" of a battery 11.9: the point stands after the first words. */
function pointUnsaid(tokens: readonly Token[], number: NumberReading, plausible: Plausible): Amount | undefined {
  const { digits = '', head = 0 } = number.whole ?? {};
  if (head === 0) return undefined;
  const value = new Fraction(`${digits.slice(0, head)}.${digits.slice(head)}`);
  const resolution = `1/${10 ** (digits.length - head)}`;
  const found = withUnit(tokens, { ...number, value, soundsLike: [], shape: 'decimal', resolution });
  return plausible(found.value, found.unit) ? found : undefined;
}

const likeliestAmount = remembered((tokens: readonly Token[], at: number): readonly Amount[] => {
  const bare = unitAndPart(tokens, at);
  if (bare) return [bare];
  const [number] = readNumbers(tokens, at);
  return number ? [withUnit(tokens, number)] : [];
});
