// What a tyre may carry: by its load index, or by its size and load range.
import { type FieldId, loadIndices, speedSymbols, type TyreLoadRow, tyreLoads } from '#data';
import { convert, Fraction, type Quantity, quantity } from '../../quantity/index.ts';
import type { Trailer } from '../types.ts';
import { parseTyre, type TyreSize } from './designation.ts';

export interface TyreLoad {
  /** Pounds a tyre, exact, before any division. */
  readonly load: Quantity;
  /** What counts on a trailer's axle: a passenger-car tyre's load divided by 1.10. */
  readonly counted: Quantity;
  readonly passenger: boolean;
  readonly pressure?: Quantity;
  readonly source: string;
}

const byIndex = new Map(loadIndices.map((row) => [row.index, row]));
const passengerDivisor = new Fraction('1.10');
const passengerRule = '49 CFR 571.120 S5.1.2';

/** Load of a load index, kg. Undefined where the table has no such index. */
export function loadOfIndex(index: number): Quantity | undefined {
  const row = byIndex.get(index);
  return row && quantity(row.kg, 'kg');
}

/** Speed of a symbol, km/h. */
export function speedOf(symbol: string): Quantity | undefined {
  const row = speedSymbols.find(({ id }) => id === symbol);
  return row && quantity(row.kmh, 'kmh');
}

/** What a tyre carries as written, `dual` for two side by side. Undefined where neither index nor load range tells. */
export function tyreLoad(tyre: string | TyreSize | undefined, dual = false): TyreLoad | undefined {
  const size = typeof tyre === 'string' ? parseTyre(tyre) : tyre;
  if (!size) return undefined;
  const index = dual ? size.dualIndex : size.index;
  const stamped = index === undefined ? undefined : loadOfIndex(index);
  if (stamped) return counted(size, convert(stamped, 'lb'), byIndex.get(index ?? 0)?.source ?? '');
  if (dual) return undefined;
  const { row } = listed.find((one) => one.row.loadRange === size.loadRange && sameTyre(one.size, size)) ?? {};
  return row && { ...counted(size, quantity(row.load, 'lb'), row.source), pressure: quantity(row.pressure, 'psi') };
}

/** The tyre of a trailer as written on its sidewall: its size, with the load index or load range that was told beside it. */
export function tyreOn({ numbers, tokens }: Trailer): TyreSize | undefined {
  const size = tokens.get('tyreSize')?.tyre;
  if (!size || size.index !== undefined || size.loadRange !== undefined) return size;
  const index = numbers.get('loadIndex')?.span.low?.valueOf();
  const loadRange = tokens.get('loadRange')?.text;
  return { ...size, ...(index !== undefined ? { index } : loadRange !== undefined && { loadRange }) };
}

/** What of the sidewall the job tells, and the load range where the load cannot be told without it. */
export function sidewallOf({ numbers, tokens }: Trailer, told: boolean): FieldId[] {
  const beside = (['loadIndex', 'loadRange'] as const).filter((field) => numbers.has(field) || tokens.has(field));
  const wanted = told || !tokens.has('tyreSize') ? [] : (['loadRange'] as const);
  return [...new Set(['tyreSize' as const, ...beside, ...wanted])];
}

/** A size that names no use is read as a passenger car's, the lighter reading; ST and LT count in full. */
function counted(size: TyreSize, load: Quantity, source: string): TyreLoad {
  const passenger = size.use === 'P' || (size.use === 'none' && size.form === 'metric');
  if (!passenger) return { load, counted: load, passenger, source };
  return {
    load,
    counted: { value: load.value.div(passengerDivisor), unit: load.unit },
    passenger,
    source: `${source}; ${passengerRule}`,
  };
}

/** What this size carries in each load range on file; for a size that names no use, the trailer tyre's figures. */
export function loadsOf(text: string): readonly TyreLoadRow[] {
  const size = parseTyre(text);
  return size ? listed.filter((one) => sameTyre(one.size, { ...size, use: 'ST' })).map(({ row }) => row) : [];
}

/** The table with its sizes read. */
const listed = tyreLoads.map((row) => ({ row, size: parseTyre(row.size) }));

function sameTyre(other: TyreSize | undefined, size: TyreSize): boolean {
  if (!other?.width || !size.width) return false;
  return other.use === size.use && other.width.equals(size.width) && other.aspect === size.aspect && other.rim.equals(size.rim);
}

/** 571.120 S5.1.2: the loads of an axle's tyres together must reach its rating. `margin` in pounds, negative where they do not. */
export function tyresAgainstRating(
  counted: Quantity,
  tyres: number,
  rating: Quantity,
): { readonly sum: Quantity; readonly margin: Quantity; readonly ok: boolean } {
  const sum = convert(counted, 'lb').value.mul(tyres);
  const margin = sum.sub(convert(rating, 'lb').value);
  return { sum: { value: sum, unit: 'lb' }, margin: { value: margin, unit: 'lb' }, ok: margin.gte(0) };
}
