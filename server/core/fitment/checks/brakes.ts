import { type BrakeLaw, brakeLawFor } from '../brake-rule.ts';
import { basisOf, noBasis, sameNeed, windowNeed } from '../need.ts';
import type { Check, Finding, Need, Rules, Trailer } from '../types.ts';

const partMaker = 'the brake maker; common practice, no source';
const inService = '49 CFR 393.48(a): every brake fitted must work';

/** Brakes may not be lost with the old axle; whether an unbraked trailer may stay so, the law says. */
export const brakes: Check = (trailer, rules) => [kept(trailer), law(trailer, rules), flange(trailer), size(trailer)];

function kept(trailer: Trailer): Need {
  const old = trailer.tokens.get('brakeType')?.text;
  const needed = old === undefined ? {} : { needed: { same: old } };
  const basis = basisOf(trailer, ['brakeType']);
  return { check: 'brakes', field: 'brakeType', basis, source: inService, judge: keptFrom(old), ...needed };
}

function keptFrom(old: string | undefined): Need['judge'] {
  return (given) => {
    if (given === undefined) return { result: 'cannotSayYet', code: 'candidateUnknown', remedy: 'readCard' };
    const braked = given !== 'idler';
    if (old === undefined) {
      return braked
        ? { result: 'fits', code: 'braked' }
        : { result: 'cannotSayYet', code: 'trailerUnknown', remedy: 'measureMore' };
    }
    if (old === given) return { result: 'fits', code: 'same' };
    if (!braked) return { result: 'doesNotFit', code: 'brakesLost', remedy: 'brakedAxle' };
    if (old === 'idler') return { result: 'fitsWithWork', code: 'brakesAdded', remedy: 'wireBrakes' };
    return { result: 'fitsWithWork', code: 'otherBrakes', remedy: 'convertBrakes' };
  };
}

/** An axle without brakes under the federal rule for trailers in interstate commerce; state and local rules may be stricter. */
function law(trailer: Trailer, rules: Rules): Need {
  const { code, percent, source, ...basis } = brakeLawFor(trailer, rules);
  return { check: 'brakeLaw', field: 'brakeType', basis, source, judge: lawFor(code, percent) };
}

function lawFor(code: BrakeLaw['code'], percent: BrakeLaw['percent']): Need['judge'] {
  return (given) => {
    if (given === undefined) return { result: 'cannotSayYet', code: 'candidateUnknown', remedy: 'readCard' };
    if (given !== 'idler') return { result: 'fits', code: 'braked', basis: noBasis };
    const found = withoutBrakes[code];
    return percent ? { ...found, found: { value: percent, unit: '1' } } : found;
  };
}

const withoutBrakes: Readonly<Record<BrakeLaw['code'], Finding>> = {
  exempt: { result: 'fits', code: 'lawExempts' },
  tooHeavy: { result: 'fitsWithWork', code: 'lawWantsBrakes', remedy: 'askTheState' },
  overShare: { result: 'fitsWithWork', code: 'lawOverShare', remedy: 'askTheState' },
  untold: { result: 'cannotSayYet', code: 'lawMayExempt', remedy: 'askTheState' },
  unknown: { result: 'cannotSayYet', code: 'trailerUnknown', remedy: 'measureMore' },
};

function flange(trailer: Trailer): Need {
  const bolts = trailer.numbers.get('brakeFlange')?.span;
  return windowNeed({
    check: 'brakeFlange',
    field: 'brakeFlange',
    unit: '1',
    basis: basisOf(trailer, ['brakeFlange']),
    source: partMaker,
    sure: bolts && { low: bolts, high: bolts },
    work: true,
    workRemedy: 'newBackingPlates',
  });
}

function size(trailer: Trailer): Need {
  const source = partMaker;
  return sameNeed({
    check: 'brakeSize',
    field: 'brakeSize',
    trailer,
    source,
    otherwise: 'fitsWithWork',
    remedy: 'newBackingPlates',
  });
}
