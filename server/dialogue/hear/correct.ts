// "No, fifty-eight and a half": which value is meant, and what becomes of the old one.
import { Fraction, isNumber } from '#core';
import { fieldOf } from '#data';
import type { CorrectIntent, Said, StrikeIntent, Where } from '#intents';
import type { ValueRecord } from '#log/events';
import { isPlausible, unitSuits } from '../doubts.ts';
import { ask, type Draft, emit, say } from '../draft.ts';
import { byId, isLive } from '../values.ts';
import { valueLine } from '../wording/values.ts';
import { closeAskOn, take } from './take.ts';

type Target = Partial<Pick<CorrectIntent, 'field' | 'not'>> & Where;

/** A correction replaces an unconfirmed value at once; a confirmed one only after a yes. */
export function correct(draft: Draft, intent: CorrectIntent): Draft {
  const targets = targetsOf(draft, intent, intent);
  const [target] = targets;
  if (!target)
    return intent.field
      ? take(draft, intent.field, intent)
      : say(draft, valueLine('noValueThere', { field: undefined }, draft.know.shop));
  if (targets.length > 1) return askTarget(draft, targets, intent);
  return replace(draft, target, intent);
}

export function replace(draft: Draft, old: ValueRecord, said: Said & Where): Draft {
  const place = { side: said.side ?? old.side, axle: said.axle ?? old.axle, stage: old.stage };
  const whole = { ...inheritUnit(said, old), ...dropUndefined(place) };
  if (!unitSuits(old.field, said)) return say(draft, valueLine('wrongKind', { field: old.field, said }, draft.know.shop));
  const base = old.supersedes === undefined ? undefined : byId(draft.job, old.supersedes);
  const standing = base && isLive(base) ? base : undefined;
  const taken = take(closeAskOn(draft, old), old.field, whole, standing ?? old);
  const made = taken.events.findLast((body) => body.kind === 'valueHeard');
  if (made?.kind !== 'valueHeard') return taken;
  const gone = [old, standing].filter((value) => value?.status === 'heard' && isLive(byId(taken.job, value.id) ?? value));
  return emit(taken, ...gone.map((value) => ({ kind: 'valueCorrected' as const, id: value?.id ?? '', by: made.value.id })));
}

/** A bare number is of the unit it corrects. */
function inheritUnit(said: Said & Where, old: ValueRecord): Said & Where {
  return said.unitSaid !== true && old.unit !== undefined && (said.unit === '1' || said.unit === fieldOf(old.field).unit)
    ? { ...said, unit: old.unit }
    : said;
}

function dropUndefined<T extends object>(given: T): { [K in keyof T]: Exclude<T[K], undefined> } {
  return Object.fromEntries(Object.entries(given).filter(([, value]) => value !== undefined)) as never;
}

/** Values that the words can mean, the likeliest rule first that leaves any. */
function targetsOf(draft: Draft, said: Target, amount?: Said): readonly ValueRecord[] {
  const named = meant(draft, said);
  const asked = named.filter(({ id }) => draft.job.asked?.valueIds.includes(id));
  const fresh = named.filter(({ status }) => status === 'heard');
  const lastTurn = (values: readonly ValueRecord[]) => values.filter(({ turn }) => turn === values.at(-1)?.turn);
  const pools = [asked, lastTurn(fresh), lastTurn(named)].filter((values) => values.length > 0);
  const [pool = []] = pools;
  if (!amount) return pool;
  const suiting = pools.map((values) => values.filter((value) => couldBe(value, amount))).find((values) => values.length > 0);
  // A number far from anything that stands is said of something else, unless it is what was asked.
  return suiting ?? (said.field || said.not || asked.length > 0 ? pool : pool.filter((value) => couldBe(value, amount, true)));
}

/** The amount suits the value's field and is plausible there, or within half and double of that. */
function couldBe({ field, unit }: ValueRecord, amount: Said, nearly = false): boolean {
  const told = { ...amount, ...(amount.unitSaid || !unit ? {} : { unit }) };
  const times = (factor: number) => ({ ...told, value: new Fraction(told.value).mul(factor).toFraction() });
  if (!unitSuits(field, amount)) return false;
  if (!nearly || !isNumber(amount.value)) return isPlausible(field, told);
  return [1, 2, 1 / 2].some((factor) => isPlausible(field, times(factor)));
}

function meant({ job }: Draft, { field, side, axle, stage, not }: Target): readonly ValueRecord[] {
  const live = job.values.filter(isLive).filter((value) => !isOldOfPending(value, job.values));
  return live.filter(
    (value) =>
      (field === undefined || value.field === field) &&
      (side === undefined || side === 'both' || value.side === side || (value.side === undefined && field !== undefined)) &&
      (axle === undefined || value.axle === undefined || value.axle === axle) &&
      (stage === undefined || value.stage === stage) &&
      (not === undefined || value.value === not),
  );
}

const isOldOfPending = (old: ValueRecord, values: readonly ValueRecord[]): boolean =>
  values.some(({ supersedes, status }) => supersedes === old.id && status === 'heard');

export function askTarget(draft: Draft, targets: readonly ValueRecord[], said: Said & Where): Draft {
  const given = JSON.stringify(said);
  const few = targets.slice(0, 3);
  const line = valueLine('askTarget', { targets: few }, draft.know.shop);
  return ask(draft, { about: 'target', valueIds: few.map(({ id }) => id), given }, line);
}

/** An unconfirmed value is struck at once; a confirmed one after a yes. */
export function strike(draft: Draft, intent: StrikeIntent): Draft {
  const targets = targetsOf(draft, intent);
  const { shop } = draft.know;
  if (targets.length === 0) return say(draft, valueLine('noValueThere', { field: intent.field }, shop));
  if (targets.some((value) => value.status === 'confirmed')) {
    const line = valueLine('askStrike', { values: targets }, shop);
    return ask(draft, { about: 'strike', valueIds: targets.map(({ id }) => id) }, line);
  }
  return strikeNow(draft, targets);
}

export function strikeNow(draft: Draft, values: readonly ValueRecord[]): Draft {
  const closed = values.reduce(closeAskOn, draft);
  const gone = emit(closed, ...values.map(({ id }) => ({ kind: 'valueStruck' as const, id })));
  return say(gone, valueLine('struck', { values }, draft.know.shop));
}
