// How sure, and to which side. Kept beside the value, never folded into it. Templates as in phrase.ts.
import type { Hedge } from '../types.ts';

/** Said before the number; `none` is said and means the number itself. */
export const hedgesBefore: readonly (readonly [Hedge | 'none', readonly string[]])[] = [
  [
    'under',
    [
      '(just|slightly|barely) (under|shy of|short of|below|less than)',
      '[just] (a|one) (hair|touch|tad|shade|tick|tick mark|smidge|smidgen|skosh|whisker|bit|little|little bit|scant) (under|shy of|short of|below|less than|shorter than)',
      '[a] little (under|less than|short of|shy of)',
      '(shy of|short of|almost|nearly|not quite|a scant|scant|a light|a weak|a shy|light|just about under|under|below|next to nearly)',
      '(less|lower|smaller|fewer|shorter|narrower) than',
    ],
  ],
  [
    'over',
    [
      '(just|slightly|barely) (over|past|above|more than)',
      '[just] (a|one) (hair|touch|tad|shade|tick|smidge|smidgen|skosh|whisker|bit|little|little bit) (over|past|above|more than|better than|longer than)',
      '[a] little (over|more than|past|better than)',
      '(over|above|past|exceeding|upwards of|a strong|a good|a fat|a heavy)',
      '(more|greater|bigger|larger|higher|longer|wider|better) than',
    ],
  ],
  [
    'about',
    [
      '[right] (around|about|near)',
      '~',
      '(roughly|approximately|approx|circa|close to|close on|near enough|ballpark|somewhere around|somewhere about|in the neighborhood of|in the neighbourhood of|pretty near|pretty close to|more or less|right at about|just about|maybe|call it about|call it around|near about|right near|or about|say about|give or take)',
    ],
  ],
  [
    'atLeast',
    [
      '(at least|minimum of|a minimum of|min of|minimum|min|not under|at a minimum)',
      '(no|not) (less|lower|smaller|fewer|shorter) than',
      '(more|greater|bigger|larger|higher) [than] or equal (to|than)',
      '(equal to or more|equal to or greater|equal to or higher) than',
      'at least or equal to',
    ],
  ],
  [
    'atMost',
    [
      '(at most|maximum of|a maximum of|max of|up to|not over|at the most)',
      '(no|not) (more|greater|bigger|larger|higher|longer|wider) than',
      '(less|lower|smaller|fewer) [than] or equal (to|than)',
      '(equal to or less|equal to or lower|equal to or smaller) than',
      'at most or equal to',
    ],
  ],
  [
    'none',
    [
      '(exactly|precisely|right at|right on|dead on|dead nuts|an even|a flat|a solid|bang on|spot on|call it|a full|nominal|nominally)',
    ],
  ],
];

/** Said after the number and its unit. */
export const hedgesAfter: readonly (readonly [Hedge | 'none', readonly string[]])[] = [
  [
    'over',
    [
      '(strong|heavy|and change|and a bit|and some|and a hair|plus a hair|fat|plus a bit|and a touch|plus a touch|plus a little|and a little|full)',
    ],
  ],
  [
    'under',
    [
      '(light|shy|scant|weak|minus a hair|less a hair|minus a touch|less a touch|minus a bit|a hair shy|a hair light|a hair under|just shy|a touch shy|a touch light)',
    ],
  ],
  ['over', ['(a hair over|a touch over|a hair strong|a touch strong|a hair heavy|just over|and then some)']],
  [
    'about',
    ['(ish|or so|or thereabouts|give or take|more or less|approximately|or about|roughly|or about that|thereabouts|near enough)'],
  ],
  [
    'atLeast',
    ['or (better|more|over|above|higher|greater|up)', 'and (more|up)', '(minimum|min|at least|at a minimum|at the least)'],
  ],
  ['atMost', ['or (less|under|below|lower|smaller)', '(maximum|max|at most|tops|at the most)']],
  [
    'none',
    [
      '(even|flat|exactly|exact|on the nose|on the button|on the money|dead on|dead nuts|on the dot|right on|spot on|on the mark|nominal|to the mark)',
    ],
  ],
];

/** Between two ends of a range. */
export const rangeWords: readonly string[] = ['to', 'through', 'thru', 'until', '-', '~'];

export const toleranceWords: readonly string[] = [
  '(plus or minus|plus minus|give or take|within|plus and minus|± |+ / -|+ or -|more or less)',
];
