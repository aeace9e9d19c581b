import { describe, expect, it } from 'vitest';
import type { CardRow } from '#wire';
import { alignment } from '../../../web/drawings/alignment.ts';
import { inches, tyreOf } from '../../../web/drawings/amount.ts';
import { axleFront } from '../../../web/drawings/axle.ts';
import { tighteningOrder } from '../../../web/drawings/sequence.ts';
import type { Picture, Role } from '../../../web/drawings/shapes.ts';

const row = (field: CardRow['field'], value: string, status: CardRow['status'] = 'confirmed', unit?: string): CardRow => ({
  id: field,
  field,
  label: field,
  stage: 'found',
  shown: value,
  value,
  status,
  ...(unit ? { unit } : {}),
});

const boxes = (picture: Picture, role: Role) =>
  picture.shapes.flatMap((shape) => (shape.is === 'box' && shape.role === role ? [shape] : []));
const texts = (picture: Picture) => picture.shapes.flatMap((shape) => (shape.is === 'text' ? [shape.text] : []));

describe('the axle from the front', () => {
  it('is to scale: the outsides of the hub faces are as far apart as was measured, also in millimetres', () => {
    for (const card of [[row('hubFace', '72')], [row('hubFace', '18288/10', 'confirmed', 'mm')]]) {
      const found = boxes(axleFront({ card }), 'found');
      const reach = Math.max(...found.map(({ x, width }) => x + width)) - Math.min(...found.map(({ x }) => x));
      expect(reach).toBeCloseTo(72, 6);
    }
  });

  it('draws no box of less than no width, however odd a reading', () => {
    const all = axleFront({ card: [row('hubFace', '1/200', 'heard'), row('springCentre', '90', 'heard')] }).shapes;
    const sizes = all.flatMap((shape) => (shape.is === 'box' ? [shape.width, shape.height] : []));
    expect(sizes.length).toBeGreaterThan(4);
    expect(Math.min(...sizes)).toBeGreaterThanOrEqual(0);
  });

  it('marks what is supposed and what is not confirmed', () => {
    const picture = axleFront({ card: [row('hubFace', '72', 'heard')] });
    expect(texts(picture)).toContain('hub face 72 ?');
    expect(texts(picture)).toContain('spring centre ?');
    expect(boxes(picture, 'tyre')).toEqual([]);
    expect(picture.title).toContain('unconfirmed');
  });

  it('says what clears between tyre and spring, and that it touches where it does', () => {
    const sizes = [row('hubFace', '73'), row('springWidth', '2'), row('tyreSize', 'ST205/75R15')];
    // (73 - 205/25.4 - 58 - 2) / 2 = 2.46 in
    expect(texts(axleFront({ card: [...sizes, row('springCentre', '58')] }))).toContain('about 2.5 in clear, tyre to spring');
    expect(texts(axleFront({ card: [...sizes, row('springCentre', '66')] }))).toContain('tyre touches spring');
  });

  it('lays the candidate over the found axle', () => {
    const picture = axleFront({ card: [row('hubFace', '72')], candidate: { title: 'rack B2', values: { hubFace: '74' } } });
    const over = boxes(picture, 'candidate');
    expect(Math.max(...over.map(({ x, width }) => x + width)) - Math.min(...over.map(({ x }) => x))).toBeCloseTo(74, 6);
    expect(texts(picture)).toContain('dashed: rack B2');
  });
});

it('reads sizes as the tyre carries them', () => {
  // 205 mm is 8.071 in; 15 + 2 x 205 x 0.75 / 25.4 = 27.106 in
  expect(tyreOf('ST205/75R15')?.width).toBeCloseTo(8.071, 3);
  expect(tyreOf('ST205/75R15')?.diameter).toBeCloseTo(27.106, 3);
  expect(tyreOf('4.80-12')).toBeUndefined();
  expect(inches('579/8', 'in')).toBe(72.375);
  expect(inches('x', 'in')).toBeUndefined();
});

describe('the order of tightening', () => {
  it('marks the next nut and those done, each with its turn', () => {
    const picture = tighteningOrder({ what: 'wheelNuts', positions: 5, order: [1, 3, 5, 2, 4], next: 2 });
    const nuts = picture.shapes.flatMap((shape) => (shape.is === 'circle' ? [shape.role] : []));
    expect(nuts.filter((role) => role === 'next')).toHaveLength(1);
    expect(nuts.filter((role) => role === 'done')).toHaveLength(2);
    expect(picture.title).toContain('position 5');
  });

  it('draws four legs for a spring', () => {
    const picture = tighteningOrder({ what: 'uBolts', positions: 4, order: [1, 3, 2, 4], next: 0 });
    expect(picture.shapes.filter(({ is }) => is === 'circle')).toHaveLength(4);
  });
});

it('points the squaring move at the end that is to move', () => {
  const picture = alignment({
    left: '142 5/8 in',
    right: '142 1/4 in',
    difference: '3/8 in',
    longer: 'left',
    move: { side: 'left', direction: 'forward', distance: '3/8 in' },
  });
  const arrow = picture.shapes.find((shape) => shape.is === 'line' && shape.role === 'move');
  expect(arrow?.is === 'line' && arrow.to[1] < arrow.from[1] && arrow.to[0] < 50).toBe(true);
  expect(texts(picture)).toContain('left end forward 3/8 in');
});
