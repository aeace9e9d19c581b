// A shop's own procedures: JSON files in a folder, checked whole before any of them is used.
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { type Practice, plainPractice, type ShopProcedure, strayNames, withShopProcedures } from '#core';
import { checkProcedures, shopProcedure } from '#data/schema';

/** One fault of a shop's file, fit to show: file, step and what is wrong. */
export class ProcedureFault extends Error {
  readonly whatToDo = 'Mend the file or move it away, then start again.';
}

/** `procedures/` beside the database unless AXLEHAND_PROCEDURES names another folder. */
export const procedureFolder = (database: string): string =>
  process.env.AXLEHAND_PROCEDURES || join(dirname(database), 'procedures');

/** What the shop's folder makes of the work; undefined where there is none. @throws ProcedureFault at the first fault */
export function readPractice(folder: string): Practice | undefined {
  if (!existsSync(folder)) {
    if (process.env.AXLEHAND_PROCEDURES) throw new ProcedureFault(`there is no folder ${folder} (AXLEHAND_PROCEDURES).`);
    return undefined;
  }
  const files = readdirSync(folder).filter((name) => name.endsWith('.json'));
  if (files.length === 0) return undefined;
  const own = files.sort().map((name) => ({ file: join(folder, name), shop: readOne(join(folder, name)) }));
  const practice = withShopProcedures(
    plainPractice,
    own.map(({ shop }) => shop),
  );
  refuseFirst(own, practice);
  return practice;
}

interface Own {
  readonly file: string;
  readonly shop: ShopProcedure;
}

function refuseFirst(own: readonly Own[], { procedures, kinds }: Practice): void {
  const fileOf = (id: string): string => own.find(({ shop }) => shop.id === id)?.file ?? id;
  const stray = own.flatMap(({ file, shop }) => strayNames(plainPractice, shop).map((fault) => ({ file, ...fault })));
  const [first] = [...stray, ...checkProcedures(procedures, kinds, fileOf)];
  if (first) throw fault(first.file, first.step, first.fault);
}

function readOne(file: string): ShopProcedure {
  const read = shopProcedure.safeParse(parsed(file));
  if (read.success) return read.data as ShopProcedure;
  const [issue] = read.error.issues;
  const [, at, ...column] = issue?.path ?? [];
  const step = stepNamed(parsed(file), at);
  throw fault(file, step, `${[...(step === '' ? (issue?.path ?? []) : column)].join('.')}: ${issue?.message}`);
}

function stepNamed(file: unknown, at: PropertyKey | undefined): string {
  const steps = (file as { readonly steps?: readonly { readonly id?: unknown }[] } | null)?.steps;
  return typeof at === 'number' ? String(steps?.[at]?.id ?? `number ${at + 1}`) : '';
}

function parsed(file: string): unknown {
  try {
    return JSON.parse(readFileSync(file, 'utf8'));
  } catch (error) {
    throw fault(file, '', error instanceof Error ? error.message : String(error));
  }
}

const fault = (file: string, step: string, what: string): ProcedureFault =>
  new ProcedureFault(`${basename(file)}${step === '' ? '' : `, step '${step}'`}: ${what}.`);
