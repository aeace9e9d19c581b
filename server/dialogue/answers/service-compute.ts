// Sums asked mid-job. Exact where it can be said, "about" where a whole pound or a tape's mark is nearer.
import { type Quantity, type SumResult, workOut } from '#core';
import type { UnitId } from '#data';
import type { Answer } from '../types.ts';
import { sentence } from '../words.ts';
import { type Ask, answer, same, type Words } from './service-ask.ts';
import { askBack } from './service-follow-ups.ts';

export function compute(ask: Ask): Answer {
  const { sum } = ask.question;
  if (!sum) return askBack('compute.notUnderstood');
  const result = workOut(sum);
  const words = resultWords[result.code](result as never, ask);
  return answer(`compute.${result.code}`, words);
}

type Of<C extends SumResult['code']> = Extract<SumResult, { readonly code: C }>;

const resultWords: { readonly [C in SumResult['code']]: (result: Of<C>, ask: Ask) => Words } = {
  sum: ({ result, assumed }, ask) => told(result, assumed, ask),
  unlikeUnits: () => same('Those two are not the same kind of thing. Say the units again.'),
  divideByNothing: () => same('Nothing divides by zero. Say the sum again.'),
  noSuchUnit: () => same('Multiply or divide by a plain number. Say the sum again.'),
};

/** A tape's fraction or a short decimal is told as it is; longer ones are rounded and say so. */
function told(result: Quantity, assumed: UnitId | undefined, { tell, know }: Ask): Words {
  const exact = isShort(result) && !(result.unit === 'in' && know.shop.lengthUnit === 'mm');
  const words = exact ? tell.exact(result) : tell.amount(result);
  const from = assumed === undefined ? '' : `, taken as ${unitNames[assumed] ?? assumed}`;
  return {
    speak: `${sentence(words.speak)}${from}.`,
    show: `${words.show}${exact ? '' : ` (${result.value.valueOf().toFixed(3)})`}${from}`,
  };
}

const unitNames: Readonly<Partial<Record<UnitId, string>>> = {
  in: 'inches',
  mm: 'millimetres',
  'lbf.ft': 'foot pounds',
  'N.m': 'newton metres',
  lb: 'pounds',
  kg: 'kilograms',
  psi: 'psi',
  kPa: 'kilopascals',
  degF: 'Fahrenheit',
  degC: 'Celsius',
  mi: 'miles',
  km: 'kilometres',
};

function isShort({ value }: Quantity): boolean {
  return value.d <= 64n ? (value.d & (value.d - 1n)) === 0n || 1000n % value.d === 0n : 1000n % value.d === 0n;
}
