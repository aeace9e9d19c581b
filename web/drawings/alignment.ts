// The axle from above with the coupler ahead: the two diagonals, how far out of square it is (drawn larger than it is), and the
// move that brings it square.
import type { AlignmentView } from '#wire';
import type { Picture, Point, Shape } from './shapes.ts';

const coupler: Point = [50, 6];
const half = 34;
/** Drawn much larger than any real error, so that the way it leans is seen at once. */
const lean = 6;

export function alignment(view: AlignmentView): Picture {
  const back = view.longer === 'left' ? lean : view.longer === 'right' ? -lean : 0;
  const left: Point = [50 - half, 70 + back];
  const right: Point = [50 + half, 70 - back];
  const shapes: Shape[] = [
    { is: 'line', from: [50 - half, 70], to: [50 + half, 70], role: 'supposed' },
    { is: 'line', from: left, to: right, role: 'found' },
    ...wheel(left),
    ...wheel(right),
    { is: 'circle', at: coupler, radius: 2.5, role: 'steel' },
    { is: 'line', from: coupler, to: left, role: 'found' },
    { is: 'line', from: coupler, to: right, role: 'found' },
    text([32, 30], view.left ?? '?', 'end'),
    text([68, 30], view.right ?? '?', 'start'),
    ...move(view, left, right),
  ];
  return { title: describe(view), width: 100, height: 96, shapes };
}

function wheel([x, y]: Point): Shape[] {
  return [{ is: 'box', x: x - 3, y: y - 8, width: 6, height: 16, radius: 2, role: 'tyre' }];
}

function text(at: Point, words: string, anchor?: 'start' | 'end'): Shape {
  return { is: 'text', at, text: words, role: 'note', size: 8, ...(anchor ? { anchor } : {}) };
}

function move({ move: wanted, difference }: AlignmentView, left: Point, right: Point): Shape[] {
  if (!wanted) return [text([50, 92], difference === undefined ? 'both diagonals are needed' : `difference ${difference}`)];
  const outer = wanted.side === 'left' ? -10 : 10;
  const [x, y] = wanted.side === 'left' ? left : right;
  const way = wanted.direction === 'forward' ? -24 : 24;
  return [
    { is: 'line', from: [x + outer, y - way / 2], to: [x + outer, y + way / 2], role: 'move', arrows: 'end' },
    { is: 'text', at: [50, 92], text: `${wanted.side} end ${wanted.direction} ${wanted.distance}`, role: 'move', size: 9 },
  ];
}

function describe({ left, right, difference, move: wanted }: AlignmentView): string {
  const read = `Coupler to spindle: left ${left ?? 'not measured'}, right ${right ?? 'not measured'}.`;
  const off = difference ? ` Difference ${difference}.` : '';
  return wanted ? `${read}${off} Move the ${wanted.side} end ${wanted.direction} by ${wanted.distance}.` : `${read}${off}`;
}
