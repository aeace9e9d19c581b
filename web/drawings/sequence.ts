// The order of tightening: a wheel from outside, or the four legs of a spring's U-bolts from above. The next one is filled
// and ringed, those done are grey, the rest are open; every one carries its turn in the order.
import type { SequenceView } from '#wire';
import type { Picture, Point, Role, Shape } from './shapes.ts';

const size = 60;
const middle = size / 2;

export function tighteningOrder(sequence: SequenceView): Picture {
  const places = sequence.what === 'wheelNuts' ? onWheel(sequence.positions) : onSpring();
  const isBolts = sequence.what === 'uBolts';
  const shapes: Shape[] = [
    ...(isBolts ? springFromAbove() : wheel()),
    ...path(sequence, places),
    ...sequence.order.flatMap((position, turn) => nut(places[position - 1], turn, roleOf(turn, sequence.next))),
    ...(sequence.stage ? [{ is: 'text', at: [middle, size + 4], text: sequence.stage, role: 'note', size: 4 } as const] : []),
  ];
  return { title: describe(sequence), width: size, height: size + (sequence.stage ? 7 : 0), shapes };
}

function onWheel(count: number): readonly Point[] {
  return Array.from({ length: count }, (_, index): Point => {
    const angle = (2 * Math.PI * index) / count;
    return [middle + 17 * Math.sin(angle), middle - 17 * Math.cos(angle)];
  });
}

/** Clockwise from the front inside leg; the front of the trailer is up. */
function onSpring(): readonly Point[] {
  return [
    [middle + 11, 16],
    [middle + 11, 44],
    [middle - 11, 44],
    [middle - 11, 16],
  ];
}

function wheel(): Shape[] {
  return [
    { is: 'circle', at: [middle, middle], radius: 28, role: 'tyre' },
    { is: 'circle', at: [middle, middle], radius: 7, role: 'steel' },
  ];
}

function springFromAbove(): Shape[] {
  return [
    { is: 'box', x: middle - 5, y: 1, width: 10, height: 58, role: 'steel' },
    { is: 'box', x: 2, y: middle - 6, width: 56, height: 12, role: 'tyre' },
    { is: 'text', at: [middle, 6], text: 'front', role: 'note', size: 4 },
  ];
}

/** A thin line from each nut to the one after it: the star that the hand follows. */
function path({ order }: SequenceView, places: readonly Point[]): Shape[] {
  return order.slice(1).flatMap((position, index) => {
    const from = places[(order[index] ?? 0) - 1];
    const to = places[position - 1];
    return from && to ? [{ is: 'line', from, to, role: 'supposed' } as const] : [];
  });
}

function nut(at: Point | undefined, turn: number, role: Role): Shape[] {
  if (!at) return [];
  return [
    { is: 'circle', at, radius: role === 'next' ? 6 : 5, role },
    { is: 'text', at: [at[0], at[1] + 2], text: String(turn + 1), role, size: 6 },
  ];
}

function roleOf(turn: number, next: number | undefined): Role {
  if (next === undefined || turn > next) return 'found';
  return turn === next ? 'next' : 'done';
}

function describe({ what, order, next, stage }: SequenceView): string {
  const names =
    what === 'wheelNuts'
      ? 'Wheel nuts, counted clockwise from the top'
      : 'U-bolt legs, counted clockwise from the front inside leg';
  const now = next === undefined ? '' : ` Next: turn ${next + 1}, position ${order[next] ?? ''}.`;
  return `${names}, in the order ${order.join(', ')}.${now}${stage ? ` ${stage}.` : ''}`;
}
