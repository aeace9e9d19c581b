// Exact numbers into words and into digits. Nothing is rounded: what we say or show parses back to the same value.
import Fraction from 'fraction.js';
import { spokenFraction } from '../words/fractions.ts';
import { cardinal, digitByDigit } from '../words/numbers.ts';

/** `tape`: halves to sixty-fourths; `thousandths`: five thousandths; `decimal`: point by point. */
export type NumberStyle = 'tape' | 'thousandths' | 'decimal';

function isTape(value: Fraction): boolean {
  return value.d <= 64n && (value.d & (value.d - 1n)) === 0n;
}

/** Terminating decimal digits, or undefined when there are none (a third). */
function decimalText(value: Fraction): string | undefined {
  let places = 0;
  let rest = value.d;
  for (const prime of [2n, 5n]) {
    let count = 0;
    while (rest % prime === 0n) {
      rest /= prime;
      count += 1;
    }
    places = Math.max(places, count);
  }
  if (rest !== 1n || places > 12) return undefined;
  const scaled = (value.n * 10n ** BigInt(places)) / value.d;
  const text = scaled.toString().padStart(places + 1, '0');
  const whole = text.slice(0, text.length - places);
  const sign = value.s < 0n ? '-' : '';
  return sign + (places === 0 ? whole : `${whole}.${text.slice(-places)}`);
}

/** "seventy-two and three eighths", "five thousandths", "one point zero six two", "minus twenty-four". */
export function spokenNumber(value: Fraction, style: NumberStyle): string {
  if (value.s < 0n) return `minus ${spokenNumber(value.neg(), style)}`;
  if (value.d === 1n) return wholeWords(value.n);
  if (style === 'thousandths' && 1000n % value.d === 0n && value.compare('1/8') < 0) {
    const count = (value.n * 1000n) / value.d;
    return count === 1n ? 'one thousandth' : `${cardinal(count)} thousandths`;
  }
  const decimal = decimalText(value);
  if (decimal && !(style === 'tape' && isTape(value))) {
    const [whole = '0', part = ''] = decimal.split('.');
    return `${cardinal(BigInt(whole))} point ${digitByDigit(part)}`;
  }
  const whole = value.n / value.d;
  const part = value.n % value.d;
  const fraction = spokenFraction(part, value.d) ?? `${cardinal(part)} over ${cardinal(value.d)}`;
  if (whole === 0n) return fraction;
  return `${cardinal(whole)} and ${fraction === 'one half' || fraction === 'one quarter' ? `a ${fraction.slice(4)}` : fraction}`;
}

/** "thirty-five hundred" is how a shop says 3500. */
function wholeWords(n: bigint): string {
  const hundreds = n / 100n;
  const shopHundreds = n % 100n === 0n && hundreds > 10n && hundreds < 100n && hundreds % 10n !== 0n;
  return shopHundreds ? `${cardinal(hundreds)} hundred` : cardinal(n);
}

/** "72 3/8", "0.005", "1.062". */
export function shownNumber(value: Fraction, style: NumberStyle): string {
  const decimal = decimalText(value);
  if (value.d === 1n || (decimal && !(style === 'tape' && isTape(value)))) return decimal ?? value.toFraction();
  return value.toFraction(true);
}

export const exact = (text: string): Fraction => new Fraction(text);
