// The writing on a sidewall -> what it says. One row a form; the first that matches reads it.
import { Fraction } from '../../quantity/index.ts';

export type TyreUse = 'ST' | 'LT' | 'P' | 'T' | 'none';

/** A tyre size as written. Widths and diameters exact: `width` and `overall` in inches. */
export interface TyreSize {
  readonly form: 'metric' | 'inch' | 'flotation' | 'letter';
  readonly use: TyreUse;
  /** Nominal section width, in; absent for a letter size. */
  readonly width?: Fraction;
  /** Percent; absent where the size does not say. */
  readonly aspect?: number;
  readonly construction?: 'R' | 'D' | 'B' | '-';
  readonly rim: Fraction;
  /** Overall diameter as the size itself says it, in. */
  readonly overall?: Fraction;
  readonly letter?: string;
  /** Load index, single and dual, and speed symbol, where written. */
  readonly index?: number;
  readonly dualIndex?: number;
  readonly speed?: string;
  readonly loadRange?: string;
}

interface Form {
  readonly shape: RegExp;
  readonly read: (part: Readonly<Record<string, string | undefined>>) => TyreSize | undefined;
}

const number = String.raw`\d+(?:\.\d+)?`;
const tail = String.raw`(?:\s+(?:LOAD\s*RANGE|LR)?\s*(?<range>[A-HJ]))?(?:\s+(?<index>\d{2,3})(?:/(?<dual>\d{2,3}))?(?<speed>A[1-8]|[B-HJ-NP-WY])?)?$`;
const mm = (text: string) => new Fraction(text).div('25.4');

const forms: readonly Form[] = [
  {
    shape: new RegExp(
      String.raw`^(?<use>ST|LT|P|T)?\s*(?<width>\d{3})/(?<aspect>\d{2})\s*(?<make>[RDB-])?\s*(?<rim>${number})(?<after>ST|LT)?${tail}`,
    ),
    read: ({ use, after, width = '', aspect = '', make, rim = '', ...rest }) => ({
      form: 'metric',
      use: (use ?? after ?? 'none') as TyreUse,
      width: mm(width),
      aspect: Number(aspect),
      ...construction(make),
      rim: new Fraction(rim),
      ...service(rest),
    }),
  },
  {
    shape: new RegExp(
      String.raw`^(?<overall>${number})\s*X\s*(?<width>${number})\s*(?<make>[RDB-])?\s*(?<rim>${number})(?<after>ST|LT)?${tail}`,
    ),
    read: ({ overall = '', width = '', make, rim = '', after, ...rest }) => ({
      form: 'flotation',
      use: (after ?? 'none') as TyreUse,
      overall: new Fraction(overall),
      width: new Fraction(width),
      ...construction(make),
      rim: new Fraction(rim),
      ...service(rest),
    }),
  },
  {
    shape: new RegExp(
      String.raw`^(?<width>\d{1,2}\.\d{1,2})(?:/(?:\d{1,2}\.\d{1,2}))?\s*(?<make>[RDB-])\s*(?<rim>${number})(?<after>ST|LT)?${tail}`,
    ),
    read: ({ width = '', make, rim = '', after, ...rest }) => ({
      form: 'inch',
      use: (after ?? 'none') as TyreUse,
      width: new Fraction(width),
      ...construction(make),
      rim: new Fraction(rim),
      ...service(rest),
    }),
  },
  {
    shape: new RegExp(
      String.raw`^(?<letter>[A-HJ-N])\s*(?<make>R)?(?<aspect>60|70|78)\s*-\s*(?<rim>${number})(?<after>ST|LT)?${tail}`,
    ),
    read: ({ letter = '', make, aspect = '', rim = '', after, ...rest }) => ({
      form: 'letter',
      use: (after ?? 'none') as TyreUse,
      letter,
      aspect: Number(aspect),
      ...construction(make ?? '-'),
      rim: new Fraction(rim),
      ...service(rest),
    }),
  },
];

/** Reads a designation such as "ST205/75R15", "4.80-12 C", "20.5x8.0-10", "P215/65R15 95H". Undefined where no form fits. */
export function parseTyre(text: string): TyreSize | undefined {
  const written = text.trim().toUpperCase().replace(/\s+/g, ' ');
  for (const { shape, read } of forms) {
    const groups = shape.exec(written)?.groups;
    if (!groups) continue;
    const size = read(groups);
    return size && sensible(size) ? size : undefined;
  }
  return undefined;
}

/** A rim from 4 to 26 in, a tyre no wider than 20 in, an overall diameter above the rim. */
function sensible({ rim, width, overall }: TyreSize): boolean {
  if (rim.lt(4) || rim.gt(26)) return false;
  if (width && (width.lt(2) || width.gt(20))) return false;
  return !overall || overall.gt(rim);
}

function construction(make: string | undefined): Pick<TyreSize, 'construction'> {
  return make === undefined ? {} : { construction: make as NonNullable<TyreSize['construction']> };
}

function service({ range, index, dual, speed }: Readonly<Record<string, string | undefined>>): Partial<TyreSize> {
  return {
    ...(range === undefined ? {} : { loadRange: range }),
    ...(index === undefined ? {} : { index: Number(index) }),
    ...(dual === undefined ? {} : { dualIndex: Number(dual) }),
    ...(speed === undefined ? {} : { speed }),
  };
}
