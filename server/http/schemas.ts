// What the server takes over the wire, held against wire.ts by the compiler.
import * as z from 'zod';
import { fields } from '#data';
import type { Shop } from '#dialogue';
import type { DeskAction, TurnRequest } from '#wire';

const line = (max: number) =>
  z
    .string()
    .max(max)
    .refine((text) => !text.includes('\u0000'), 'has a NUL character');
const id = z
  .string()
  .min(8)
  .max(64)
  .regex(/^[\w-]+$/, 'letters, digits and - only');
const jobId = z.string().regex(/^[1-9]\d{0,8}$/, 'a job number');

export const turnRequest = z.strictObject({
  id,
  job: jobId.nullable(),
  text: line(500).refine((text) => text.trim().length > 0, 'nothing was said'),
  heardBy: z.enum(['typed', 'builtIn', 'browser']),
  confidence: z.number().min(0).max(1).optional(),
  alternatives: z.array(line(500)).max(8).optional(),
  heardAt: z.iso.datetime({ offset: true }),
  waitedMs: z.int().min(0).optional(),
}) satisfies z.ZodType<Loose<TurnRequest>>;

export const deskAction = z.strictObject({
  id,
  version: z.int().min(0),
  action: z.enum(['correct', 'confirm', 'strike', 'annotate', 'closePoint']),
  target: line(100),
  value: line(200).optional(),
  reason: line(500),
}) satisfies z.ZodType<Loose<DeskAction>>;

const name = line(40)
  .refine((text) => /[\p{L}\p{N}]/u.test(text), 'needs a letter or a digit')
  .transform((text) => text.trim());

export const joinRequest = z.strictObject({ code: line(64), name });
const role = z.enum(['desk', 'bay', 'reader']);
export const deviceChange = z
  .strictObject({ name: name.optional(), role: role.optional() })
  .refine((change) => Object.keys(change).length > 0, 'a name or a role');
export const invitationRequest = z.strictObject({ role });

export const shopSettings = z.strictObject({
  name: line(80).min(1),
  lengthUnit: z.enum(['in', 'mm']),
  spelling: z.enum(['british', 'american']),
  sides: z.strictObject({ left: line(30).min(1), right: line(30).min(1) }),
}) satisfies z.ZodType<Shop>;

const day = z.iso.date();

export const jobQuery = z.object({
  q: line(200).optional(),
  field: z.enum(fields.map(({ id }) => id)).optional(),
  value: line(60).optional(),
  status: z.enum(['open', 'paused', 'closed']).optional(),
  from: day.optional(),
  to: day.optional(),
  open: z
    .enum(['0', '1'])
    .transform((text) => text === '1')
    .optional(),
  limit: z.coerce.number().int().min(1).max(500).optional(),
});

export const after = z.object({ after: z.coerce.number().int().min(0).optional() });

export const rackQuery = z.object({ most: z.coerce.number().int().min(1).max(50).optional() });

/** zod's optional keys may hold undefined; the wire's may not. */
type Loose<T> = { [K in keyof T]: undefined extends T[K] ? T[K] | undefined : T[K] };

/** Drops keys that hold undefined, so that the result is exactly the wire's type. */
export function exact<T extends object>(loose: T): Exact<T> {
  return Object.fromEntries(Object.entries(loose).filter(([, value]) => value !== undefined)) as Exact<T>;
}

type Exact<T> = { [K in keyof T]: Exclude<T[K], undefined> };
