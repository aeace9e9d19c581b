// What leans on the value said last: the same at another place, or so much more or less. Worked out exactly, then read back.
import { fieldOf } from '#data';
import { type CommandIntent, type Said, unitMeant, type Where } from '#intents';
import type { ValueRecord } from '#log/events';
import { inUnit } from '../doubts.ts';
import { type Draft, say } from '../draft.ts';
import { liveValues } from '../values.ts';
import { valueLine } from '../wording/values.ts';
import { replace } from './correct.ts';
import { take } from './take.ts';

/** "Same on the other side": what one breath told of a side, or of an axle, once more at the place named. */
export function same(draft: Draft, where: Where): Draft {
  const live = liveValues(draft.job);
  const last = live.at(-1);
  if (!last) return nothingSaid(draft);
  const byAxle = where.axle !== undefined && where.side === undefined;
  const told = live.filter(({ turn, axle, side }) => turn === last.turn && axle === last.axle && (byAxle || side === last.side));
  return told.reduce((left, value) => copied(left, value, byAxle ? value.side : (where.side ?? opposite(value)), where), draft);
}

function copied(draft: Draft, value: ValueRecord, side: Where['side'], { axle = value.axle }: Where): Draft {
  const ofAxle = value.side === undefined && !fieldOf(value.field).perSide;
  if (axle === value.axle && ofAxle) return say(draft, valueLine('sameAgain', { value }, draft.know.shop));
  return take(draft, value.field, { ...saidOf(value), stage: value.stage, ...(side && { side }), ...(axle && { axle }) });
}

const opposite = ({ side }: ValueRecord): Where['side'] => (side === 'left' ? 'right' : side === 'right' ? 'left' : 'both');

const saidOf = ({ value, unit, hedge, to, plusMinus }: ValueRecord): Said => ({
  value,
  ...(unit ? { unit, unitSaid: true } : {}),
  ...(hedge ? { hedge } : {}),
  ...(to ? { to } : {}),
  ...(plusMinus ? { plusMinus } : {}),
});

/** "An eighth less" corrects the value said last; "right an eighth less" is another, reckoned from it. */
export function adjust(draft: Draft, { said, side, axle }: CommandIntent): Draft {
  const last = liveValues(draft.job).at(-1);
  if (!last || !said) return nothingSaid(draft);
  const unit = said.unitSaid && said.unit ? unitMeant(last.field, said.unit) : last.unit;
  const by = unit && last.unit && inUnit({ value: said.value, unit }, last.unit);
  const from = last.unit && inUnit(last, last.unit);
  if (!by || !from) return say(draft, valueLine('wrongKind', { field: last.field, said }, draft.know.shop));
  const { hedge: _hedge, to: _to, ...kept } = saidOf(last);
  const sum = { ...kept, value: from.add(by).toFraction() };
  const elsewhere = (side !== undefined && side !== last.side) || (axle !== undefined && axle !== last.axle);
  if (!elsewhere) return replace(draft, last, sum);
  const place = { side: side ?? last.side, axle: axle ?? last.axle };
  return take(draft, last.field, {
    ...sum,
    stage: last.stage,
    ...(place.side && { side: place.side }),
    ...(place.axle && { axle: place.axle }),
  });
}

/** "That was the rear axle": what the last breath told of one place belongs at another. */
export function moved(draft: Draft, { side, axle }: CommandIntent): Draft {
  const live = liveValues(draft.job);
  const last = live.at(-1);
  const there = live.filter(
    (value) => value.turn === last?.turn && (side === undefined || (value.side === last.side && fieldOf(value.field).perSide)),
  );
  const place = { ...(side && { side }), ...(axle && { axle }) };
  return there.length === 0
    ? nothingSaid(draft)
    : there.reduce((left, value) => replace(left, value, { ...saidOf(value), ...place }), draft);
}

const nothingSaid = (draft: Draft): Draft => say(draft, valueLine('noValueThere', { field: undefined }, draft.know.shop));
