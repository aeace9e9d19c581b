import { grossOf } from '../load.ts';
import { basisOf, sameNeed, windowNeed } from '../need.ts';
import type { Check, Finding, Need, Rules, Trailer } from '../types.ts';

const partMaker = 'the brake maker; common practice, no source';
const inService = '49 CFR 393.48(a): every brake fitted must work';

/** Brakes may not be lost with the old axle; whether an unbraked trailer may stay so, the law says. */
export const brakes: Check = (trailer, rules) => [kept(trailer), law(trailer, rules), flange(trailer), size(trailer)];

function kept(trailer: Trailer): Need {
  const old = trailer.tokens.get('brakeType')?.text;
  const judge = (given: string | undefined): Finding => {
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
  const needed = old === undefined ? {} : { needed: { same: old } };
  return { check: 'brakes', field: 'brakeType', basis: basisOf(trailer, ['brakeType']), source: inService, judge, ...needed };
}

/** Federal rule for trailers in interstate commerce; the towing vehicle's axle weights are not on the job, states differ. */
function law(trailer: Trailer, { brakeExemptGross }: Rules): Need {
  const gross = grossOf(trailer);
  const light = gross?.high?.lte(brakeExemptGross.value);
  const judge = (given: string | undefined): Finding => {
    if (given === undefined) return { result: 'cannotSayYet', code: 'candidateUnknown', remedy: 'readCard' };
    if (given !== 'idler') return { result: 'fits', code: 'braked' };
    if (!gross) return { result: 'cannotSayYet', code: 'trailerUnknown', remedy: 'measureMore' };
    return { result: 'cannotSayYet', code: light ? 'lawMayExempt' : 'lawWantsBrakes', remedy: 'askTheState' };
  };
  const basis = gross ? { ...basisOf(trailer, ['gvwr', 'grossWeight']), missing: [] } : basisOf(trailer, ['gvwr']);
  return { check: 'brakeLaw', field: 'brakeType', basis, source: brakeExemptGross.source, judge };
}

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
