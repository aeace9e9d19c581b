// Torque of a bolt from its thread, grade and the state of the thread: T = K D F, F = 3/4 of proof times stress area.
import { type BoltGradeRow, boltGrades, type ThreadConditionRow, type ThreadRow, threadConditions, threads } from '#data';
import { Fraction, type Quantity } from '../quantity/index.ts';

/** Clamp in lbf (inch threads) or N (metric); K of the condition; `rows` decided it. */
export interface BoltTorque {
  readonly code: 'boltTorque';
  readonly torque: Quantity;
  readonly clamp: Fraction;
  readonly clampUnit: 'lbf' | 'N';
  readonly k: Fraction;
  readonly condition: string;
  readonly thread: ThreadRow;
  readonly grade: BoltGradeRow;
  readonly rows: readonly string[];
  readonly sources: readonly string[];
}
export type BoltFault =
  | { readonly code: 'unknownThread'; readonly thread: string }
  | { readonly code: 'unknownGrade'; readonly grade: string; readonly known: readonly string[] }
  | { readonly code: 'unknownCondition'; readonly condition: string; readonly known: readonly string[] };

export interface Bolt {
  /** "1/2-20", "M12x1.5". */
  readonly thread: string;
  /** "2", "5", "8", "8.8", "10.9". */
  readonly grade: string;
  /** "dry" when left out. */
  readonly condition?: string;
}

/** Part of the proof load that a joint to be opened again is tightened to (mechconcepts.tech bolt torque calculation). */
const reusable = new Fraction(3, 4);

/** Torque that clamps to three quarters of proof. Inch threads answer in lb-ft, metric ones in N m. */
export function boltTorque({ thread: id, grade: name, condition: state = 'dry' }: Bolt): BoltTorque | BoltFault {
  const thread = threadOf(id);
  if (!thread) return { code: 'unknownThread', thread: id };
  const grade = gradeOf(name, thread);
  if (!grade) return { code: 'unknownGrade', grade: name, known: gradesFor(thread) };
  const condition = conditionOf(state);
  if (!condition) return { code: 'unknownCondition', condition: state, known: threadConditions.map(({ id: known }) => known) };
  const clamp = proofLoad(thread, grade).mul(reusable);
  const k = new Fraction(condition.used);
  return {
    code: 'boltTorque',
    torque: torqueFor(clamp, k, thread),
    clamp,
    clampUnit: thread.unit === 'in' ? 'lbf' : 'N',
    k,
    condition: condition.id,
    thread,
    grade,
    rows: [thread.id, grade.id, condition.id],
    sources: [thread.source, grade.source, condition.source],
  };
}

/** The clamp that a torque gives on a thread, by the same formula turned round: lbf from lb-ft, N from N m. */
export function clampFrom(torque: Fraction, thread: ThreadRow, k: Fraction): Fraction {
  return torque.div(torqueFor(new Fraction(1), k, thread).value);
}

/** The thread of a spoken or typed name: "1/2-20", "m12x1.5". */
export function threadOf(id: string): ThreadRow | undefined {
  return threads.find((row) => row.id.toLowerCase() === id.trim().toLowerCase());
}

/** An inch thread by its diameter alone, as fine or coarse as `like`; fine where that tells nothing, as studs and U-bolts are. */
export function threadSized(diameter: string, like = ''): ThreadRow | undefined {
  const sized = (size: string) =>
    threads.filter((row) => row.unit === 'in' && row.diameter === size).toSorted((a, b) => Number(a.tpi) - Number(b.tpi));
  const before = threadOf(like);
  const isCoarse = before !== undefined && sized(before.diameter).findIndex(({ id }) => id === before.id) === 0;
  return sized(diameter).at(isCoarse ? 0 : -1);
}

/** Load at proof: lbf for inch threads, N for metric ones. */
export function proofLoad(thread: ThreadRow, grade: BoltGradeRow): Fraction {
  const perArea = grade.strengthUnit === 'ksi' ? 1000 : 1;
  return new Fraction(grade.proof).mul(perArea).mul(thread.area);
}

/** Grade row for the thread's size, or undefined where the grade is not made so. */
export function gradeOf(name: string, { diameter, unit }: ThreadRow): BoltGradeRow | undefined {
  const size = new Fraction(diameter);
  const fits = (row: BoltGradeRow) => row.unit === unit && size.compare(row.over) > 0 && size.compare(row.to) <= 0;
  return boltGrades.find((row) => row.grade === name && fits(row));
}

function gradesFor({ unit }: ThreadRow): readonly string[] {
  return [...new Set(boltGrades.filter((row) => row.unit === unit).map(({ grade }) => grade))];
}

function conditionOf(state: string): ThreadConditionRow | undefined {
  return threadConditions.find(({ id, said }) => id === state || said.includes(state.toLowerCase()));
}

function torqueFor(clamp: Fraction, k: Fraction, { diameter, unit }: ThreadRow): Quantity {
  const turning = k.mul(diameter).mul(clamp);
  return unit === 'in' ? { value: turning.div(12), unit: 'lbf.ft' } : { value: turning.div(1000), unit: 'N.m' };
}

/** How far a bolt of this thread draws out under a clamp over the length between head and nut, all of it at the stress area: F L / (A E). */
export interface BoltStretch {
  readonly stretch: Quantity;
  readonly source: string;
}

/** Young's modulus of steel: psi as in engineeringtoolbox.com bolt-stretching d_1164, MPa as in machinecalcs.com bolt elongation. */
const steel: Readonly<Record<string, Fraction>> = { in: new Fraction(30_000_000), mm: new Fraction(200_000) };

/** `clamp` lbf and `length` in for inch threads, N and mm for metric ones; the answer in the same. */
export function boltStretch(clamp: Fraction, length: Fraction, { area, unit }: ThreadRow): BoltStretch {
  const stretch = clamp.mul(length).div(new Fraction(area).mul(steel[unit] ?? 0));
  return {
    stretch: { value: stretch, unit: unit === 'in' ? 'in' : 'mm' },
    source: 'F L / (A E): engineeringtoolbox.com bolt-stretching d_1164',
  };
}
