// The bill of parts on the sheet: each line with its why, its quantity and the measurements behind it.
import { expect, test } from 'vitest';
import { sheet, sheetRows, sheetText } from '#dialogue';
import { bay, jobOf, noted } from '../../support/ask.ts';

const stack = { beamDiameter: '19/8', springPack: '3/2', tiePlateThickness: '3/8', uBoltThread: '1/2-20' } as const;
const job = jobOf(stack, { kind: 'axleReplacement' });

test('a line tells why, how many and which measurements it rests on', () => {
  const [bolts] = sheet(job, bay).bill;
  expect(bolts).toMatchObject({ part: 'U-bolts', quantity: '4', why: 'never used twice', sure: true });
  // 2 3/8 + 3/16 + 1 1/2 + 3/8 + 1/2 + 1/4 = 5 3/16, the next quarter inch 5 1/4.
  expect(bolts?.what).toMatch(/1\/2-20; 2 3\/8 in inside, leg 5 3\/16 in, order 5 1\/4 in/);
  expect(bolts?.rests).toEqual([
    'beam: 2 3/8 in',
    'spring pack: 1 1/2 in',
    'tie plate thickness: 3/8 in',
    'U-bolt thread: 1/2-20',
  ]);
});

test('the beam of the axle chosen sets the U-bolts, and is named as read off its card', () => {
  const chosen = { candidate: { stock: 'X', title: 'thick', values: { beamDiameter: '3' } } };
  const bolts = sheet({ ...job, ...chosen }, bay).bill.find(({ part }) => part === 'U-bolts');
  expect(bolts?.what).toMatch(/3 in inside/);
  expect(bolts?.rests.at(-1)).toBe("beam: 3 in (the axle's card)");
});

test('what nobody confirmed, or nobody told, is not sure', () => {
  const heard = jobOf([noted('uBoltThread', '1/2-20', { status: 'heard' })], { kind: 'axleReplacement' });
  const bill = sheet(heard, bay).bill;
  expect(bill.find(({ part }) => part === 'U-bolt nuts and washers')?.sure).toBe(false);
  expect(bill.find(({ part }) => part === 'U-bolts')?.what).toMatch(/size not told: beam, spring pack/);
});

test('every line of it stands in the text and in the rows; a job that only looks has none', () => {
  const whole = sheet(job, bay);
  const rows = sheetRows(whole).filter(([part]) => part === 'bill');
  expect(rows).toHaveLength(whole.bill.length);
  for (const { part } of whole.bill) expect(sheetText(whole)).toContain(part);
  expect(sheet(jobOf(stack, { kind: 'inspection' }), bay).bill).toEqual([]);
  expect(sheet(jobOf({}, { kind: 'axleReplacement' }), bay).bill).toEqual([]);
});
