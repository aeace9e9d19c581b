// The job sheet as one plain structure: what was measured, what was decided, what was done, what is still open. It signs for nobody.
import { cautionOf, type FieldId, fieldOf, jobKinds } from '#data';
import type { JobRecord, ValueId, ValueRecord } from '#log/events';
import { type BillRow, billRows } from './answers/fitment-parts.ts';
import { verdictWords } from './answers/fitment-words.ts';
import { judgeValue } from './answers/service.ts';
import { openPoints } from './open.ts';
import { inShop, planOf, statusOf } from './plan.ts';
import type { Know, OpenPoint, Shop } from './types.ts';
import { liveValues } from './values.ts';
import { clause, saySide, showFieldOf, showName, showNamed, showOnly } from './words.ts';

/** One measured thing: the old axle's value beside the new one's. `sure` is false while nobody confirmed it. */
export interface SheetRow {
  readonly field: FieldId;
  readonly label: string;
  readonly where: string;
  readonly found?: SheetValue;
  readonly fitted?: SheetValue;
  /** Of what proves the work: what the trade or the part maker allows, and how the value stands to it. */
  readonly judged?: string;
}

/** `shown` for reading; `value` exact, in `unit`. */
export interface SheetValue {
  readonly id: ValueId;
  readonly shown: string;
  readonly value: string;
  readonly unit?: string;
  readonly sure: boolean;
  readonly at: string;
  readonly who: string;
  readonly notes: readonly string[];
  /** Of the same place and stage, measured before: square before tightening and after it. */
  readonly earlier: readonly SheetValue[];
}

/** A value that no longer stands, with what stands in its place. */
export interface SheetChange {
  readonly what: string;
  readonly was: SheetValue;
  readonly to?: string;
  readonly reason: string;
}

export interface Sheet {
  readonly number: string;
  /** The log's entry up to which it was made. */
  readonly entry: number;
  readonly shop: string;
  readonly title: string;
  readonly customer?: string;
  readonly kind: string;
  readonly status: JobRecord['status'];
  readonly openedAt: string;
  readonly closedAt?: string;
  readonly invented: boolean;
  readonly measurements: readonly SheetRow[];
  /** Torques, end play, temperatures: what was proved after the work. */
  readonly proof: readonly SheetRow[];
  /** The axle chosen, and its figures ready to show. */
  readonly axle?: { readonly title: string; readonly figures: readonly string[] };
  readonly verdict?: {
    readonly text: string;
    readonly reasons: readonly string[];
    readonly taken: boolean;
    readonly unsure: readonly string[];
  };
  readonly parts: readonly string[];
  /** What the job takes: each part, how many, why, and which measurements it rests on. */
  readonly bill: readonly BillRow[];
  readonly steps: { readonly done: number; readonly of: number };
  readonly skipped: readonly { readonly step: string; readonly reason: string }[];
  readonly notes: readonly { readonly text: string; readonly at: string; readonly who: string; readonly closed?: string }[];
  readonly cautions: readonly string[];
  readonly open: readonly OpenPoint[];
  readonly reminders: readonly { readonly text: string; readonly due: string; readonly done: boolean }[];
  readonly changed: readonly SheetChange[];
}

/** Fields whose fitted values prove the work. */
const proving = new Set<string>([
  'wheelNutTorque',
  'uBoltTorque',
  'springBoltTorque',
  'seatTorque',
  'endPlay',
  'hubTemperature',
  'ambientTemperature',
]);

export function sheet(record: JobRecord, know: Know): Sheet {
  const job = inShop(record, know);
  const { shop } = know;
  const rows = rowsOf(job, shop);
  return {
    number: job.id,
    entry: job.version,
    shop: shop.name,
    title: job.title,
    ...(job.customer === undefined ? {} : { customer: job.customer }),
    kind: jobKinds.find(({ id }) => id === job.kind)?.title ?? job.kind,
    status: job.status,
    openedAt: job.openedAt,
    ...(job.closedAt === undefined ? {} : { closedAt: job.closedAt }),
    invented: job.invented,
    measurements: rows.filter(({ field }) => !proving.has(field)),
    proof: rows.filter(({ field }) => proving.has(field)).map((row) => judgedRow(row, job, know)),
    ...axleOf(job, shop),
    ...verdictOf(job, shop),
    parts: partsOf(job),
    bill: billRows(job, know),
    ...stepsOf(job),
    notes: job.notes
      .filter(({ closed }) => closed !== 'undone')
      .map(({ text, at, who, closed }) => ({ text, at, who, ...(closed === undefined ? {} : { closed }) })),
    cautions: [...new Set(job.cautions.map(({ id }) => id))].map((id) => cautionOf(id).text),
    open: openPoints(job, shop).filter(({ kind }) => kind !== 'reminder'),
    reminders: job.reminders.map(({ text, dueAt, dueMiles, done }) => ({
      text,
      due: [dueAt?.slice(0, 10), dueMiles && `${dueMiles} miles`].filter(Boolean).join(' or '),
      done,
    })),
    changed: changesOf(job, shop),
  };
}

function rowsOf(job: JobRecord, shop: Shop): readonly SheetRow[] {
  const places = new Map<string, SheetRow>();
  for (const value of liveValues(job)) {
    const where = [
      value.origin === 'maker' && "maker's figure",
      value.axle && `${value.axle} axle`,
      value.side && saySide(value.side, shop),
    ]
      .filter(Boolean)
      .join(', ');
    const key = `${value.field} ${where}`;
    const row = places.get(key) ?? { field: value.field, label: showFieldOf(value.field, shop), where };
    const before = row[value.stage];
    const earlier = before ? [...before.earlier, { ...before, earlier: [] }] : [];
    places.set(key, { ...row, [value.stage]: { ...cell(value, shop), earlier } });
  }
  return [...places.values()];
}

const cell = (value: ValueRecord, shop: Shop): SheetValue => ({
  id: value.id,
  shown: showOnly(value, shop),
  value: value.value,
  ...(value.unit === undefined ? {} : { unit: value.unit }),
  sure: value.status === 'confirmed',
  at: value.at,
  who: value.who,
  notes: value.notes,
  earlier: [],
});

function judgedRow(row: SheetRow, job: JobRecord, know: Know): SheetRow {
  const value = job.values.find(({ id }) => id === row.fitted?.id);
  const judged = value && value.origin !== 'maker' && judgeValue(value, job, know, value.at);
  return judged ? { ...row, judged: judged.show.replaceAll('\n', '; ') } : row;
}

function axleOf({ candidate }: JobRecord, shop: Shop): Pick<Sheet, 'axle'> {
  if (!candidate) return {};
  const figures = Object.entries(candidate.values).map(([id, value]) => {
    const field = id as FieldId;
    const { unit } = fieldOf(field);
    return showNamed({ field, value, ...(unit ? { unit } : {}) }, shop);
  });
  return { axle: { title: candidate.title, figures } };
}

function verdictOf({ verdict, values }: JobRecord, shop: Shop): Pick<Sheet, 'verdict'> {
  if (!verdict) return {};
  const unsure = verdict.unconfirmed.flatMap((id) => values.find((value) => value.id === id && value.status === 'heard') ?? []);
  return {
    verdict: {
      text: verdictWords(verdict.verdict),
      reasons: verdict.reasons ?? [],
      taken: verdict.accepted === true,
      unsure: unsure.map((value) => showName(value, shop)),
    },
  };
}

/** Parts that the steps done call for. */
function partsOf(job: JobRecord): readonly string[] {
  const done = planOf(job).filter(({ key }) => statusOf(job, key) === 'done');
  return [...new Set(done.flatMap(({ step }) => step.parts))];
}

function stepsOf(job: JobRecord): Pick<Sheet, 'steps' | 'skipped'> {
  const plan = planOf(job);
  const skipped = job.steps.filter(({ status }) => status === 'skipped');
  return {
    steps: { done: plan.filter(({ key }) => statusOf(job, key) === 'done').length, of: plan.length },
    skipped: skipped.map(({ step, reason = '' }) => ({
      step: clause(plan.find(({ key }) => key === step)?.step.say ?? step),
      reason,
    })),
  };
}

function changesOf(job: JobRecord, shop: Shop): Sheet['changed'] {
  return job.values.flatMap((value) => {
    if (value.status !== 'corrected' && value.status !== 'struck') return [];
    const by = job.values.find(({ id }) => id === value.correctedBy);
    const what = showName(value, shop);
    const was = cell(value, shop);
    return [{ what, was, ...(by ? { to: showOnly(by, shop) } : {}), reason: value.reason ?? (by ? 'said again' : 'struck') }];
  });
}
