// A value into the job: which slot it fills, and the event that says it was heard.

import type { FieldId } from '#data';
import { fieldOf } from '#data';
import type { MeasureIntent, QuantityIntent, Said, Where } from '#intents';
import type { ValueFact, ValueRecord } from '#log/events';
import { unitSuits } from '../doubts.ts';
import { closeAsk, type Draft, emit, nextId, say } from '../draft.ts';
import { asSlot, slotFor, stageNow, stepAt, wanted } from '../plan.ts';
import { isLive, type Slot, sameSlot, valueIn } from '../values.ts';
import { valueLine } from '../wording/values.ts';

type SaidWhere = Said & Where;

/** Where the value belongs. `side` stays out where the field has sides and nothing says which. */
function placeOf(draft: Draft, field: FieldId, said: SaidWhere): Slot {
  if (said.origin === 'maker') return { field, stage: said.stage ?? 'fitted', origin: 'maker' };
  const wanted = slotFor(draft.job, field, said.side);
  const here = stepAt(draft.job)?.place;
  const side = said.side ?? (wanted ? wanted.side : fieldOf(field).perSide ? here?.side : undefined);
  const axle = said.axle ?? wanted?.axle ?? (fieldOf(field).perSide ? here?.axle : undefined);
  const stage = said.stage ?? wanted?.record.stage ?? stageNow(draft.job);
  return { field, stage, ...(side ? { side } : {}), ...(axle ? { axle } : {}) };
}

/** True where the side has to be asked: both sides are open and none was said. */
export function sideIsOpen(draft: Draft, field: FieldId, said: SaidWhere): boolean {
  if (
    said.side !== undefined ||
    said.origin === 'maker' ||
    !fieldOf(field).perSide ||
    stepAt(draft.job)?.place.side !== undefined
  )
    return false;
  const wanted = slotFor(draft.job, field, undefined);
  return !wanted || wanted.side !== undefined;
}

/** Takes a value in. Both sides said at once are two values; one that was doubted and never agreed gives way at once. */
export function take(draft: Draft, field: FieldId, said: SaidWhere, supersedes?: ValueRecord): Draft {
  if (said.side === 'both' && !fieldOf(field).perSide) {
    const { side: _both, ...each } = said;
    return take(draft, field, each, supersedes);
  }
  if (said.side === 'both') {
    return (['left', 'right'] as const).reduce((left, side) => take(left, field, { ...said, side }), draft);
  }
  const place = placeOf(draft, field, said);
  const old = supersedes ?? (isWantedAgain(draft, place) ? undefined : valueIn(draft.job, place));
  if (old && !supersedes && old.value === said.value && (old.unit ?? '1') === (unitOf(field, said) ?? '1'))
    return sameAgain(draft, old);
  const pending = old ? strikePending(draft, old) : draft;
  const value: ValueFact = { ...valueWords(draft, field, said), ...place, id: nextId(draft, 'v') };
  const heard = emit(pending, { kind: 'valueHeard', value, ...(old ? { supersedes: old.id } : {}) });
  const never = old && !supersedes && old.status === 'heard' && old.asked;
  return never ? emit(closeAskOn(heard, old), { kind: 'valueCorrected', id: old.id, by: value.id }) : heard;
}

/** The question about a value lapses when the value is replaced. */
export function closeAskOn(draft: Draft, { id }: ValueRecord): Draft {
  return draft.job.asked?.valueIds.includes(id) ? closeAsk(draft, 'no') : draft;
}

/** The step asks for it anew: a second measuring stands beside the first. */
const isWantedAgain = ({ job }: Draft, place: Slot): boolean => wanted(job).some((slot) => sameSlot(asSlot(slot), place));

/** Said twice alike: that confirms an ordinary value; one that waits for a yes still waits. */
function sameAgain(draft: Draft, old: ValueRecord): Draft {
  const sure = old.status === 'confirmed' || fieldOf(old.field).risk === 'asked' || old.asked;
  const told = say(draft, valueLine('sameAgain', { value: old }, draft.know.shop));
  return sure ? told : emit(told, { kind: 'valueConfirmed', id: old.id, how: 'said' });
}

/** An older replacement of the same value, not agreed, gives way to the newer one. */
function strikePending(draft: Draft, old: ValueRecord): Draft {
  const waiting = draft.job.values.filter((value) => value.supersedes === old.id && value.status === 'heard' && isLive(old));
  return emit(draft, ...waiting.map(({ id }) => ({ kind: 'valueStruck' as const, id, reason: 'said again' })));
}

const unitOf = (field: FieldId, { unit, unitSaid }: Said) =>
  (unit === '1' && !unitSaid ? fieldOf(field).unit : unit) ?? fieldOf(field).unit;

function valueWords(draft: Draft, field: FieldId, said: SaidWhere) {
  const { value, hedge, to, plusMinus, resolution, unitSaid, span } = said;
  const { heard } = draft;
  const unit = unitOf(field, said);
  const alternatives = alike(draft, field, said);
  return {
    value,
    ...(unit ? { unit } : {}),
    ...(unitSaid === undefined ? {} : { unitSaid }),
    ...(hedge ? { hedge } : {}),
    ...(to ? { to } : {}),
    ...(plusMinus ? { plusMinus } : {}),
    ...(resolution ? { resolution } : {}),
    ...(alternatives.length > 0 ? { alternatives } : {}),
    ...(span ? { span } : {}),
    raw: heard.understanding.text,
    heardBy: heard.heardBy,
    ...(heard.confidence === undefined ? {} : { confidence: heard.confidence }),
  };
}

/** What it might have been instead: the language's sound-alikes, and what the recogniser's runners-up say for the field. */
function alike(draft: Draft, field: FieldId, said: SaidWhere): readonly string[] {
  const rivals = draft.heard.runnersUp
    .flatMap(({ intents }) => intents)
    .filter((intent): intent is MeasureIntent | QuantityIntent => intent.kind === 'measure' || intent.kind === 'quantity')
    .filter((intent) => (intent.kind === 'quantity' || intent.field === field) && (intent.side ?? said.side) === said.side)
    .map(({ value }) => value);
  const others = [...new Set([...(said.alternatives ?? []), ...rivals])];
  return others.filter((value) => value !== said.value && unitSuits(field, { ...said, value }));
}
