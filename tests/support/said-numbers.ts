// How people say numbers, written independently of the language under test.

const ones =
  'zero one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen sixteen seventeen eighteen nineteen'.split(
    ' ',
  );
const tens = ['', '', 'twenty', 'thirty', 'forty', 'fifty', 'sixty', 'seventy', 'eighty', 'ninety'];
const parts: Readonly<Record<number, readonly [one: string, many: string]>> = {
  2: ['half', 'halves'],
  4: ['quarter', 'quarters'],
  8: ['eighth', 'eighths'],
  16: ['sixteenth', 'sixteenths'],
  32: ['thirty second', 'thirty seconds'],
  64: ['sixty fourth', 'sixty fourths'],
};

export function twoDigits(n: number): string {
  if (n < 20) return ones[n] ?? '';
  const unit = n % 10;
  return unit === 0 ? (tens[n / 10] ?? '') : `${tens[Math.floor(n / 10)]} ${ones[unit]}`;
}

/** Schoolbook, without "and". */
export function schoolbook(n: number): string {
  if (n < 100) return twoDigits(n);
  const [size, name] = n >= 1000 ? [1000, 'thousand'] : [100, 'hundred'];
  const rest = n % size;
  return `${schoolbook(Math.floor(n / size))} ${name}${rest ? ` ${schoolbook(rest)}` : ''}`;
}

/** All the ways a shop reads a whole number of two to five digits. */
export function shopReadings(n: number): string[] {
  const plain = schoolbook(n);
  const digits = [...String(n)].map((digit) => ones[Number(digit)]).join(' ');
  const readings = [plain, digits, digits.replaceAll('zero', 'oh')];
  const rest = n % 100;
  const head = Math.floor(n / 100);
  if (n >= 100 && rest > 0) readings.push(plain.replace(/hundred (?!.*hundred)(?!thousand)/, 'hundred and '));
  const tail = rest === 0 ? 'hundred' : rest < 10 ? `oh ${ones[rest]}` : twoDigits(rest);
  if (n >= 100 && n < 10_000 && head % 10 !== 0) readings.push(`${twoDigits(head)} ${tail}`);
  return [...new Set(readings)];
}

/** Every way to say whole + top/bottom, spoken and typed. */
export function mixedReadings(whole: number, top: number, bottom: number): string[] {
  const [one, many] = parts[bottom] ?? ['', ''];
  const named = `${twoDigits(top)} ${top === 1 ? one : many}`;
  const article = top === 1 ? [`${bottom === 8 ? 'an' : 'a'} ${one}`] : [];
  const spoken = [named, named.replace(/(thirty|sixty) /, '$1-'), ...article];
  const typed = [`${top}/${bottom}`];
  if (whole === 0) return [...spoken, ...typed];
  const before = schoolbook(whole);
  return [
    ...spoken.map((part) => `${before} and ${part}`),
    `${before.replace(' ', '-')} and ${named}`,
    `${whole} and ${named}`,
    `${whole} ${top}/${bottom}`,
    `${whole}-${top}/${bottom}`,
    `${whole} ${top}/${bottom}"`,
  ];
}

/** 0.001 ... 9.999 digit by digit. */
export function decimalReadings(thousandths: number): string[] {
  const text = (thousandths / 1000).toFixed(3);
  const [whole = '0', part = ''] = text.split('.');
  const said = [...part].map((digit) => ones[Number(digit)]).join(' ');
  const readings = [
    `${ones[Number(whole)]} point ${said}`,
    `${ones[Number(whole)]} point ${said.replaceAll('zero', 'oh')}`,
    text,
  ];
  return whole === '0' ? [...readings, `point ${said.replaceAll('zero', 'oh')}`, `.${part}`] : readings;
}
