import type { FieldId } from '#data';
import { type Straight, straightness } from '../geometry/straight.ts';
import type { Check, CheckId, Finding, Need, RowCode, Rules, Trailer } from '../types.ts';

/** What was measured on a bent axle is not what the trailer was built with: said of any axle that is to go by it. */
export const straight: Check = (trailer: Trailer, rules: Rules) => {
  const { halves, camber, toe } = straightness(trailer, rules);
  return [
    ...(halves ? [row('halves', 'halfFace', halves, 'shifted', halves.found.toLeft)] : []),
    ...(camber ? [row('camber', 'camberTop', camber, 'leansIn', worst(camber.found.map(({ out }) => out)))] : []),
    ...(toe ? [row('toe', 'toeFront', toe, 'toed', toe.found)] : []),
  ];
};

const worst = (all: readonly Finding['found'][]) =>
  all.reduce((least, one) => (one && (!least || one.value.lt(least.value)) ? one : least), undefined);

function row(
  check: CheckId,
  field: FieldId,
  { straight: good, basis, source, allowed }: Straight<unknown>,
  bad: RowCode,
  found: Finding['found'],
): Need {
  const finding: Finding = good
    ? { result: 'fits', code: 'straight' }
    : { result: 'cannotSayYet', code: bad, remedy: 'oldAxleBent' };
  const judge = () => ({ ...finding, ...(found && { found }) });
  return { check, field, basis, source, needed: { high: allowed }, judge };
}
