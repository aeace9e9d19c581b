// Torque: wheel nuts, U-bolts, spring bolts, bearing seat, a bolt by its grade, a wrench with an extension.
import {
  Fraction,
  makersRange,
  measured,
  type Range,
  type Reading,
  type TorqueStage,
  type UBoltTorque,
  uBoltLegs,
  uBoltsOf,
  type WheelNutTorque,
  wheelNutsOf,
} from '#core';
import { bearingAdjustments, type FieldId, fieldOf, type UnitId, wheelNuts as wheelNutRows } from '#data';
import type { Answer } from '../types.ts';
import { listed, sentence } from '../words.ts';
import { type Ask, answer, join, lines, same, type Words } from './service-ask.ts';
import { bolt, extension, givenThread, stretch, threadIn } from './service-bolt.ts';
import { askBack } from './service-follow-ups.ts';
import { recordedTorques } from './service-judged.ts';
import { practice } from './service-practice.ts';

const parts: ReadonlySet<string> = new Set(['wheelNut', 'uBolt', 'springBolt', 'seat']);

type Part = 'extension' | 'stretch' | 'bolt' | 'uBolts' | 'springBolts' | 'seat' | 'wheelNuts';

/** What a torque question is about: its part, for "those" the part measured last, else what the step on the screen is about. */
function partAsked(ask: Ask): Part {
  const { job, question } = ask;
  const named = parts.has(question.of ?? '')
    ? question.of
    : /\b(those|these|them|it|that|this)\b/.test(ask.words) && lastMeasured(ask);
  const words = named ? `${ask.words} ${named.toLowerCase()}` : ask.words;
  if (/extension|crow ?foot/.test(words)) return 'extension';
  if (/stretch|elongation/.test(words)) return 'stretch';
  if (/grade|class/.test(words)) return 'bolt';
  if (/u.?bolt/.test(words)) return 'uBolts';
  if (/spring ?bolt|shackle|equali[sz]er|hanger|eye bolt/.test(words)) return 'springBolts';
  if (/seat\b|spindle|castle|axle nut|bearing/.test(words)) return 'seat';
  if (/nut|lug|wheel|hub|stud/.test(words)) return 'wheelNuts';
  if (/\bbolt\b|anti.?seize/.test(words) || givenThread(ask)) return 'bolt';
  if (job.currentStep?.startsWith('fitAxle/')) return 'uBolts';
  return job.currentStep?.startsWith('hubBearing/') ? 'seat' : 'wheelNuts';
}

export const torque = (ask: Ask): Answer => answerFor[partAsked(ask)](ask);

const recordedAs: Readonly<Partial<Record<Part, FieldId>>> = {
  uBolts: 'uBoltTorque',
  springBolts: 'springBoltTorque',
  seat: 'seatTorque',
  wheelNuts: 'wheelNutTorque',
};

/** The field that holds what a torque question asks for. */
export const torqueFieldOf = (ask: Ask): FieldId | undefined => recordedAs[partAsked(ask)];

/** The words of the field told last: "u bolt thread", "stud thread". */
const lastMeasured = ({ readings }: Ask): string | undefined =>
  readings.at(-1)?.field.replace(/[A-Z]/g, (letter) => ` ${letter}`);

/** The job's values, and over them what the question itself names: "half twenty studs on thirteen inch steel wheels". */
function withGiven({ readings, given, words }: Ask, thread: 'studThread' | 'uBoltThread'): readonly Reading[] {
  const named = given.flatMap((one): readonly Reading[] => {
    const { value, unit } = one;
    const size = threadIn(one);
    if (size) return [{ field: thread, value: size, stage: 'fitted' }];
    if (one.kind !== 'measure') return unit === 'in' ? [{ field: 'wheelDiameter', value, unit, stage: 'fitted' }] : [];
    const { field } = one;
    return [{ field, value, stage: 'fitted', ...(unit === undefined ? {} : { unit }) }];
  });
  const metal = /\bsteel/.test(words) ? 'steel' : /alumin|alloy/.test(words) ? 'aluminium' : undefined;
  const wheel: readonly Reading[] = metal ? [{ field: 'wheelType', value: metal, stage: 'fitted' }] : [];
  return [...readings, ...named.filter(({ field }) => joint.has(field)), ...wheel];
}

/** A size that only the question named is told back: a mishearing is heard in it. */
function sized(words: string, ask: Ask, field: 'studThread' | 'uBoltThread'): string {
  const thread = ask.given.map((one) => threadIn(one)).findLast(Boolean);
  return thread ? `${sentence(ask.tell.value(field, thread).speak)}: ${words.charAt(0).toLowerCase()}${words.slice(1)}` : words;
}

const joint: ReadonlySet<FieldId> = new Set<FieldId>(['studThread', 'uBoltThread', 'wheelType', 'wheelDiameter', 'tyreSize']);

const makerFirst = "The maker's figure comes first.";

function wheelNuts(ask: Ask): Answer {
  const wetted = wet.test(ask.words) && practice({ ...ask.question, words: `oil on the stud ${ask.words}` });
  if (wetted) return wetted;
  const torques = wheelNutsOf(withGiven(ask, 'studThread'));
  if (torques.code === 'studUnknown') return askBack('wheelNuts.studUnknown');
  const used = (['studThread', 'wheelType', 'wheelDiameter', 'tyreSize'] as const).map((field) =>
    measured(ask.readings, { field }),
  );
  const words = wheelNutWords[torques.code](torques as never, ask);
  const recorded = recordedTorques(ask, 'wheelNutTorque');
  return answer(
    `wheelNuts.${torques.code}`,
    { speak: sized(words.speak, ask, 'studThread'), show: lines(words.show, recorded) },
    {
      sources: torques.ranges.map(({ source }) => source),
      used,
      missing: 'missing' in torques ? torques.missing : [],
      caution: 'dryStuds',
      ...(torques.code === 'documentsDiffer' && torques.missing.length > 0 ? { asks: true as const } : {}),
    },
  );
}

/** Asked last, of threads whose published figure is a dry one. */
const wet = /\b(oil|oiled|lube|lubed|lubricated|grease|greased|wet|never|anti)\b(\W+\w+)?$/;

type Of<C extends WheelNutTorque['code']> = Extract<WheelNutTorque, { readonly code: C }>;
type WheelNutWords = { readonly [C in Exclude<WheelNutTorque['code'], 'studUnknown'>]: (torques: Of<C>, ask: Ask) => Words };

const wheelNutWords: WheelNutWords = {
  maker: ({ range, stages }, ask) => ({
    speak: `The maker's figure: ${rangeWords(range, ask).speak}. ${stageWords(stages.steps, ask).speak}`,
    show: lines(`Wheel nuts, maker's figure: ${rangeWords(range, ask).show}`, stageWords(stages.steps, ask).show, stages.source),
  }),
  published: ({ range, stages, missing }, ask) => ({
    speak: join(
      `${sentence(rangeWords(range, ask).speak)}.`,
      stageWords(stages.steps, ask).speak,
      moreWords(missing),
      makerFirst,
    ),
    show: lines(
      `Wheel nuts: ${rangeWords(range, ask).show}`,
      stageWords(stages.steps, ask).show,
      moreWords(missing),
      'Dry studs, torque wrench, star order.',
      makerFirst,
      stages.row ? undefined : `Stages: ${stages.source}`,
    ),
  }),
  documentsDiffer: ({ ranges, missing }, ask) => ({
    speak: join(
      ...(missing.length > 0
        ? [`The books differ: ${listed(distinct(ranges, ask), 'or')}.`]
        : ['The books differ.', ...ranges.map((range) => `${sentence(documentWords(range, ask, 'speak'))}.`)]),
      'Do not go between.',
      moreWords(missing) || "Ask for the maker's figure.",
    ),
    show: lines(
      ...ranges.map((range) => `${documentWords(range, ask, 'show')} (${range.source})`),
      moreWords(missing),
      makerFirst,
    ),
  }),
  nonePublished: (_torques, ask) => ({
    speak: `I have no published figure for ${studWords(ask).speak} studs. Give me the wheel or axle maker's figure.`,
    show: `No published wheel nut figure for ${studWords(ask).show}. Use the wheel or axle maker's figure and tell me: I keep it as theirs.`,
  }),
};

function uBolts(ask: Ask): Answer {
  const wetted = wet.test(ask.words) && practice({ ...ask.question, words: `oil on the u bolt ${ask.words}` });
  if (wetted) return wetted;
  const torques = uBoltsOf(withGiven(ask, 'uBoltThread'));
  if (torques.code === 'threadUnknown') return askBack('uBolts.threadUnknown');
  const words = uBoltWords[torques.code](torques as never, ask);
  const recorded = recordedTorques(ask, 'uBoltTorque');
  return answer(
    `uBolts.${torques.code}`,
    { speak: sized(words.speak, ask, 'uBoltThread'), show: lines(words.show, recorded) },
    {
      sources: torques.ranges.map(({ source }) => source),
      used: [measured(ask.readings, { field: 'uBoltThread' })],
      caution: 'newUBolts',
    },
  );
}

type UOf<C extends UBoltTorque['code']> = Extract<UBoltTorque, { readonly code: C }>;
type UBoltWords = { readonly [C in Exclude<UBoltTorque['code'], 'threadUnknown'>]: (torques: UOf<C>, ask: Ask) => Words };

const bow = 'Common practice, no source: shops also stop when the tie plate just begins to bow. It is a sign, not a measure.';
const cross = `In a cross: ${uBoltLegs.join(', ')}.`;

const uBoltWords: UBoltWords = {
  maker: ({ highest, stages }, ask) => ({
    speak: `The maker's figure: ${rangeWords(highest, ask).speak}. ${stageWords(stages, ask).speak} ${cross}`,
    show: lines(`U-bolts, maker's figure: ${rangeWords(highest, ask).show}`, stageWords(stages, ask).show, cross),
  }),
  published: ({ highest, ranges, stages }, ask) => ({
    speak: join(`At most ${most(highest, ask).speak}, plated grade five.`, stageWords(stages, ask).speak, cross, makerFirst),
    show: lines(
      ...ranges.map((range) => `At most ${most(range, ask).show}: ${finishOf(range)}`),
      stageWords(stages, ask).show,
      cross,
      makerFirst,
      bow,
    ),
  }),
  nonePublished: () => ({
    speak: "I have no published figure for that U-bolt thread. Give me the maker's figure.",
    show: "No published U-bolt figure for that thread. Use the maker's and tell me: I keep it as theirs.",
  }),
};

function finishOf({ row }: Range): string {
  const [, grade = '', finish = ''] = /g(\d)\.(\w+)$/.exec(row) ?? [];
  return `grade ${grade}, ${finish}`;
}

/** No document covers them all: what is known is said as what it is. */
function springBolts(ask: Ask): Answer {
  return answer(
    'springBolts',
    {
      speak: "No general figure. Shackle nuts snug with the links free to swing; eye bolts to the maker's figure.",
      show: lines(
        "Spring eye and shackle bolts: no general figure; the maker's comes first.",
        'One military trailer gives its rear hanger nuts 30 lb-ft.',
        'Shackles: snug, locked, links free to swing (common practice, no source).',
        'Serrated bolts: hold the head, turn the nut.',
        recordedTorques(ask, 'springBoltTorque'),
      ),
    },
    { sources: ['TM 9-2330-202-13&P p. 294', 'bobbystuff.com/rv/73 (serrated bolts)'], caution: 'makerFirst' },
  );
}

/** How a tapered bearing is seated and set, by the documents for its lock. */
export function seat(ask: Ask): Answer {
  const lock = measured(ask.readings, { field: 'nutLock' });
  const rows = bearingAdjustments.filter((row) => lock === undefined || row.lock === 'tangKeeper' || row.lock === lock.value);
  const fitting = rows.length > 0 ? rows : bearingAdjustments.filter(({ lock: kind }) => kind === 'cotter');
  const maker = makersRange(ask.readings, 'seatTorque');
  const given = maker && ask.tell.range(maker.low.value, maker.high.value, maker.low.unit);
  const [first] = fitting.toSorted((a, b) => Number(a.seat ?? 999) - Number(b.seat ?? 999));
  const said = first?.seat ? ask.tell.value('seatTorque', first.seat) : { speak: 'snug', show: 'snug' };
  return answer(
    'seat',
    {
      speak: given
        ? `The maker's figure: ${given.speak} to seat it, turning the hub, then back off and finger tight. Dial it after.`
        : join(
            `Turning the hub: about ${said.speak} to seat a light spindle, then back off and finger tight.`,
            'Heavier ones are given up to two hundred.',
            "Dial it after. The maker's figure comes first.",
          ),
      show: lines(
        given ? `Seat torque, maker's figure: ${given.show}` : undefined,
        ...fitting.map((row) => `${row.about}: ${row.said} (${row.source})`),
        'Then measure the end play; never count turns for it.',
        makerFirst,
      ),
    },
    { sources: fitting.map(({ source }) => source), used: [lock], caution: 'noImpact' },
  );
}

const answerFor: Readonly<Record<Part, (ask: Ask) => Answer>> = {
  extension,
  stretch,
  bolt,
  uBolts,
  springBolts,
  seat,
  wheelNuts,
};

function rangeWords({ low, high, unit }: Range, { tell }: Ask): Words {
  return tell.range(low, high, unit);
}

function most({ high, unit }: Range, { tell }: Ask): Words {
  return tell.amount({ value: high, unit });
}

function distinct(ranges: readonly Range[], ask: Ask): readonly string[] {
  return [...new Set(ranges.map((range) => rangeWords(range, ask).speak))];
}

/** What one document gives and for which wheels, with its own stages: "twelve or thirteen inch wheels: fifty to sixty, by way of ...". */
function documentWords(range: Range, ask: Ask, form: keyof Words): string {
  const row = wheelNutRows.find(({ id }) => id === range.row);
  const size = row?.wheelDiameters?.map((inches) => ask.tell.count(Number(inches))[form]);
  const wheels = [size && `${listed(size, 'or')} inch`, row?.wheelType].filter(Boolean).join(' ');
  const between = row?.stages
    .slice(0, -1)
    .map(([low = '0', high = low]) => ask.tell.range(new Fraction(low), new Fraction(high), '1')[form]);
  const stages = between && between.length > 0 ? `, first ${between.join(', then ')}` : '';
  return `${wheels ? `${wheels} wheels: ` : ''}${rangeWords(range, ask)[form]}${stages}`;
}

function studWords({ readings, tell }: Ask): Words {
  const stud = measured(readings, { field: 'studThread' });
  return stud ? tell.value('studThread', stud.value) : same('those');
}

/** "In three stages: twenty to twenty-five, fifty to sixty, then the final." */
function stageWords(stages: readonly TorqueStage[], { tell }: Ask): Words {
  const bare = (low: Fraction, high: Fraction) => tell.range(low, high, '1' satisfies UnitId);
  const told = stages.slice(0, -1).map(({ low, high }) => bare(low, high));
  return {
    speak: `${sentence(tell.count(stages.length).speak)} stages: ${told.map(({ speak }) => speak).join(', then ')}, then final.`,
    show: `Stages: ${told.map(({ show }) => show).join(', ')}, final`,
  };
}

function moreWords(missing: readonly FieldId[]): string | undefined {
  return missing.length > 0 ? `Tell me the ${listed(missing.map((field) => fieldOf(field).label))} to be sure.` : undefined;
}
