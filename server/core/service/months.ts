/** The same day so many months later, as YYYY-MM-DD; the last of the month where it has no such day. `from` begins with YYYY-MM-DD. */
export function addMonths(from: string, months: number): string {
  const [year = 0, month = 1, day = 1] = from.slice(0, 10).split('-').map(Number);
  const count = year * 12 + (month - 1) + months;
  const [y, m] = [Math.floor(count / 12), (count % 12) + 1];
  const last = [31, isLeap(y) ? 29 : 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31][m - 1] ?? 31;
  return `${y}-${twoDigits(m)}-${twoDigits(Math.min(day, last))}`;
}

const isLeap = (year: number): boolean => year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0);
const twoDigits = (count: number): string => String(count).padStart(2, '0');
