import { Fraction } from '../../quantity/index.ts';
import { around, basisOf, sameNeed, windowNeed } from '../need.ts';
import { parsePattern } from '../pattern.ts';
import type { Check, Need, Rules, Token, Trailer } from '../types.ts';

const hubMaker = 'the hub and wheel makers; common practice, no source';

/** The wheels that are there must go on the hubs that come. */
export const wheels: Check = (trailer, rules) => [
  boltPattern(trailer, rules),
  pilotBore(trailer, rules),
  sameNeed({
    check: 'studThread',
    field: 'studThread',
    trailer,
    source: hubMaker,
    otherwise: 'fitsWithWork',
    remedy: 'otherNuts',
  }),
];

function boltPattern(trailer: Trailer, { circleTolerance }: Rules): Need {
  const slack = circleTolerance.value;
  const alike = (wanted: Token, given: string) => {
    const [have, offered] = [parsePattern(wanted.text, wanted.unit), parsePattern(given)];
    if (!have || !offered) return undefined;
    return have.studs === offered.studs && have.circle.sub(offered.circle).abs().lte(slack);
  };
  const source = circleTolerance.source;
  return sameNeed({
    check: 'boltPattern',
    field: 'boltPattern',
    trailer,
    source,
    otherwise: 'doesNotFit',
    remedy: 'changeHubs',
    alike,
  });
}

/** A pilot wider than the wheel's bore does not go in; a much narrower one leaves centring to the nuts. */
function pilotBore(trailer: Trailer, { pilotSlack }: Rules): Need {
  const bore = trailer.numbers.get('pilotBore')?.span;
  const { high, low } = bore ? around(bore, pilotSlack.value) : {};
  const most = bore && { high: { low: bore.low?.add(hair) ?? null, high: bore.high?.add(hair) ?? null } };
  return windowNeed({
    check: 'pilotBore',
    field: 'pilotBore',
    unit: 'in',
    basis: basisOf(trailer, ['pilotBore']),
    source: pilotSlack.source,
    sure: most && high && { ...most, low },
    work: most,
    workRemedy: 'centringRing',
    outRemedy: 'changeHubs',
  });
}

/** Bores are read and listed to the hundredth. */
const hair = new Fraction(1, 100);
