// The axle from the front, to scale, from what has been measured so far. What is not known yet is drawn where it would
// usually be, dashed, and marked "?". The candidate is laid over the found axle.
import type { CardRow, JobView } from '#wire';
import { inches, tyreOf } from './amount.ts';
import type { Picture, Point, Shape } from './shapes.ts';

interface Sizes {
  readonly hubFace?: number;
  readonly springCentre?: number;
  readonly beam?: number;
  readonly drop?: number;
  readonly springWidth?: number;
  readonly frame?: number;
  readonly tyre?: { readonly width: number; readonly diameter: number };
}

type Values = (field: CardRow['field']) => { readonly value: string; readonly unit?: string | undefined } | undefined;

function sizesOf(of: Values): Sizes {
  const length = (field: CardRow['field']) => {
    const row = of(field);
    return row && inches(row.value, row.unit);
  };
  const tyreSize = of('tyreSize');
  return known({
    hubFace: length('hubFace'),
    springCentre: length('springCentre'),
    beam: length('beamDiameter'),
    drop: length('drop'),
    springWidth: length('springWidth'),
    frame: length('frameWidth'),
    tyre: tyreSize && tyreOf(tyreSize.value),
  });
}

function known<T extends object>(all: T): { [K in keyof T]?: Exclude<T[K], undefined> } {
  return Object.fromEntries(Object.entries(all).filter(([, value]) => value !== undefined)) as {
    [K in keyof T]?: Exclude<T[K], undefined>;
  };
}

/** Usual proportions, used for drawing alone. */
const usual = { hubFace: 72, inset: 14, beam: 2.375, springWidth: 1.75, tyre: { width: 8, diameter: 27 } } as const;

/** Space around the axle for words, in inches of the drawing. */
const margin = 4;

export function axleFront(view: Pick<JobView, 'card' | 'candidate'>): Picture {
  const latest = (field: CardRow['field']) => view.card.filter((row) => row.field === field).at(-1);
  const found = sizesOf(latest);
  const candidate = view.candidate && sizesOf((field) => asValue(view.candidate?.values[field]));
  const hubFace = found.hubFace ?? candidate?.hubFace ?? usual.hubFace;
  const tyre = found.tyre ?? usual.tyre;
  const widest = Math.max(hubFace, candidate?.hubFace ?? 0);
  const width = widest + tyre.width + 2 * margin;
  const middle = width / 2;
  const axis = tyre.diameter / 2 + 6;
  const shapes = [
    ...ground(width, axis + tyre.diameter / 2),
    ...frame(found, middle, axis),
    ...tyres(found, middle, axis, hubFace),
    ...axle(found, middle, axis, 'found'),
    ...(candidate ? axle(candidate, middle, axis, 'candidate') : []),
    ...clearance(found, middle, axis),
    ...dimensions(view, found, candidate, middle, axis + tyre.diameter / 2),
  ];
  return { title: describe(view), width, height: axis + tyre.diameter / 2 + (candidate ? 22 : 16), shapes };
}

function asValue(value: string | undefined): { value: string } | undefined {
  return value === undefined ? undefined : { value };
}

const both = (make: (side: -1 | 1) => Shape[]): Shape[] => [...make(-1), ...make(1)];

function ground(width: number, y: number): Shape[] {
  return [{ is: 'line', from: [0, y], to: [width, y], role: 'ground' }];
}

function frame({ frame: wide }: Sizes, middle: number, axis: number): Shape[] {
  if (wide === undefined) return [];
  return both((side) => [
    { is: 'box', x: middle + (side * wide) / 2 - (side > 0 ? 2 : 0), y: axis - 11, width: 2, height: 4, role: 'frame' },
  ]);
}

function tyres(found: Sizes, middle: number, axis: number, hubFace: number): Shape[] {
  const { width, diameter } = found.tyre ?? usual.tyre;
  const role = found.tyre && found.hubFace !== undefined ? 'tyre' : 'supposed';
  return both((side) => [
    {
      is: 'box',
      x: middle + (side * hubFace) / 2 - width / 2,
      y: axis - diameter / 2,
      width,
      height: diameter,
      radius: width / 4,
      role,
    },
  ]);
}

function axle(sizes: Sizes, middle: number, axis: number, role: 'found' | 'candidate'): Shape[] {
  const hubFace = sizes.hubFace ?? usual.hubFace;
  const springCentre = sizes.springCentre ?? hubFace - usual.inset;
  const beam = sizes.beam ?? usual.beam;
  const spring = sizes.springWidth ?? usual.springWidth;
  const low = axis + (sizes.drop ?? 0);
  const beamRole = sizes.hubFace === undefined ? 'supposed' : role;
  const springRole = sizes.springCentre === undefined ? 'supposed' : role;
  return [
    { is: 'box', x: middle - hubFace / 2 + 1, y: low - beam / 2, width: Math.max(0, hubFace - 2), height: beam, role: beamRole },
    ...both((side): Shape[] => [
      { is: 'box', x: middle + (side * hubFace) / 2 - (side > 0 ? 1.2 : 0), y: axis - 4, width: 1.2, height: 8, role: beamRole },
      {
        is: 'box',
        x: middle + (side * springCentre) / 2 - spring / 2,
        y: low - beam / 2 - 3,
        width: spring,
        height: 3,
        role: springRole,
      },
      {
        is: 'line',
        from: [middle + (side * springCentre) / 2, low - 7],
        to: [middle + (side * springCentre) / 2, low + 5],
        role: springRole,
      },
    ]),
  ];
}

/** From the inside of the tyre to the side of the spring, where all four sizes are known. */
export function tyreToSpring(sizes: Sizes): number | undefined {
  const { hubFace, springCentre, springWidth, tyre } = sizes;
  if (hubFace === undefined || springCentre === undefined || springWidth === undefined || tyre === undefined) return undefined;
  return (hubFace - tyre.width - springCentre - springWidth) / 2;
}

function clearance(sizes: Sizes, middle: number, axis: number): Shape[] {
  const gap = tyreToSpring(sizes);
  if (gap === undefined || sizes.springCentre === undefined || sizes.springWidth === undefined) return [];
  const from = (sizes.springCentre + sizes.springWidth) / 2;
  const role = gap < 1 ? 'tight' : 'clear';
  const top = axis - (sizes.tyre?.diameter ?? usual.tyre.diameter) / 2 - 1;
  const text = gap <= 0 ? 'tyre touches spring' : `about ${gap.toFixed(1)} in clear, tyre to spring`;
  const lines = both((side): Shape[] => [
    { is: 'line', from: [middle + side * from, top + 1], to: [middle + side * from, axis - 3], role },
    { is: 'line', from: [middle + side * (from + gap), top + 1], to: [middle + side * (from + gap), axis - 3], role },
  ]);
  return [...lines, { is: 'text', at: [middle, top + 1], text, role, size: 5 }];
}

function dimensions(
  view: Pick<JobView, 'card' | 'candidate'>,
  found: Sizes,
  candidate: Sizes | undefined,
  middle: number,
  bottom: number,
): Shape[] {
  const row = (field: CardRow['field']) => view.card.filter((each) => each.field === field).at(-1);
  const words = (field: CardRow['field'], name: string) => {
    const known = row(field);
    return known ? `${name} ${known.shown}${known.status === 'heard' ? ' ?' : ''}` : `${name} ?`;
  };
  const hubFace = found.hubFace ?? usual.hubFace;
  return [
    ...dimension(
      middle,
      found.springCentre ?? hubFace - usual.inset,
      bottom + 4.5,
      words('springCentre', 'spring centre'),
      found.springCentre === undefined ? 'supposed' : 'found',
    ),
    ...dimension(middle, hubFace, bottom + 12, words('hubFace', 'hub face'), found.hubFace === undefined ? 'supposed' : 'found'),
    ...(candidate && view.candidate ? [note([middle, bottom + 21], `dashed: ${view.candidate.title}`)] : []),
  ];
}

function dimension(middle: number, length: number, y: number, text: string, role: 'found' | 'supposed'): Shape[] {
  const [left, right]: [Point, Point] = [
    [middle - length / 2, y],
    [middle + length / 2, y],
  ];
  return [
    { is: 'line', from: left, to: right, role, arrows: 'both' },
    { is: 'text', at: [middle, y + 2], text, role: 'note', size: 6 },
  ];
}

function note(at: Point, text: string): Shape {
  return { is: 'text', at, text, role: 'candidate', size: 5 };
}

function describe({ card, candidate }: Pick<JobView, 'card' | 'candidate'>): string {
  const known = card.filter(({ field }) => ['hubFace', 'springCentre', 'beamDiameter', 'tyreSize', 'frameWidth'].includes(field));
  const words = known.map(({ label, shown, status }) => `${label} ${shown}${status === 'heard' ? ', unconfirmed' : ''}`);
  const over = candidate ? ` Laid over it: ${candidate.title}.` : '';
  return words.length === 0
    ? `The axle from the front. Nothing measured yet.${over}`
    : `The axle from the front: ${words.join('; ')}.${over}`;
}
