// Vehicle identification numbers: 17 characters without I, O and Q; check digit by 49 CFR 565.15.
import type { Token } from '../tokens.ts';
import { charactersAt } from './characters.ts';
import type { Stamp } from './types.ts';

// 49 CFR 565.15 Table IV (letter values) and Table V (weights).
const letterValues: Readonly<Record<string, number>> = {
  A: 1,
  B: 2,
  C: 3,
  D: 4,
  E: 5,
  F: 6,
  G: 7,
  H: 8,
  J: 1,
  K: 2,
  L: 3,
  M: 4,
  N: 5,
  P: 7,
  R: 9,
  S: 2,
  T: 3,
  U: 4,
  V: 5,
  W: 6,
  X: 7,
  Y: 8,
  Z: 9,
};
const weights = [8, 7, 6, 5, 4, 3, 2, 10, 0, 9, 8, 7, 6, 5, 4, 3, 2];

function checkDigit(vin: string): string {
  const sum = [...vin].reduce(
    (left, character, at) => left + (letterValues[character] ?? Number(character)) * (weights[at] ?? 0),
    0,
  );
  return sum % 11 === 10 ? 'X' : String(sum % 11);
}

/** What is wrong with a VIN, in one sentence, or nothing. */
export function vinFault(vin: string): string | undefined {
  if (vin.length !== 17) return `A VIN has 17 characters and I heard ${vin.length}. Say it again, letter by letter.`;
  const impossible = /[^A-HJ-NPR-Z0-9]/.exec(vin);
  if (impossible) return `A VIN never has ${impossible[0]} in it. Say it again; a nought is zero, a one is one.`;
  if (checkDigit(vin) !== vin[8])
    return `The check digit does not agree (it should be ${checkDigit(vin)}), so a character is wrong. Say it again.`;
  return undefined;
}

export function readVin(tokens: readonly Token[], at: number, asked: boolean): Stamp | undefined {
  if (!asked && (tokens[at]?.glued || [0, 1, 2].every((next) => tokens[at + next]?.kind === 'number'))) return undefined;
  const read = charactersAt(tokens, at);
  if (!read || (!asked && read.text.length !== 17)) return undefined;
  const fault = vinFault(read.text);
  // Digits alone, with no name before them, are a number.
  if (!asked && (fault || /^\d+$/.test(read.text))) return undefined;
  return { end: read.end, holds: 'vin', field: 'vin', value: read.text, ...(fault ? { problem: fault } : {}) };
}
