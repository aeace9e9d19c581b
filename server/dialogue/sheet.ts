// The job sheet as one plain structure: what was measured, what was decided, what was done, what is still open. It signs for nobody.
import { cautionOf, type FieldId, jobKinds } from '#data';
import type { JobRecord, ValueRecord } from '#log/events';
import { openPoints } from './open.ts';
import { planOf, statusOf } from './plan.ts';
import type { Know, OpenPoint, Shop } from './types.ts';
import { liveValues } from './values.ts';
import { clause, saySide, showFieldOf, showName, showOnly } from './words.ts';

/** One measured thing: the old axle's value beside the new one's. `sure` is false while nobody confirmed it. */
export interface SheetRow {
  readonly field: FieldId;
  readonly label: string;
  readonly where: string;
  readonly found?: SheetValue;
  readonly fitted?: SheetValue;
}

export interface SheetValue {
  readonly shown: string;
  readonly sure: boolean;
}

export interface Sheet {
  readonly number: string;
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
  readonly axle?: string;
  readonly verdict?: { readonly text: string; readonly taken: boolean; readonly unsure: readonly string[] };
  readonly parts: readonly string[];
  readonly steps: { readonly done: number; readonly of: number };
  readonly skipped: readonly { readonly step: string; readonly reason: string }[];
  readonly notes: readonly { readonly text: string; readonly closed?: string }[];
  readonly cautions: readonly string[];
  readonly open: readonly OpenPoint[];
  readonly reminders: readonly { readonly text: string; readonly due: string; readonly done: boolean }[];
  readonly changed: readonly { readonly what: string; readonly to?: string; readonly reason: string }[];
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

export function sheet(job: JobRecord, { shop }: Know): Sheet {
  const rows = rowsOf(job, shop);
  return {
    number: job.id,
    shop: shop.name,
    title: job.title,
    ...(job.customer === undefined ? {} : { customer: job.customer }),
    kind: jobKinds.find(({ id }) => id === job.kind)?.title ?? job.kind,
    status: job.status,
    openedAt: job.openedAt,
    ...(job.closedAt === undefined ? {} : { closedAt: job.closedAt }),
    invented: job.invented,
    measurements: rows.filter(({ field }) => !proving.has(field)),
    proof: rows.filter(({ field }) => proving.has(field)),
    ...(job.candidate ? { axle: job.candidate.title } : {}),
    ...verdictOf(job, shop),
    parts: partsOf(job),
    ...stepsOf(job),
    notes: job.notes
      .filter(({ closed }) => closed !== 'undone')
      .map(({ text, closed }) => ({ text, ...(closed === undefined ? {} : { closed }) })),
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
    places.set(key, { ...row, [value.stage]: cell(value, shop) });
  }
  return [...places.values()];
}

const cell = (value: ValueRecord, shop: Shop): SheetValue => ({
  shown: showOnly(value, shop),
  sure: value.status === 'confirmed',
});

function verdictOf({ verdict, values }: JobRecord, shop: Shop): Pick<Sheet, 'verdict'> {
  if (!verdict) return {};
  const unsure = verdict.unconfirmed.flatMap((id) => values.find((value) => value.id === id && value.status === 'heard') ?? []);
  return {
    verdict: { text: verdict.verdict, taken: verdict.accepted === true, unsure: unsure.map((value) => showName(value, shop)) },
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
    const what = `${showName(value, shop)} ${showOnly(value, shop)}`;
    return [{ what, ...(by ? { to: showOnly(by, shop) } : {}), reason: value.reason ?? (by ? 'said again' : 'struck') }];
  });
}
