// What every schema of a trade table is made of.
import * as z from 'zod';
import fieldTable from '../fields.json' with { type: 'json' };
import unitTable from '../units.json' with { type: 'json' };

/** An exact number written as text: "72", "579/8", "-3/4", "0.45359237". */
export const exact = z.string().regex(/^-?\d+(\.\d+|\/[1-9]\d*)?$/, 'expected an exact number such as "579/8"');
export const word = z.string().min(1);
export const sourced = { source: word };
export const unit = z.enum(unitTable.rows.map(({ id }) => id));
export const field = z.enum(fieldTable.rows.map(({ id }) => id));

export interface Table {
  readonly file: string;
  readonly rows: readonly unknown[];
  readonly row: z.ZodType;
}
