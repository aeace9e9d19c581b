// Faults in procedures, named by file, step and what is wrong: run over the tool's own at start-up and over a shop's before use.
import { cautions, type Field, fields, jobKinds, procedures as ownProcedures, units } from './index.ts';
import type { Condition, JobKind, Procedure, ProcedureStep, RecordedValue } from './types.ts';

/** `step` is empty where the whole procedure or job is meant. */
export interface ProcedureFault {
  readonly file: string;
  readonly step: string;
  readonly fault: string;
}

/** Every fault; empty when all is well. `fileOf` names the file a procedure came from. */
export function checkProcedures(
  all: readonly Procedure[] = ownProcedures,
  kinds: readonly JobKind[] = jobKinds,
  fileOf: (procedure: string) => string = kebabFile,
): readonly ProcedureFault[] {
  const procedureFaults = all.flatMap((procedure) => {
    const named = (step: string, faults: readonly string[]) =>
      faults.map((fault) => ({ file: fileOf(procedure.id), step, fault }));
    const used = kinds.some(({ procedures }) => procedures.includes(procedure.id));
    return [
      ...named('', [
        ...twice(all, procedure.id, 'procedure'),
        ...(used ? [] : ['no kind of job uses it: its steps are never reached']),
      ]),
      ...procedure.steps.flatMap((step) =>
        named(step.id, [
          ...twice(procedure.steps, step.id, 'step'),
          ...stepFaults(step),
          ...reachFaults(procedure, step, all, kinds),
        ]),
      ),
    ];
  });
  return [...procedureFaults, ...kinds.flatMap((kind) => jobFaults(kind, all))];
}

function kebabFile(procedure: string): string {
  return `data/procedures/${procedure.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`)}.json`;
}

function jobFaults({ id, procedures }: JobKind, all: readonly Procedure[]): readonly ProcedureFault[] {
  const unknown = procedures.filter((name) => all.every((procedure) => procedure.id !== name));
  return unknown.map((name) => ({
    file: 'data/jobs.json',
    step: '',
    fault: `job '${id}' names procedure '${name}', which is not there`,
  }));
}

function twice(rows: readonly { readonly id: string }[], id: string, what: string): readonly string[] {
  return rows.filter((row) => row.id === id).length > 1 ? [`${what} '${id}' stands twice`] : [];
}

const longestSay = 30;

function stepFaults(step: ProcedureStep): readonly string[] {
  const missing = (['say', 'show', 'why', 'source'] as const).filter((part) => !step[part]?.trim());
  const strange = step.cautions.filter((id) => cautions.every((caution) => caution.id !== id));
  const words = step.say.split(/\s+/).length;
  return [
    ...missing.map((part) => `has no '${part}'`),
    ...strange.map((id) => `names caution '${id}', which data/cautions.json does not have`),
    ...(words > longestSay ? [`'say' has ${words} words: ${longestSay} at most can be taken in by ear`] : []),
    ...step.when.flatMap(conditionFaults),
    ...step.record.flatMap((record) => recordFaults(record, step)),
  ];
}

function fieldNamed(id: string): Field | undefined {
  return fields.find((field) => field.id === id);
}

function conditionFaults({ field: id, is, orUnknown }: Condition): readonly string[] {
  const field = fieldNamed(id);
  if (!field) return [`waits for field '${id}', which data/fields.json does not have`];
  const impossible = is.filter((value) => (field.choices ? !field.choices.includes(value) : !isNumber(value)));
  return [
    ...impossible.map((value) => `waits for ${id} to be '${value}', which it never is`),
    ...(is.length === 0 && !orUnknown ? [`waits for ${id} to be nothing: never reached`] : []),
  ];
}

function recordFaults(record: RecordedValue, step: ProcedureStep): readonly string[] {
  const field = fieldNamed(record.field);
  if (!field) return [`${record.gate ? 'gate' : 'value'} '${record.field}' is no field of data/fields.json: nothing can fill it`];
  const clash =
    record.when && !canHold([...step.when, ...record.when])
      ? [`value '${record.field}' is asked for under conditions that exclude each other`]
      : [];
  return [...clash, ...(record.when ?? []).flatMap(conditionFaults), ...limitFaults(record, field)];
}

function limitFaults({ field: id, min, max, unit }: RecordedValue, field: Field): readonly string[] {
  if (min === undefined && max === undefined) return [];
  if (unit === undefined) return [`limits of '${id}' have no unit`];
  if (field.unit === undefined || dimensionOf(field.unit) !== dimensionOf(unit))
    return [`limits of '${id}' are in ${unit}, the field is in ${field.unit ?? 'words'}`];
  const crossed = min !== undefined && max !== undefined && numberOf(min) > numberOf(max);
  return crossed ? [`limits of '${id}' are crossed: ${min} is over ${max}`] : [];
}

/** Two conditions on one field must leave it a value in common. */
function canHold(conditions: readonly Condition[]): boolean {
  const agree = (one: Condition, other: Condition) =>
    (one.orUnknown && other.orUnknown) || one.is.some((value) => other.is.includes(value));
  return conditions.every((one) => conditions.every((other) => one.field !== other.field || agree(one, other)));
}

const dimensionOf = (unit: string): string | undefined => units.find(({ id }) => id === unit)?.dimension;
const isNumber = (text: string): boolean => /^-?\d+(\.\d+|\/[1-9]\d*)?$/.test(text);

function numberOf(text: string): number {
  const [over = '0', under = '1'] = text.split('/');
  return Number(over) / Number(under);
}

/** A step is reached when its conditions can hold together and each field it waits for is recorded before it, in every job that uses it. */
function reachFaults(
  procedure: Procedure,
  step: ProcedureStep,
  all: readonly Procedure[],
  kinds: readonly JobKind[],
): readonly string[] {
  if (!canHold(step.when)) return ['its conditions exclude each other: never reached'];
  const jobs = kinds.filter(({ procedures }) => procedures.includes(procedure.id));
  const waiting = step.when.filter(({ orUnknown }) => !orUnknown);
  return waiting.flatMap(({ field }) =>
    jobs
      .filter((job) => !recordedBefore(job, procedure, step, all).has(field))
      .map((job) => `waits for '${field}', which job '${job.id}' records nowhere before it: never reached`),
  );
}

function recordedBefore(job: JobKind, procedure: Procedure, step: ProcedureStep, all: readonly Procedure[]): ReadonlySet<string> {
  const before = job.procedures.slice(0, job.procedures.indexOf(procedure.id));
  const earlier = before.flatMap((id) => all.filter((one) => one.id === id)).flatMap(({ steps }) => steps);
  const own = procedure.steps.slice(0, procedure.steps.indexOf(step));
  return new Set([...earlier, ...own].flatMap(({ record }) => record.map(({ field }) => field)));
}
