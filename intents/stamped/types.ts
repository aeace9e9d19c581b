import type { FieldId, UnitId } from '#data';
import type { Holds } from '../fields.ts';
import type { Token } from '../tokens.ts';

/** A trade token read whole. `problem` is one plain sentence when what was said cannot exist. */
export interface Stamp {
  readonly end: number;
  readonly holds: Holds;
  readonly value: string;
  /** Where no field is named, the field it belongs to. */
  readonly field: FieldId;
  readonly unit?: UnitId;
  readonly unitSaid?: boolean;
  readonly problem?: string;
}

/** `asked`: the field before it is of this kind, so weaker signs suffice. */
export type StampReader = (tokens: readonly Token[], at: number, asked: boolean) => Stamp | undefined;
