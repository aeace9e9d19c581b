// What to set a torque wrench to when something is between it and the nut.
import { Fraction, type Quantity } from '../quantity/index.ts';

export interface WrenchSetting {
  readonly code: 'wrenchSetting';
  /** What to set, in the unit of the torque wanted. */
  readonly set: Quantity;
  /** What the nut would get if the wrench were set to the torque wanted. */
  readonly uncorrected: Quantity;
  readonly source: string;
}
export interface BadWrench {
  readonly code: 'badWrench';
  readonly argument: 'length' | 'extension';
}

/** T L / (L + E cos a): `length` grip to square, `extension` square to nut, in one unit; degrees between them, 0 = in line. */
export function wrenchSetting(wanted: Quantity, length: Fraction, extension: Fraction, degrees = 0): WrenchSetting | BadWrench {
  if (length.compare(0) <= 0) return { code: 'badWrench', argument: 'length' };
  const reach = length.add(extension.mul(cosine(degrees)));
  if (extension.compare(0) < 0 || reach.compare(0) <= 0) return { code: 'badWrench', argument: 'extension' };
  const ratio = length.div(reach);
  return {
    code: 'wrenchSetting',
    set: { value: wanted.value.mul(ratio), unit: wanted.unit },
    uncorrected: { value: wanted.value.div(ratio), unit: wanted.unit },
    source: 'TM 9-254 figure 46; torqwrench.com extension formula',
  };
}

/** Exact where it can be; else to a millionth. */
function cosine(degrees: number): Fraction {
  return new Fraction(Math.round(Math.cos((degrees * Math.PI) / 180) * 1e6), 1e6);
}
