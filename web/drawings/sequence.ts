// The order of tightening: a wheel from outside, or the four legs of a spring's U-bolts from above. The next one is filled
// and ringed, those done are grey and ticked off, the rest are open; every one carries its turn in the order.
import type { SequenceView } from '#wire';
import type { Picture, Point, Role, Shape } from './shapes.ts';

const size = 60;
const middle = size / 2;

export function tighteningOrder(sequence: SequenceView): Picture {
  const places = sequence.what === 'wheelNuts' ? onWheel(sequence.positions) : onSpring();
  const isBolts = sequence.what === 'uBolts';
  const radius = Math.min(6.5, Math.sin(Math.PI / sequence.positions) * 17 * 0.85);
  const shapes: Shape[] = [
    ...(isBolts ? springFromAbove() : wheel()),
    ...path(sequence, places),
    ...sequence.order.flatMap((position, turn) => nut(places[position - 1], turn, roleOf(turn, sequence.next), radius)),
    ...(sequence.stage ? [{ is: 'text', at: [middle, size + 4], text: sequence.stage, role: 'note', size: 3.8 } as const] : []),
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
    [middle + 13, 15],
    [middle + 13, 45],
    [middle - 13, 45],
    [middle - 13, 15],
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
    { is: 'text', at: [middle, 7], text: 'front', role: 'note', size: 4 },
    { is: 'text', at: [middle + 20, 31.5], text: 'inside', role: 'note', size: 4 },
    { is: 'text', at: [middle - 20, 31.5], text: 'outside', role: 'note', size: 4 },
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

function nut(at: Point | undefined, turn: number, role: Role, radius: number): Shape[] {
  if (!at) return [];
  return [
    { is: 'circle', at, radius: role === 'next' ? radius + 1 : radius, role },
    { is: 'text', at: [at[0], at[1] + radius * 0.42], text: String(turn + 1), role, size: radius * 1.2 },
  ];
}

function roleOf(turn: number, next: number): Role {
  if (turn > next) return 'open';
  return turn === next ? 'next' : 'done';
}

function describe({ what, order, next, stage }: SequenceView): string {
  const names =
    what === 'wheelNuts'
      ? 'Wheel nuts, counted clockwise from the top'
      : 'U-bolt legs, counted clockwise from the front inside leg';
  const now = ` Next: number ${next + 1}, position ${order[next] ?? ''}.`;
  return `${names}, in the order ${order.join(', ')}.${now}${stage ? ` ${stage}.` : ''}`;
}
