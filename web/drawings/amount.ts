// Exact strings to plain numbers: good enough to draw with, never to answer with.
import { type UnitId, units } from '#data';

const factors = new Map(units.map(({ id, factor }) => [id, fractionOf(factor)]));

/** "579/8" -> 72.375; undefined when it is no number. */
export function fractionOf(text: string): number | undefined {
  const [top, bottom = '1'] = text.split('/');
  const value = Number(top) / Number(bottom);
  return top?.trim() === '' || !Number.isFinite(value) ? undefined : value;
}

/** A length in inches; `unit` absent means inches. */
export function inches(value: string, unit: string | undefined): number | undefined {
  const amount = fractionOf(value);
  const factor = factors.get((unit ?? 'in') as UnitId);
  return amount === undefined || factor === undefined ? undefined : (amount * factor) / 25.4;
}

/** "ST205/75R15" -> its section width and outer diameter in inches, as the size names them. */
export function tyreOf(size: string): { readonly width: number; readonly diameter: number } | undefined {
  const metric = /(\d{3})\/(\d{2,3})[A-Z-]*\s?(\d{2}(?:\.5)?)/i.exec(size);
  if (!metric) return undefined;
  const [width, aspect, rim] = metric.slice(1).map(Number);
  if (!width || !aspect || !rim) return undefined;
  return { width: width / 25.4, diameter: rim + (2 * width * aspect) / 100 / 25.4 };
}
