// Values that are words, not numbers: how each choice of a field is spoken and heard.
import type { FieldId } from '#data';

export interface ChoiceWords {
  readonly field: FieldId;
  readonly choice: string;
  /** The first is the one we speak. Templates as in phrase.ts. */
  readonly said: readonly string[];
}

export const choiceWords: readonly ChoiceWords[] = [
  {
    field: 'springType',
    choice: 'slipper',
    said: ['slipper springs', 'slipper spring', 'slippers', 'slipper [type]', '(hook|open) end springs', 'slipper ends'],
  },
  {
    field: 'springType',
    choice: 'doubleEye',
    said: [
      'double eye springs',
      'double eye spring',
      'double (eye|eyed)',
      'double eyes',
      'two eye springs',
      'eyes (on|at|in) both ends',
      'eye at each end',
    ],
  },
  {
    field: 'slung',
    choice: 'underSlung',
    said: [
      'under slung',
      'underslung',
      'axle over [the] (spring|springs)',
      'axle on top of [the] (spring|springs)',
      'spring under axle',
      'springs under [the] axle',
    ],
  },
  {
    field: 'slung',
    choice: 'overSlung',
    said: ['over slung', 'overslung', 'axle under [the] (spring|springs)', 'spring over axle', 'springs over [the] axle'],
  },
  // Ply ratings by load range: tyre dealers' charts; sixteen ply as H from memory.
  {
    field: 'loadRange',
    choice: 'B',
    said: ['load range b', 'lrb', 'l r b', 'load range bravo', 'four ply [rating]', '4 ply [rating]'],
  },
  {
    field: 'loadRange',
    choice: 'C',
    said: ['load range c', 'lrc', 'l r c', 'load range charlie', 'six ply [rating]', '6 ply [rating]'],
  },
  {
    field: 'loadRange',
    choice: 'D',
    said: ['load range d', 'lrd', 'l r d', 'load range delta', 'eight ply [rating]', '8 ply [rating]'],
  },
  {
    field: 'loadRange',
    choice: 'E',
    said: ['load range e', 'lre', 'l r e', 'load range echo', 'ten ply [rating]', '10 ply [rating]'],
  },
  {
    field: 'loadRange',
    choice: 'F',
    said: ['load range f', 'lrf', 'l r f', 'load range foxtrot', 'twelve ply [rating]', '12 ply [rating]'],
  },
  {
    field: 'loadRange',
    choice: 'G',
    said: ['load range g', 'lrg', 'l r g', 'load range golf', 'fourteen ply [rating]', '14 ply [rating]'],
  },
  {
    field: 'loadRange',
    choice: 'H',
    said: ['load range h', 'lrh', 'l r h', 'load range hotel', 'sixteen ply [rating]', '16 ply [rating]'],
  },
  {
    field: 'brakeType',
    choice: 'electric',
    said: ['electric brakes', 'electric brake', 'electric', 'electrics', '[has] magnets'],
  },
  {
    field: 'brakeType',
    choice: 'hydraulic',
    said: ['hydraulic brakes', 'hydraulic brake', 'hydraulic', 'hydraulics', '(surge|disc) brakes', 'surge'],
  },
  {
    field: 'brakeType',
    choice: 'idler',
    said: ['idler', 'idler axle', 'idler hubs', 'no brakes', 'without brakes', 'not braked', 'unbraked', 'no brake', 'non brake'],
  },
  { field: 'beamShape', choice: 'round', said: ['round (tube|beam|axle|tubing)', 'round', 'it is round'] },
  { field: 'beamShape', choice: 'square', said: ['square (tube|beam|axle)', 'square', 'box (tube|beam)', 'square tubing'] },
  {
    field: 'spindleLube',
    choice: 'greasable',
    said: [
      'greasable spindle',
      'greasable [spindles]',
      'grease able',
      'greaseable',
      'greaseable (spindle|spindles)',
      '(has|with) [a] (zerk|zerks|grease fitting|grease fittings|grease zerk)',
      '(zerk|zerks) in the (end|spindle)',
    ],
  },
  {
    field: 'spindleLube',
    choice: 'plain',
    said: [
      'plain spindle',
      'plain spindles',
      'no (zerk|zerks|grease fitting|grease fittings)',
      'not greasable',
      'non greasable',
      'solid (spindle|spindles)',
    ],
  },
  {
    field: 'nutLock',
    choice: 'cotter',
    said: [
      'cotter pin',
      'cotter pins',
      'castle nut with a cotter',
      'castle nut with [a] cotter pin',
      '[a] castle nut [and] [a] cotter [pin]',
      '(castle|castellated|slotted) (nut|nuts)',
      'cotter',
      'cotters',
    ],
  },
  {
    field: 'nutLock',
    choice: 'tangKeeper',
    said: ['tang keeper', 'tang (washer|lock)', 'bent tang', '(bend|fold) over tang', 'keeper with a tang', 'tang'],
  },
  {
    field: 'nutLock',
    choice: 'keyedWasher',
    said: ['keyed washer', '(key|keyway|d) washer', 'keyed [spindle] washer', 'keyed lock washer'],
  },
  { field: 'wheelType', choice: 'steel', said: ['steel wheels', 'steel (wheel|rims|rim)', 'steelies'] },
  {
    field: 'wheelType',
    choice: 'aluminium',
    said: ['aluminium wheels', '(aluminium|aluminum|alloy) (wheels|wheel|rims|rim)', 'alloys'],
  },
  { field: 'axleCount', choice: 'single', said: ['single axle', 'single axle [trailer]', 'one axle [trailer]', 'single'] },
  {
    field: 'axleCount',
    choice: 'tandem',
    said: ['tandem axle', 'tandem [axles] [trailer]', '(two|dual|twin|double) (axles|axle) [trailer]', 'tandems'],
  },
  { field: 'axleCount', choice: 'triple', said: ['triple axle', '(triple|tri|three) (axle|axles) [trailer]', 'triple'] },
  {
    field: 'axleInWork',
    choice: 'front',
    said: ['front axle [is] in work', '(working|work) on the front axle', 'front axle only', 'only the front axle'],
  },
  {
    field: 'axleInWork',
    choice: 'middle',
    said: ['middle axle in work', '(working|work) on the middle axle', 'middle axle only', 'only the middle axle'],
  },
  {
    field: 'axleInWork',
    choice: 'rear',
    said: ['rear axle [is] in work', '(working|work) on the rear axle', 'rear axle only', 'only the rear axle'],
  },
  {
    field: 'axleInWork',
    choice: 'all',
    said: [
      'all axles in work',
      '(working|work) on (all|both) [the] axles',
      'both axles',
      'all [the] axles',
      'both axles in work',
    ],
  },
];

/** Ordinary words that choose only where nothing else is said: "turn it round", "square it up". */
export const looseChoices: ReadonlySet<string> = new Set(['round', 'square']);
