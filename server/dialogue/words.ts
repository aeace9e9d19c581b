// Values, fields, sides and places in the words of this shop. Numbers go through #intents alone.
import type { FieldId } from '#data';
import { type Manner, sayField, sayValue, showField, showValue } from '#intents';
import type { ValueFact } from '#log/events';
import type { Shop } from './types.ts';

/** A value with what is needed to name it. */
export type Named = Pick<ValueFact, 'field' | 'value'> &
  Partial<Pick<ValueFact, 'unit' | 'hedge' | 'to' | 'plusMinus' | 'side' | 'axle' | 'stage' | 'origin'>>;

export const mannerOf = ({ spelling, lengthUnit }: Shop): Manner => ({ spelling, lengthUnit });

export function sayCount(count: number): string {
  return sayValue(undefined, { value: String(count), unit: '1' });
}

/** "left", or what the shop calls it. */
export function saySide(side: 'left' | 'right' | 'both', { sides }: Shop): string {
  return side === 'both' ? `${sides.left} and ${sides.right}` : sides[side];
}

function whereWords({ side, axle }: Pick<Named, 'side' | 'axle'>, shop: Shop): string {
  return [axle && `${axle} axle`, side && saySide(side, shop)].filter(Boolean).join(' ');
}

/** "front axle left, end play". */
export function sayName(value: Omit<Named, 'value'>, shop: Shop): string {
  const where = whereWords(value, shop);
  return [value.origin === 'maker' && "maker's", where, sayField(value.field, mannerOf(shop))].filter(Boolean).join(' ');
}

export function showName(value: Omit<Named, 'value'>, shop: Shop): string {
  const where = [value.origin === 'maker' && 'maker', whereWords(value, shop)].filter(Boolean).join(', ');
  return where ? `${showField(value.field, mannerOf(shop))}, ${where}` : showField(value.field, mannerOf(shop));
}

/** "hub face, seventy-two and three eighths inches". */
export function sayNamed(value: Named, shop: Shop): string {
  return `${sayName(value, shop)}, ${sayOnly(value, shop)}`;
}

export const sayOnly = (value: Named, shop: Shop): string => sayValue(value.field, value, mannerOf(shop));
export const showOnly = (value: Named, shop: Shop): string => showValue(value.field, value, mannerOf(shop));
export const showNamed = (value: Named, shop: Shop): string => `${showName(value, shop)}: ${showOnly(value, shop)}`;

export const sayFieldOf = (field: FieldId, shop: Shop): string => sayField(field, mannerOf(shop));
export const showFieldOf = (field: FieldId, shop: Shop): string => showField(field, mannerOf(shop));

/** "a, b and c". */
export function listed(items: readonly string[], last = 'and'): string {
  if (items.length < 2) return items[0] ?? '';
  return `${items.slice(0, -1).join(', ')} ${last} ${items.at(-1)}`;
}

/** The first clause of a step's words: enough to name it. */
export function clause(say: string): string {
  return say.split(/[:;.?]/)[0] ?? say;
}

/** What was dictated may end in a stop or a comma; inside our own sentence it does not. */
export function withoutStop(text: string): string {
  return text.replace(/[\s.,;:]+$/, '');
}

/** First letter large: for the start of what is said. */
export function sentence(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
