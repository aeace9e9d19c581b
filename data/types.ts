import type { FieldId, UnitId } from './index.ts';

/** A step or a value applies only where an earlier value says so. */
export interface Condition {
  readonly field: FieldId;
  /** The values (choices or exact numbers) that make it apply; with `orUnknown`, also while nothing is recorded. */
  readonly is: readonly string[];
  readonly orUnknown?: boolean;
}

/** A value that a step asks for, with the limits it is accepted within (exact, in `unit`). */
export interface RecordedValue {
  readonly field: FieldId;
  readonly stage: 'found' | 'fitted';
  readonly min?: string;
  readonly max?: string;
  readonly unit?: UnitId;
  /** The step cannot be marked done without a gate's value. */
  readonly gate: boolean;
  /** Asked for only where these hold; absent = always. */
  readonly when?: readonly Condition[];
}

export interface Caution {
  readonly id: string;
  readonly text: string;
  readonly source: string;
}

/** `say` is spoken (short), `show` is on the screen (more). Shapes of data/procedures/*.json. */
export interface ProcedureStep {
  readonly id: string;
  readonly say: string;
  readonly show: string;
  readonly why: string;
  /** Ids of data/cautions.json. */
  readonly cautions: readonly string[];
  readonly tools: readonly string[];
  readonly parts: readonly string[];
  readonly record: readonly RecordedValue[];
  /** All conditions must hold; an empty list always applies. */
  readonly when: readonly Condition[];
  /** `side`: once left, once right; `axle`: once per axle; `wheel`: per side of each axle. */
  readonly repeat?: 'side' | 'axle' | 'wheel';
  readonly source: string;
}

/** A way to tell that a step, or part of it, is done. */
export interface Told {
  /** `procedure/step.act`. */
  readonly id: string;
  readonly said: readonly string[];
  /** What is still to be asked about when only this was told; absent = the step is done. */
  readonly left?: string;
  readonly source: string;
}

export interface Procedure {
  readonly id: string;
  readonly title: string;
  readonly steps: readonly ProcedureStep[];
}

export type JobKindId = 'axleReplacement' | 'hubService' | 'inspection' | 'scheduledService';

/** A kind of job is an ordered list of procedures. */
export interface JobKind {
  readonly id: JobKindId;
  readonly title: string;
  readonly said: readonly string[];
  readonly procedures: readonly string[];
  /** An axle comes in new: what was found is not what is fitted. */
  readonly replaces?: boolean;
  readonly source: string;
}

/** One axle on the shop's rack, or one that was quoted. Exact strings in the field's usual unit; absent = not known. */
export interface StockAxle {
  readonly id: string;
  readonly title: string;
  readonly place?: string;
  readonly quantity: number;
  readonly values: Readonly<Partial<Record<FieldId, string>>>;
  /** True in the demo's rows. */
  readonly invented: boolean;
}

/** R0: nothing to confirm. R1: read back, taken unless objected to. R2: waits for a yes. R3: listed, waits for a yes of its own. */
export type RiskClass = 'R0' | 'R1' | 'R2' | 'R3';

/** The read-back policy: data/policy.json. */
export interface Policy {
  /** By kind of intent, and by name for commands. */
  readonly classes: Readonly<Record<string, RiskClass>>;
  /** How long a question can be answered by a bare yes. */
  readonly askSeconds: number;
  /** How long a question that lacks facts waits for them: one may have to go and look. */
  readonly factsSeconds: number;
  /** An utterance that arrives later than this after it was spoken answers nothing. */
  readonly lateSeconds: number;
  readonly valuesPerReadBack: number;
  /** Below it a value is asked about. */
  readonly confidence: number;
  /** `over` is larger than `under` (or equal, where not strict) on a sound trailer. */
  readonly orders: readonly {
    readonly over: FieldId;
    readonly under: FieldId;
    readonly strict: boolean;
    readonly source: string;
  }[];
  /** Left and right further apart than this are asked about. */
  readonly sidesApart: readonly {
    readonly field: FieldId;
    readonly apart: string;
    readonly unit: UnitId;
    readonly source: string;
  }[];
}
