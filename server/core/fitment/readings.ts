// Readings of a job -> the trailer as the checks want it. What cannot be used is named, and the rest goes on without it.
import { type Field, type FieldId, fieldOf, fields, type UnitId } from '#data';
import { convert, dimensionOf, Fraction, type Quantity, quantity } from '../quantity/index.ts';
import { identifyByNumber } from './bearings/identify.ts';
import { compare, figure, figureOf } from './figure.ts';
import { numberOf } from './number.ts';
import { parsePattern } from './pattern.ts';
import { tableRules } from './rules.ts';
import { bothSides, type Sided, wholeFromHalves } from './sides.ts';
import { exactly, type Span } from './span.ts';
import type { FieldProblem, FitReading, Known, ProblemCode, Token, Trailer } from './types.ts';
import { parseTyre } from './tyres/designation.ts';

/** Values that belong to the axle itself: only the old one's (`found`) say what the new one must match. */
const axleFields: ReadonlySet<FieldId> = new Set<FieldId>([
  'hubFace',
  'springCentre',
  'beamDiameter',
  'beamShape',
  'drop',
  'boltPattern',
  'pilotBore',
  'studThread',
  'capacity',
  'brakeType',
  'brakeFlange',
  'brakeSize',
  'halfFace',
  'camberTop',
  'camberBottom',
  'toeFront',
  'toeRear',
]);
const tokenFields: ReadonlySet<FieldId> = new Set<FieldId>(['boltPattern', 'brakeSize']);

/** Lays the readings out by field. Of several for one field the latest counts; of left and right the smaller. */
export function readTrailer(readings: readonly FitReading[]): Trailer {
  const numbers = new Map<FieldId, Known>();
  const tokens = new Map<FieldId, Token>();
  const problems: FieldProblem[] = [];
  const sided: Sided[] = [];
  for (const reading of inForce(readings)) {
    const field = fieldOf(reading.field);
    const token = field.unit === undefined || tokenFields.has(field.id);
    const fault = token ? readToken(reading, field, tokens) : readNumber(reading, field, numbers, sided);
    if (fault) problems.push({ field: field.id, code: fault, id: reading.id, value: reading.value });
  }
  const sides = bothSides(sided);
  const halves = wholeFromHalves(numbers, sides);
  return {
    numbers,
    tokens,
    sides,
    problems: [...problems, ...halves, ...contradictions(numbers), ...weights(numbers), ...bearingsUnknown(tokens)],
  };
}

/** The latest reading of each field, place and side; found before fitted. */
function inForce(readings: readonly FitReading[]): FitReading[] {
  const latest = new Map<string, FitReading>();
  for (const reading of readings) {
    if (reading.stage === 'fitted' && axleFields.has(reading.field)) continue;
    latest.set(`${reading.field} ${reading.side ?? ''} ${reading.axle ?? ''} ${reading.stage}`, reading);
  }
  const all = [...latest.values()];
  const found = new Set(all.filter(({ stage }) => stage === 'found').map(({ field }) => field));
  return all.filter(({ stage, field }) => stage === 'found' || !found.has(field));
}

function readToken(reading: FitReading, field: Field, into: Map<FieldId, Token>): ProblemCode | undefined {
  const { value, unit, id, status } = reading;
  if (field.choices && !field.choices.includes(value)) return 'notAChoice';
  if (field.id === 'boltPattern' && !parsePattern(value, unit)) return 'unknownPattern';
  const tyre = field.id === 'tyreSize' ? parseTyre(value) : undefined;
  if (field.id === 'tyreSize' && !tyre) return 'unknownTyre';
  into.set(field.id, { text: value, id, confirmed: status === 'confirmed', ...(unit && { unit }), ...(tyre && { tyre }) });
  return undefined;
}

function readNumber(reading: FitReading, field: Field, into: Map<FieldId, Known>, sided: Sided[]): ProblemCode | undefined {
  const unit = field.unit ?? '1';
  const said = unitOf(reading, unit);
  if (dimensionOf(said) !== dimensionOf(unit)) return 'wrongUnit';
  const amount = numberOf(reading.value);
  if (!amount) return 'notANumber';
  const { value } = convert({ value: amount, unit: said }, unit);
  const fault = implausible(value, field);
  if (fault === 'notPositive' || (fault && reading.status === 'heard')) return fault;
  const known = { span: spanOf(reading, { value, unit }, field), id: reading.id, confirmed: reading.status === 'confirmed' };
  if (field.perSide) sided.push({ reading, known });
  const other = into.get(field.id);
  if (!other || !field.perSide || below(known, other)) into.set(field.id, known);
  return fault;
}

/** A bare number is in the field's usual unit. */
const unitOf = ({ unit }: FitReading, usual: UnitId): UnitId => (unit === undefined || unit === '1' ? usual : unit);

/** The usual band of each field that has one. */
const bands = new Map(
  fields.flatMap(({ id, min, max }) => {
    const [least, most] = [figureOf(min ?? ''), figureOf(max ?? '')];
    return least && most ? [[id, { least, most }] as const] : [];
  }),
);

function implausible(value: Fraction, { id }: Field): ProblemCode | undefined {
  const band = bands.get(id);
  if (!band) return undefined;
  const { least, most } = band;
  const given = figure(value);
  if (least.near > 0 && given.near <= 0) return 'notPositive';
  return compare(given, least) < 0 || compare(given, most) > 0 ? 'outOfBand' : undefined;
}

const below = (a: Known, b: Known): boolean => b.span.low !== null && (a.span.low === null || a.span.low.lt(b.span.low));

/** Where the value may lie, as far as it was said: "over 58", "58 plus or minus a quarter", "about 58". */
function spanOf(reading: FitReading, at: Quantity, field: Field): Span {
  if (reading.to !== undefined) return { low: at.value, high: inUnit(reading.to, reading, at.unit) };
  if (reading.plusMinus !== undefined) return around(at.value, slackOf(reading.plusMinus, reading, at.unit));
  switch (reading.hedge) {
    case 'under':
    case 'atMost':
      return { low: null, high: at.value };
    case 'over':
    case 'atLeast':
      return { low: at.value, high: null };
    case 'about':
      return around(
        at.value,
        reading.resolution === undefined ? new Fraction(field.step ?? '0') : slackOf(reading.resolution, reading, at.unit),
      );
    default:
      return exactly(at.value);
  }
}

const inUnit = (text: string, reading: FitReading, unit: UnitId): Fraction =>
  convert(quantity(text, unitOf(reading, unit)), unit).value;
/** A width of a span, free of the offset that degrees have. */
const slackOf = (text: string, reading: FitReading, unit: UnitId): Fraction =>
  inUnit(text, reading, unit).sub(inUnit('0', reading, unit));

const around = (value: Fraction, slack: Fraction): Span => ({ low: value.sub(slack), high: value.add(slack) });

/** A hub face that is not outside the springs: neither of the two can be relied on. */
function contradictions(numbers: Map<FieldId, Known>): FieldProblem[] {
  const face = numbers.get('hubFace');
  const centre = numbers.get('springCentre');
  if (!face?.span.high || !centre?.span.low || face.span.high.gt(centre.span.low)) return [];
  numbers.delete('hubFace');
  numbers.delete('springCentre');
  const code = 'hubFaceNotAboveSpringCentre';
  return [
    { field: 'hubFace', code, id: face.id, value: face.span.high.toFraction() },
    { field: 'springCentre', code, id: centre.id, value: centre.span.low.toFraction() },
  ];
}

/** Named, and still counted: a trailer over its rating, a tongue that no coupling takes. */
function weights(numbers: ReadonlyMap<FieldId, Known>): FieldProblem[] {
  const [gross, rating, tongue] = [numbers.get('grossWeight'), numbers.get('gvwr'), numbers.get('tongueWeight')];
  const [weight, most, down] = [gross?.span.low, rating?.span.high, tongue?.span.low];
  const over = gross && weight && most && weight.gt(most);
  const whole = weight ?? most;
  const heavy = tongue && down && whole && down.mul(100).gt(whole.mul(tableRules.tongueUpper.value));
  return [
    ...(over
      ? [{ field: 'grossWeight' as const, code: 'weightAboveRating' as const, id: gross.id, value: weight.toFraction() }]
      : []),
    ...(heavy
      ? [{ field: 'tongueWeight' as const, code: 'tongueBeyondReason' as const, id: tongue.id, value: down.toFraction() }]
      : []),
  ];
}

const bearingFields = ['bearing', 'innerBearing', 'outerBearing', 'cup', 'innerCup', 'outerCup'] as const;

/** Named, and still kept: the table is not every bearing there is. */
function bearingsUnknown(tokens: ReadonlyMap<FieldId, Token>): FieldProblem[] {
  return bearingFields.flatMap((field) => {
    const token = tokens.get(field);
    if (!token || identifyByNumber(token.text).some(({ off }) => off === 0)) return [];
    return [{ field, code: 'unknownBearing' as const, id: token.id, value: token.text }];
  });
}
