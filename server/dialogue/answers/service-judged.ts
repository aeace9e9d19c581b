// The verdict on a value that was called out, in words: nothing to do where it is good, what to do where it is not.
import {
  type CurrentVerdict,
  type DrumVerdict,
  type EndPlayVerdict,
  gravityOf,
  type HubHeat,
  type Judgement,
  judgeReading,
  type MagnetOhms,
  type Range,
  type TorqueVerdict,
} from '#core';
import type { FieldId } from '#data';
import type { ValueRecord } from '#log/events';
import { listed, showNamed } from '../words.ts';
import { halvesWords, spacingWords, squareWords, toeWords } from './service-alignment-words.ts';
import { type Ask, both, join, lines, same, type Words } from './service-ask.ts';

/** A judged value: `gravity` bad is out of limits and is asked about. */
export interface Judged extends Words {
  readonly code: string;
  readonly gravity: 'good' | 'doubtful' | 'bad';
}

/** What there is to say of a value, or undefined where nothing can be judged yet. */
export function judged(value: ValueRecord, ask: Ask): Judged | undefined {
  const judgement = judgeReading(value, ask.readings);
  if (!judgement) return undefined;
  return { code: judgement.verdict.code, gravity: gravityOf(judgement), ...wordsOf(judgement, ask) };
}

function wordsOf(judgement: Judgement, ask: Ask): Words {
  switch (judgement.about) {
    case 'torque':
      return torqueWords[judgement.verdict.code](judgement.verdict, ask);
    case 'endPlay':
      return endPlayWords[judgement.verdict.code](judgement.verdict, ask);
    case 'square':
      return squareWords(judgement.verdict, ask);
    case 'spacing':
      return spacingWords(judgement.verdict, ask);
    case 'halves':
      return halvesWords(judgement.verdict, ask);
    case 'toe':
      return toeWords(judgement.verdict, ask);
    case 'heat':
      return heatWords[judgement.verdict.code](judgement.verdict, ask);
    case 'ohms':
      return ohmWords[judgement.verdict.code](judgement.verdict, ask);
    case 'current':
      return currentWords[judgement.verdict.code](judgement.verdict, ask);
    case 'drum':
      return drumWords[judgement.verdict.code](judgement.verdict, ask);
    case 'lining':
      return liningWords[judgement.verdict.code];
    case 'tread':
      return treadWords[judgement.verdict.code];
  }
}

type WordsFor<V extends { readonly code: string }> = Readonly<Record<V['code'], (verdict: V, ask: Ask) => Words>>;

function limits(ranges: readonly Range[], { tell }: Ask, form: keyof Words): string {
  return listed([...new Set(ranges.map(({ low, high, unit }) => tell.range(low, high, unit)[form]))], 'or');
}

function most(ranges: readonly Range[], { tell }: Ask, form: keyof Words, way: 1 | -1): string {
  const [high] = ranges.map((range) => range.high).toSorted((one, other) => way * other.compare(one));
  return high ? tell.amount({ value: high, unit: 'lbf.ft' })[form] : '';
}

const torqueWords: WordsFor<TorqueVerdict> = {
  torqueWithin: ({ ranges }, ask) => ({ speak: 'In range.', show: `In range: ${limits(ranges, ask, 'show')}.` }),
  torqueLow: ({ ranges }, ask) =>
    both((form) => `Low: ${limits(ranges, ask, form)} wanted. Bring it up, same order, and call it again.`),
  torqueHigh: ({ ranges }, ask) =>
    both(
      (form) =>
        `High: ${limits(ranges, ask, form)} wanted. Back off, look at the thread for stretch, new if in doubt, torque again.`,
    ),
  torqueDepends: ({ ranges, field }, ask) =>
    both((form) =>
      field === 'uBoltTorque'
        ? `More than the ${most(ranges, ask, form, -1)} of the weakest in that thread; the strongest take ${most(ranges, ask, form, 1)}. Which grade, and plated?`
        : `The books differ: ${limits(ranges, ask, form)}. Check the maker's figure.`,
    ),
  torqueUnjudged: () => same("Noted; I have no published figure to hold it against. Check the maker's."),
};

const endPlayWords: WordsFor<EndPlayVerdict> = {
  endPlayWithin: ({ nearLimit, range }, ask) => {
    const edge = nearLimit ? ', but at the edge of what a dial can tell' : '';
    return { speak: `In range${edge}.`, show: `In range (${playRange(range, ask, 'show')})${edge}.` };
  },
  endPlayNone: () => same('No play at all: that runs hot. Loosen to the next stop and measure again.'),
  endPlayLow: ({ range }, ask) =>
    both((form) => `Tight: ${playRange(range, ask, form)} wanted. Loosen to the next stop and measure again.`),
  endPlayHigh: ({ range, allowedBy }, ask) =>
    both((form) =>
      join(
        `Loose: ${playRange(range, ask, form)} wanted. Tighten to the next stop and measure again.`,
        allowedBy.length > 0
          ? `Some documents allow up to ${ask.tell.amount({ value: largest(allowedBy), unit: 'in' }, 'endPlay')[form]}.`
          : undefined,
      ),
    ),
  endPlayDepends: ({ range }, ask) => both((form) => `The figure is ${playRange(range, ask, form)}; check the maker's.`),
};

export function playRange({ low, high, unit }: Range, { tell }: Ask, form: keyof Words): string {
  return tell.range(low, high, unit, 'endPlay')[form];
}

function largest(ranges: readonly Range[]): Range['high'] {
  return ranges.map(({ high }) => high).reduce((most, high) => (high.compare(most) > 0 ? high : most));
}

const degrees = (value: HubHeat['hottest']['temperature'], { tell }: Ask, form: keyof Words): string =>
  tell.amount({ value, unit: 'degF' })[form];

const hubNamed = ({ hub }: HubHeat['hottest']): string => (hub === '' ? 'That hub' : `The ${hub} hub`);

/** The rise over the air, where the air is known. */
function overAir({ overAmbient }: HubHeat, ask: Ask, form: keyof Words): string {
  return overAmbient ? `, ${degrees(overAmbient, ask, form)} over the air` : '';
}

export const heatWords: WordsFor<HubHeat> = {
  hubsAlike: (verdict, ask) => both((form) => `The hubs agree${overAir(verdict, ask, form)}.`),
  hubAlone: (verdict, ask) =>
    both((form) =>
      join(
        `One hub alone says little${overAir(verdict, ask, form)}: call its mate on the other side`,
        verdict.overAmbient ? '' : 'and the ambient',
      ).concat('.'),
    ),
  hubRise: (verdict, ask) =>
    both((form) => {
      const hot = verdict.onHotDay ? `: on a hundred-degree day that is ${degrees(verdict.onHotDay, ask, form)}` : '';
      return `${hubNamed(verdict.hottest)} runs hot for this air${overAir(verdict, ask, form)}${hot}. Find out why before it goes out.`;
    }),
  hubApart: ({ hottest, apart }, ask) =>
    both(
      (form) =>
        `${hubNamed(hottest)} is ${apart ? degrees(apart, ask, form) : 'much'} hotter than its mate. Hot drum with a cool centre is a dragging brake; hot centre is a bearing: take it down.`,
    ),
  hubHot: (verdict, ask) =>
    both(
      (form) =>
        `${hubNamed(verdict.hottest)} is at ${degrees(verdict.hottest.temperature, ask, form)}${overAir(verdict, ask, form)}: find out why before it goes out.`,
    ),
  hubStop: ({ hottest }, ask) =>
    both(
      (form) =>
        `${hubNamed(hottest)} is at ${degrees(hottest.temperature, ask, form)}: do not run it. Let it cool, take it down.`,
    ),
};

const ohmBand = ({ ranges }: MagnetOhms, ask: Ask, form: keyof Words): string => limits(ranges, ask, form);

const ohmWords: WordsFor<MagnetOhms> = {
  magnetGood: () => same('Good magnet.'),
  magnetLow: (verdict, ask) => both((form) => `Low: ${ohmBand(verdict, ask, form)} wanted. Shorted turns: replace the magnet.`),
  magnetHigh: (verdict, ask) =>
    both((form) => `High: ${ohmBand(verdict, ask, form)} wanted. Bad joint or lead: measure at the magnet itself.`),
  magnetOpen: () => same('Open: the coil or a lead is broken. Replace the magnet.'),
  magnetShorted: () => same('Shorted: replace the magnet and look at the fuse.'),
  magnetDepends: (verdict, ask) =>
    both((form) => `Depends on the drum size: ${ohmBand(verdict, ask, form)}. Which brakes are they?`),
};

const expectedAmps = ({ expected: { total } }: CurrentVerdict, { tell }: Ask, form: keyof Words): string =>
  tell.range(total.low, total.high, 'A')[form];

const currentWords: WordsFor<CurrentVerdict> = {
  currentGood: () => same('Good: every magnet is working.'),
  currentNone: (verdict, ask) =>
    both((form) => `Nothing flows: ${expectedAmps(verdict, ask, form)} expected. Look at plug, earth and controller.`),
  currentOneShort: (verdict, ask) =>
    both((form) => {
      const { missing, expected } = verdict;
      const alone = missing === expected.brakes - 1 ? ' If that was one magnet alone it is good: say its side.' : '';
      const gone = `${ask.tell.count(missing)[form]} magnet${missing > 1 ? 's' : ''}`;
      return `Low by ${gone}: ${expectedAmps(verdict, ask, form)} expected. Measure each one.${alone}`;
    }),
  currentLow: (verdict, ask) =>
    both((form) => `Low: ${expectedAmps(verdict, ask, form)} expected. Look at earth, joints and wire.`),
  currentHigh: (verdict, ask) =>
    both((form) => `High: ${expectedAmps(verdict, ask, form)} expected. A magnet or wire is shorted.`),
};

const drumWords: WordsFor<DrumVerdict> = {
  drumWithin: () => same('Within the drum limit; the figure cast in it rules.'),
  drumWorn: ({ limit }, ask) =>
    both(
      (form) =>
        `Worn past ${limit ? ask.tell.decimal({ value: limit, unit: 'in' })[form] : 'its limit'}: replace it and its mate.`,
    ),
  drumLimitUnknown: () => same('No limit listed for that drum: go by the figure cast in it.'),
};

const liningWords = {
  liningGood: same('Lining is good.'),
  liningWorn: same('Lining is out: a sixteenth or less. New shoes, both sides.'),
} as const;

const treadWords = {
  treadGood: same('Tread is good.'),
  treadWorn: same('Under two thirty-seconds: that tyre does not go back.'),
} as const;

/** Lines of what was recorded of a torque, each with its verdict. */
export function recordedTorques(ask: Ask, field: FieldId): string | undefined {
  const values = ask.readings.filter((value) => value.field === field && value.stage === 'fitted');
  const told = values.map((value) => {
    const name = showNamed(value, ask.know.shop);
    return value.origin === 'maker' ? `${name} (maker's figure)` : `${name}. ${judged(value, ask)?.show ?? ''}`;
  });
  return told.length > 0 ? lines(...told) : undefined;
}
