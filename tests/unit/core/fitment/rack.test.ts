import { expect, test } from 'vitest';
import {
  isFault,
  judge,
  making,
  nearest,
  needsOf,
  rank,
  readStockRow,
  sensitivity,
  stockColumns,
  verdictOf,
  writeStockRow,
} from '#core';
import { demoStock } from '#data';
import { axle, reading, readings, rightAxle, wholeTrailer } from '../../../support/readings.ts';

const needs = needsOf(readings(wholeTrailer));

test('the ranking says of every axle what the verdict says, and puts the best first', () => {
  const { best, counts } = rank(needs, demoStock, demoStock.length);
  const order = ['fits', 'fitsWithWork', 'cannotSayYet', 'doesNotFit'];
  expect(best.map(({ result }) => result)).toEqual(
    best.map(({ result }) => result).toSorted((a, b) => order.indexOf(a) - order.indexOf(b)),
  );
  for (const { candidate, result } of best) expect(result).toBe(judge(needs, candidate).result);
  for (const result of order) expect(counts[result as 'fits']).toBe(best.filter((one) => one.result === result).length);
  expect(best[0]?.candidate.id).toBe('TB-3502');
});

test('the invented rack holds the right axle, near misses and every way of not fitting', () => {
  const { tyreSize: _untold, ...told } = wholeTrailer;
  const { counts } = rank(needsOf(readings(told)), demoStock);
  expect(Object.values(counts).every((count) => count > 0)).toBe(true);
  expect(demoStock.every(({ invented }) => invented)).toBe(true);
});

test('nearest: an axle with the wrong pattern can be made to fit, one with no brakes cannot', () => {
  const near = nearest(needs, demoStock).map(({ verdict }) => verdict.candidate.id);
  expect(near).toContain('TB-3511');
  expect(near).not.toContain('TB-3501');
  const wrong = demoStock.find(({ id }) => id === 'TB-3511');
  expect(wrong && making(judge(needs, wrong)).takes.map(({ remedy }) => remedy)).toContain('changeHubs');
});

test('sensitivity names the one measurement that decides, and only that', () => {
  const edge = axle({ ...rightAxle.values, springCentre: '465/8' });
  const touchy = sensitivity(readings(wholeTrailer), edge);
  expect(touchy.map((one) => [one.reading.field, one.ifIt, one.would])).toEqual([['springCentre', '927/16', 'fitsWithWork']]);
  expect(sensitivity(readings(wholeTrailer), rightAxle)).toEqual([]);
});

test('sensitivity moves a millimetre reading by a mark of the tape, not by a millimetre fraction', () => {
  const metric = readings({ ...wholeTrailer, springCentre: ['1473.2', 'mm'] });
  const [touchy] = sensitivity(metric, axle({ ...rightAxle.values, springCentre: '465/8' }));
  expect(touchy?.ifIt).toBe('117729/80');
});

test('a stock row in any usual writing becomes exact values', () => {
  const row = readStockRow({
    id: 'X1',
    title: 'spare',
    place: '',
    quantity: '',
    hubFace: '72 3/8',
    springCentre: '1473.2 mm',
    capacity: '3,500 lb',
    boltPattern: '5x9/2',
    drop: '',
    brakeType: 'idler',
  });
  expect(row).toEqual({
    id: 'X1',
    title: 'spare',
    quantity: 1,
    invented: false,
    values: { hubFace: '579/8', springCentre: '58', capacity: '3500', boltPattern: '5x9/2', brakeType: 'idler' },
  });
  if (isFault(row)) throw new Error('a good row');
  expect(readStockRow(writeStockRow(row))).toEqual(row);
  expect(stockColumns([row])).toEqual([
    'id',
    'title',
    'place',
    'quantity',
    'hubFace',
    'springCentre',
    'boltPattern',
    'capacity',
    'brakeType',
  ]);
});

test.each([
  [{ id: ' ' }, 'id', 'noId'],
  [{ title: '' }, 'title', 'noTitle'],
  [{ quantity: '-1' }, 'quantity', 'noQuantity'],
  [{ colour: 'red' }, 'colour', 'unknownColumn'],
  [{ hubFace: 'wide' }, 'hubFace', 'notANumber'],
  [{ hubFace: '72 3.5' }, 'hubFace', 'notANumber'],
  [{ hubFace: '72 lb' }, 'hubFace', 'notANumber'],
  [{ hubFace: '723' }, 'hubFace', 'outOfBand'],
  [{ boltPattern: 'five' }, 'boltPattern', 'notAPattern'],
  [{ brakeType: 'none' }, 'brakeType', 'notAChoice'],
])('a bad stock row names its column: %o', (cells, column, code) => {
  const faults = readStockRow({ id: 'X', title: 'an axle', quantity: '1', ...cells });
  expect(faults).toEqual([{ column, code, value: expect.any(String), expected: expect.any(String) }]);
});

test('every fault of a row is named', () => {
  expect(readStockRow({ id: '', title: 'a', hubFace: 'wide', drop: 'some' })).toHaveLength(3);
});

test('the invented rack is itself a list that can be brought in', () => {
  for (const { invented: _demo, ...row } of demoStock) {
    expect(readStockRow(writeStockRow({ ...row, invented: false }))).toMatchObject({ id: row.id, quantity: row.quantity });
  }
});

test('a shop that tightens a tolerance is obeyed', () => {
  const strict = needsOf(readings(wholeTrailer));
  expect(judge(strict, axle({ ...rightAxle.values, springCentre: '465/8' })).result).toBe('fits');
  expect(verdictOf([...readings(wholeTrailer), reading('springCentre', '57')], rightAxle).result).toBe('fitsWithWork');
});
