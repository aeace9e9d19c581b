import type { FieldId } from '#data';
import { fieldOf } from '#data';
import { sayValue } from '#intents';
import type { Shop } from '../types.ts';
import {
  listed,
  type Named,
  sayCount,
  sayFieldOf,
  sayName,
  sayNamed,
  sayOnly,
  sentence,
  showName,
  showNamed,
  showOnly,
} from '../words.ts';
import { speaker, type Wording } from './line.ts';

type Values = { readonly values: readonly Named[] };
type One = { readonly value: Named };

export interface ValueFacts {
  readonly taken: Values & { readonly more: number };
  readonly corrected: One & { readonly old: Named };
  readonly sameAgain: One;
  readonly struck: Values;
  readonly confirmed: Values;
  readonly askRight: Values & { readonly more: number };
  readonly askAlike: One & { readonly choices: readonly string[] };
  readonly askImplausible: One & { readonly field: FieldId };
  readonly askOrder: One & { readonly over: Named; readonly under: Named };
  readonly askSides: One & { readonly other: Named };
  readonly askReplace: One & { readonly old: Named };
  readonly askUnsure: One;
  readonly askLimits: One & { readonly judged: { readonly speak: string; readonly show: string } };
  readonly askStrike: Values;
  readonly askSide: { readonly field: FieldId; readonly value: Named };
  readonly askTarget: { readonly targets: readonly Named[] };
  readonly outside: One & {
    readonly least: string | undefined;
    readonly most: string | undefined;
    readonly unit: Named['unit'];
    readonly judged: string;
  };
  readonly have: Values & { readonly unsure: readonly Named[] };
  readonly haveNone: { readonly field: FieldId | undefined };
  readonly noValueThere: { readonly field: FieldId | undefined };
  readonly wrongKind: { readonly field: FieldId; readonly said: Pick<Named, 'value' | 'unit'> };
  readonly whatIsIt: { readonly said: string };
  readonly sayItAgain: { readonly value: Named };
}

/** "seven two": how a whole number of a measure is said so that it is not misheard. */
export function byDigits({ value, unit, field }: Named): string | undefined {
  const counted = /^\d{2,}$/.test(value) && fieldOf(field).unit !== undefined && unit !== undefined;
  return counted ? [...value].map((digit) => sayCount(Number(digit))).join(' ') : undefined;
}

function digits(value: Named): string {
  const spelled = byDigits(value);
  return spelled ? `, ${spelled}` : '';
}

const spoken = (values: readonly Named[], shop: Shop) =>
  grouped(values)
    .map((value) => sentence(sayNamed(value, shop)))
    .join('. ');
const shown = (values: readonly Named[], shop: Shop) =>
  grouped(values)
    .map((value) => showNamed(value, shop))
    .join('\n');
const sure = (values: readonly Named[], shop: Shop) =>
  grouped(values)
    .map((value) => sentence(sayNamed(value, shop)) + digits(value))
    .join('. ');

/** Left and right alike are said once. */
function grouped(values: readonly Named[]): readonly Named[] {
  const isSecond = (value: Named, i: number) => values.slice(0, i).some((other) => isTwin(other, value));
  return values
    .filter((value, i) => !isSecond(value, i))
    .map((value) => (values.some((other) => isTwin(other, value)) ? { ...value, side: 'both' } : value));
}

function isTwin(a: Named, b: Named): boolean {
  const sides = a.side !== undefined && b.side !== undefined && a.side !== b.side;
  return sides && a.field === b.field && a.axle === b.axle && a.value === b.value && a.unit === b.unit && a.hedge === b.hedge;
}

const ask = (speak: string, show?: string) => ({ tone: 'ask' as const, speak, show: show ?? speak });

const words: Wording<ValueFacts> = {
  taken: ({ values, more }, shop) => ({
    tone: 'taken',
    speak: `${spoken(values, shop)}.${more > 0 ? ` And ${sayCount(more)} more.` : ''}`,
    show: shown(values, shop),
  }),
  corrected: ({ value, old }, shop) => ({
    tone: 'taken',
    speak: `${sayName(value, shop)}, now ${sayOnly(value, shop)}.`,
    show: `${showNamed(value, shop)} (was ${showOnly(old, shop)})`,
  }),
  sameAgain: ({ value }, shop) => ({
    tone: 'taken',
    speak: `same again, ${sayNamed(value, shop)}.`,
    show: showNamed(value, shop),
  }),
  struck: ({ values }, shop) => ({
    tone: 'taken',
    speak: `struck: ${listed(grouped(values).map((value) => sayNamed(value, shop)))}.`,
    show: `Struck\n${shown(values, shop)}`,
  }),
  confirmed: ({ values }, shop) => ({
    tone: 'taken',
    speak: `${listed(values.map((value) => sayName(value, shop)))} confirmed.`,
    show: `Confirmed\n${shown(values, shop)}`,
  }),
  askRight: ({ values, more }, shop) =>
    ask(
      `${sure(values, shop)}. ${values.length > 1 ? 'All correct?' : 'Correct?'}${more > 0 ? ` ${sentence(sayCount(more))} more after that.` : ''}`,
      `${shown(values, shop)}\nCorrect?`,
    ),
  askAlike: ({ value, choices }, shop) =>
    ask(
      `${sayName(value, shop)}: ${listed(
        choices.map((choice) => sayOnly({ ...value, value: choice }, shop) + digits({ ...value, value: choice })),
        'or',
      )}?`,
      `${showName(value, shop)}: ${listed(
        choices.map((choice) => showOnly({ ...value, value: choice }, shop)),
        'or',
      )}?`,
    ),
  askImplausible: ({ value, field }, shop) => {
    const { min = '0', max = '0', unit } = fieldOf(field);
    const band = { field, value: min, to: max, ...(unit ? { unit } : {}) };
    return ask(
      `${sayNamed(value, shop)}${digits(value)}. It is usually ${sayOnly(band, shop)}. Correct?`,
      `${showNamed(value, shop)}\nUsually ${showOnly(band, shop)}. Correct?`,
    );
  },
  askOrder: ({ value, over, under }, shop) =>
    ask(
      `${sayNamed(value, shop)}. But ${sayFieldOf(over.field, shop)} ${sayOnly(over, shop)} is not more than ${sayFieldOf(under.field, shop)} ${sayOnly(under, shop)}. Correct?`,
      `${showNamed(value, shop)}\n${showNamed(over, shop)} is not more than ${showNamed(under, shop)}. Correct?`,
    ),
  askSides: ({ value, other }, shop) =>
    ask(
      `${sayNamed(value, shop)}${digits(value)}. But ${sayName(other, shop)} is ${sayOnly(other, shop)}. Correct?`,
      `${showNamed(value, shop)}\n${showNamed(other, shop)}\nCorrect?`,
    ),
  askReplace: ({ value, old }, shop) =>
    ask(
      `${sayName(value, shop)} was ${sayOnly(old, shop)}. ${sentence(sayOnly(value, shop))}${digits(value)} instead?`,
      `${showNamed(value, shop)} instead of ${showOnly(old, shop)}?`,
    ),
  askLimits: ({ value, judged }, shop) =>
    ask(
      `${sayNamed(value, shop)}${digits(value)}. ${judged.speak} Is the reading right?`,
      `${showNamed(value, shop)}\n${judged.show}\nIs the reading right?`,
    ),
  askUnsure: ({ value }, shop) =>
    ask(
      `I may have misheard. ${sentence(sayNamed(value, shop))}${digits(value)}. Correct?`,
      `${showNamed(value, shop)}\nCorrect?`,
    ),
  askStrike: ({ values }, shop) =>
    ask(`strike ${listed(grouped(values).map((value) => sayNamed(value, shop)))}?`, `Strike?\n${shown(values, shop)}`),
  askSide: ({ field, value }, shop) =>
    ask(
      `${sayFieldOf(field, shop)} ${sayOnly(value, shop)}: ${shop.sides.left} or ${shop.sides.right}?`,
      `${showNamed(value, shop)}\n${shop.sides.left} or ${shop.sides.right}?`,
    ),
  askTarget: ({ targets }, shop) =>
    ask(
      `which one: ${listed(
        targets.map((value) => sayNamed(value, shop)),
        'or',
      )}?`,
    ),
  outside: ({ value, least, most, unit, judged }, shop) => {
    const end = (text: string) => sayOnly({ field: value.field, value: text, ...(unit ? { unit } : {}) }, shop);
    const limits = [least && `at least ${end(least)}`, most && `at most ${end(most)}`].filter(Boolean).join(', ');
    if (limits === '') return { tone: 'caution', speak: `${judged} Set it again and call it, or skip with a reason.` };
    return {
      tone: 'caution',
      speak: `${sayName(value, shop)} must be ${limits}. Set it again and call it, or skip with a reason.`,
    };
  },
  have: ({ values, unsure }, shop) => ({
    tone: 'answer',
    speak: `${spoken(values, shop)}.${unsure.length > 0 ? ` Not confirmed: ${listed(unsure.map((value) => sayName(value, shop)))}.` : ''}`,
    show: `${shown(values, shop)}${unsure.length > 0 ? `\nNot confirmed: ${listed(unsure.map((value) => showName(value, shop)))}` : ''}`,
  }),
  haveNone: ({ field }, shop) => ({
    tone: 'answer',
    speak: field ? `no ${sayFieldOf(field, shop)} yet.` : 'nothing measured yet.',
  }),
  noValueThere: ({ field }, shop) => ({
    tone: 'refused',
    speak: field ? `no ${sayFieldOf(field, shop)} to change. Say it whole.` : 'no value to change. Say which one, and the value.',
  }),
  wrongKind: ({ field, said }, shop) => ({
    tone: 'refused',
    speak: `${sayValue(undefined, said)} is no ${sayFieldOf(field, shop)}. Say it again with its unit.`,
  }),
  whatIsIt: ({ said }) => ({ tone: 'ask', speak: `${said}: of what? Say its name with it.` }),
  sayItAgain: ({ value }, shop) => ({ tone: 'ask', speak: `struck. ${sentence(sayName(value, shop))}: say it again.` }),
};

export const valueLine = speaker(words);
