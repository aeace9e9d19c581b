// Whether the axle that is there is straight: its halves alike, its wheels not leaning in, its toe none.
import type { FieldId, FitRuleId } from '#data';
import type { Fraction, Quantity } from '../../quantity/index.ts';
import { basisOf } from '../need.ts';
import type { Basis, Known, Rules, Trailer } from '../types.ts';
import { camberDegrees, fromHalves, type Halves, toeIn } from './beam.ts';

/** One wheel: inches that its top stands further out than its bottom, negative where it leans in. */
export interface Camber {
  readonly side: 'left' | 'right';
  readonly out: Quantity;
  /** Where the rim's diameter is known. */
  readonly degrees?: number;
}

export interface Straight<T> {
  readonly found: T;
  /** False: more than what is allowed, so the beam is shifted or bent. */
  readonly straight: boolean;
  readonly allowed: Quantity;
  readonly basis: Basis;
  readonly source: string;
}

export interface Straightness {
  readonly halves?: Straight<Halves>;
  readonly camber?: Straight<readonly Camber[]>;
  /** Total toe, in; positive is toe-in. */
  readonly toe?: Straight<Quantity>;
}

const inch = (value: Fraction): Quantity => ({ value, unit: 'in' });

/** What halves, rim readings and toe say of the axle, as far as they were measured. */
export function straightness(trailer: Trailer, rules: Rules): Straightness {
  const [halves, camber, toe] = [halvesOf(trailer, rules), camberOf(trailer, rules), toeOf(trailer, rules)];
  return { ...(halves && { halves }), ...(camber && { camber }), ...(toe && { toe }) };
}

const told = (rules: Rules, id: FitRuleId) => ({ allowed: inch(rules[id].value), source: rules[id].source });

function halvesOf(trailer: Trailer, rules: Rules): Straight<Halves> | undefined {
  const { left, right } = ends(trailer, 'halfFace');
  const rule = told(rules, 'halvesApart');
  const [a, b] = [left?.span.low, right?.span.low];
  if (!left || !right || !a || !b) return undefined;
  const found = fromHalves(inch(a), inch(b), rule.allowed);
  return { found, straight: found.straight, ...rule, basis: resting([left, right]) };
}

function camberOf(trailer: Trailer, rules: Rules): Straight<readonly Camber[]> | undefined {
  const rule = told(rules, 'camberIn');
  const rim = trailer.numbers.get('wheelDiameter');
  const read = (['left', 'right'] as const).flatMap((side) => {
    const [top, bottom] = [ends(trailer, 'camberTop')[side], ends(trailer, 'camberBottom')[side]];
    return top?.span.low && bottom?.span.low ? [{ side, top, bottom, out: bottom.span.low.sub(top.span.low) }] : [];
  });
  if (read.length === 0) return undefined;
  const found = read.map(({ side, out }) => ({ side, out: inch(out), ...degreesOf(out, rim?.span.low ?? undefined) }));
  const straight = found.every(({ out }) => out.value.gte(rule.allowed.value.neg()));
  return { found, straight, ...rule, basis: resting(read.flatMap(({ top, bottom }) => [top, bottom])) };
}

/** The plumb line hangs outside the wheel: the nearer the top, the further out it leans. */
function degreesOf(out: Fraction, rim: Fraction | undefined): { readonly degrees?: number } {
  if (!rim || rim.lte(out.abs())) return {};
  return { degrees: camberDegrees(0, out.valueOf(), rim.valueOf()) };
}

function toeOf(trailer: Trailer, rules: Rules): Straight<Quantity> | undefined {
  const [front, rear] = [trailer.numbers.get('toeFront')?.span.low, trailer.numbers.get('toeRear')?.span.low];
  const rule = told(rules, 'toeAllowed');
  if (!front || !rear) return undefined;
  const total = toeIn(front, rear);
  const straight = total.abs().lte(rule.allowed.value);
  return { found: inch(total), straight, ...rule, basis: basisOf(trailer, ['toeFront', 'toeRear']) };
}

const ends = (trailer: Trailer, field: FieldId) => trailer.sides.get(field) ?? {};

const resting = (all: readonly Known[]): Basis => ({
  rests: all.map(({ id }) => id),
  unconfirmed: all.filter(({ confirmed }) => !confirmed).map(({ id }) => id),
  missing: [],
});
