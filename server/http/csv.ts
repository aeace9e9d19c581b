// Tables as CSV that a spreadsheet shows and does not run: RFC 4180 quoting, and text that could be a formula is defused.
import Papa from 'papaparse';

type CsvCell = string | number;

/** Text beginning so may be run by a spreadsheet; also behind blanks, and in full-width forms. OWASP "CSV Injection". */
const formula = /^\s*[=+\-@\t\r\n|%＝＋－＠]/u;

/** Lines end in CRLF. Numbers are written as numbers, so that -3 stays one. */
export function toCsv(header: readonly string[], lines: readonly (readonly CsvCell[])[]): string {
  return Papa.unparse({ fields: [...header], data: lines.map((line) => line.map(inert)) }, { newline: '\r\n' });
}

function inert(cell: CsvCell): CsvCell {
  return typeof cell === 'string' && formula.test(cell) ? `'${cell}` : cell;
}
