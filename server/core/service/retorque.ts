// When a joint is to be checked again. Reminders are data for the log; nothing here sets them.
import { type FieldId, type RetorqueRow, retorque } from '#data';
import { Fraction } from '../quantity/index.ts';
import { addMonths } from './months.ts';

export interface RetorqueReminder {
  readonly id: string;
  readonly text: string;
  /** Odometer reading when it is due, where the odometer is known; else miles from now. */
  readonly dueMiles?: string;
  readonly dueAt?: string;
  readonly row: string;
  readonly source: string;
}

/** Reminders of one joint, from the odometer (miles) and the moment (ISO) it was torqued. */
export function retorqueReminders(field: FieldId, doneAt: string, odometer?: string): readonly RetorqueReminder[] {
  return retorque.filter(({ of }) => of === field).flatMap((row) => [...byMiles(row, odometer), ...byDate(row, doneAt)]);
}

function byMiles(row: RetorqueRow, odometer: string | undefined): readonly RetorqueReminder[] {
  return row.miles.map((miles) => ({
    id: `${row.id}.${miles}mi`,
    text: `${row.text} after ${miles} miles`,
    dueMiles: new Fraction(odometer ?? 0).add(miles).toFraction(),
    row: row.id,
    source: row.source,
  }));
}

function byDate(row: RetorqueRow, doneAt: string): readonly RetorqueReminder[] {
  if (row.months === undefined) return [];
  const dueAt = addMonths(doneAt, Number(row.months));
  return [{ id: `${row.id}.${row.months}mo`, text: `${row.text}, ${row.months} months`, dueAt, row: row.id, source: row.source }];
}
