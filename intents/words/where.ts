// Where on the trailer: sides, axles, old and new, inner and outer. Templates as in phrase.ts.
import type { FieldId } from '#data';
import type { AxlePosition, Side, Stage } from '../types.ts';

export type Position = 'inner' | 'outer';

/** "The other side" is whichever was not said last. */
export const sideWords: readonly (readonly [Side | 'other', readonly string[]])[] = [
  [
    'left',
    [
      'left [hand] [side]',
      "(driver|drivers|driver's) [side]",
      '(road|street|near|roadside) side',
      '(nearside|lh|roadside|lefthand)',
    ],
  ],
  [
    'right',
    [
      'right (hand|hand side|side)',
      'right',
      "(passenger|passengers|passenger's) [side]",
      '(kerb|curb|off|ditch) side',
      '(offside|rh|kerbside|curbside|righthand)',
    ],
  ],
  [
    'both',
    [
      '[on] (both|each|either) (side|sides|ends|end)',
      'both',
      'per side',
      'all [the] [way] (around|round)',
      '[on] (both|each) of them',
      '(left and right|right and left|side to side)',
      'all (four|six|of them|wheels)',
      'each',
      '(every wheel|every corner|everywhere)',
    ],
  ],
  ['other', ['[the] other (side|one|hand)', '[the] opposite side']],
];

export const axleWords: readonly (readonly [AxlePosition, readonly string[]])[] = [
  [
    'front',
    ['front [axle|axles]', '(lead|leading|forward) axle', 'first axle', 'axle (one|1)', 'number one axle', 'front most axle'],
  ],
  ['middle', ['(middle|mid|centre|second of three) axle', 'middle']],
  [
    'rear',
    [
      'rear [axle|axles]',
      '(trailing|back|last|second|third|rearmost) axle',
      'axle (two|three|2|3)',
      'number two axle',
      'back end',
      'at the back',
      'back',
    ],
  ],
];

export const stageWords: readonly (readonly [Stage, readonly string[]])[] = [
  [
    'found',
    [
      '(old|existing|original|bent|worn|broken) axle',
      '(old|existing|original|found)',
      'as found',
      '(off|on) the old [one|axle]',
      '[the] old one',
      'the one (coming|that came) off',
      'before',
    ],
  ],
  [
    'fitted',
    [
      '(new|replacement) axle',
      '(new|fitted|replacement)',
      'as fitted',
      '(on) the new [one|axle]',
      '[the] new one',
      'the one going on',
      '(after|final|now reads|now measures)',
    ],
  ],
];

export const positionWords: readonly (readonly [Position, readonly string[]])[] = [
  ['inner', ['(inner|inside|inboard)']],
  ['outer', ['(outer|outside|outboard)']],
];

interface SizeWords {
  readonly fields: readonly FieldId[];
  readonly after: readonly string[];
  readonly before?: readonly string[];
}

/** Said after or before a size: which of the sizes of the thing named beside it it is. By themselves they name nothing. */
export const sizeWords: readonly SizeWords[] = [
  { fields: ['uBoltLength', 'springLength'], after: ['long', 'in length'], before: ['length'] },
  {
    fields: ['uBoltWidth', 'springWidth', 'wheelWidth', 'frameWidth', 'fenderWidth'],
    after: ['wide', 'in width', 'across'],
    before: ['width'],
  },
  { fields: ['springPack', 'tiePlateThickness', 'liningThickness'], after: ['thick', 'in thickness', 'deep'] },
  { fields: ['axleSpacing'], after: ['apart'] },
  { fields: ['drumLimit'], after: [], before: ['(max|maximum|limit|discard|cast|stamped)'] },
];

/** All of them, before or after. */
export const sizeNames: ReadonlySet<string> = new Set(sizeWords.flatMap(({ after, before = [] }) => [...after, ...before]));

/** Names of the thing itself: they tell its rating only of what can be one. "The axle is ninety-five" is nobody's. */
export const thingNames: ReadonlySet<string> = new Set(['axle', 'axles']);

/** Repeats what was measured last at another place. */
export const sameWords: readonly string[] = [
  '[is] [exactly] [the] same [thing] [again|too|there|as well|as that|number|measurement]',
  'ditto',
  'likewise',
  '(too|also|as well)',
  'same (here|again|deal|on that)',
  'matches',
  'no (different|change)',
];
