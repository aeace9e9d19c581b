// Trade tokens into words and into what stands on the part: bolt patterns, brakes, tyres, threads, numbers stamped on parts.
import { cardinal, digitByDigit } from '../words/numbers.ts';
import { exact, shownNumber, spokenNumber } from './number.ts';

const sized = (text: string, unit: string | undefined, words: boolean) =>
  (words ? spokenNumber : shownNumber)(exact(text), unit === 'mm' ? 'decimal' : 'tape');

/** The two sizes of "5x9/2"; none where the value is no such pair, which is then given as it stands. */
function crossed(value: string): readonly [first: string | undefined, second: string | undefined] {
  const found = /^(\d+(?:\/[1-9]\d*)?)x(\d+(?:\/[1-9]\d*)?)$/.exec(value);
  return [found?.[1], found?.[2]];
}

/** "5x9/2" -> "five on four and a half" / "5 on 4 1/2". */
export function boltPattern(value: string, unit: string | undefined, words: boolean): string {
  const [studs, circle] = crossed(value);
  if (!studs || !circle) return value;
  const size = sized(circle, unit, words);
  return `${words ? sized(studs, 'in', true) : studs} on ${size}${unit === 'mm' ? (words ? ' millimetres' : ' mm') : ''}`;
}

/** "10x9/4" -> "ten by two and a quarter" / "10 x 2 1/4". */
export function brakeSize(value: string, unit: string | undefined, words: boolean): string {
  const [diameter, width] = crossed(value);
  if (!diameter || !width) return value;
  return `${sized(diameter, unit, words)} ${words ? 'by' : 'x'} ${sized(width, unit, words)}${unit === 'mm' ? (words ? ' millimetres' : ' mm') : ''}`;
}

/** "1/2-20" -> "half twenty"; "M12x1.5" -> "M twelve by one point five". */
export function thread(value: string, words: boolean): string {
  if (!words) return value;
  const metric = /^M(\d+)x([\d.]+)$/.exec(value);
  if (metric) return `M ${cardinal(BigInt(metric[1] ?? '0'))} by ${spokenNumber(exact(metric[2] ?? '0'), 'decimal')}`;
  const [, size, pitch] = /^(\d+(?:\/[1-9]\d*)?)-(\d+)$/.exec(value) ?? [];
  if (!size || !pitch) return spelled(value);
  const diameter = exact(size);
  const name = size === '1/2' ? 'half' : spokenNumber(diameter, 'tape');
  return `${name}${diameter.compare(1) >= 0 ? ' inch' : ''} ${cardinal(BigInt(pitch))}`;
}

/** "ST205/75R15" -> "S T two oh five seventy five R fifteen". Characters where the form is none we read in pairs. */
export function tyre(value: string, words: boolean): string {
  if (!words) return value;
  const metric = /^([A-Z]*)(\d{3})\/(\d{2})([-A-Z]+)(\d{2}(?:\.\d)?)(.*)$/.exec(value);
  if (metric && !metric[6]) {
    const [, letters = '', width = '', ratio = '', make = '', rim = ''] = metric;
    return [spelled(letters), inPair(width), inPair(ratio), make === '-' ? '' : spelled(make), rimWords(rim)]
      .filter(Boolean)
      .join(' ');
  }
  return spelled(value);
}

const rimWords = (rim: string) => spokenNumber(exact(rim), 'decimal').replaceAll('-', ' ');

/** "205" -> "two oh five", "75" -> "seventy five", "300" -> "three hundred". */
function inPair(text: string): string {
  const n = Number(text);
  if (n < 100 || n % 100 === 0) return cardinal(n).replaceAll('-', ' ');
  const rest = n % 100;
  return `${cardinal(Math.floor(n / 100))} ${rest < 10 ? `oh ${cardinal(rest)}` : cardinal(rest).replaceAll('-', ' ')}`;
}

const marks: Readonly<Record<string, string>> = { '-': 'dash', '/': 'slash', '.': 'point', ' ': '' };

/** Character by character: "L four four six four nine". */
export function spelled(value: string): string {
  return [...value]
    .map((character) => (/\d/.test(character) ? digitByDigit(character) : (marks[character] ?? character)))
    .filter(Boolean)
    .join(' ');
}
