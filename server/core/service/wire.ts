// Voltage lost in the brake wire, out and back.
import { type WireGaugeRow, wireGauges } from '#data';
import type { Fraction } from '../quantity/index.ts';

export interface WireDrop {
  readonly code: 'wireDrop';
  /** Volts lost if the current stays as given. */
  readonly drop: Fraction;
  /** Ohm of the wire, out and back. */
  readonly ohms: Fraction;
  readonly gauge: WireGaugeRow;
}
export interface UnknownGauge {
  readonly code: 'unknownGauge';
  readonly gauge: string;
  readonly known: readonly string[];
}

/** Drop of a current (A) over a one-way length (feet). */
export function wireDrop(amps: Fraction, feetOneWay: Fraction, gauge: string): WireDrop | UnknownGauge {
  const row = wireGauges.find(({ id }) => id === gauge);
  if (!row) return { code: 'unknownGauge', gauge, known: wireGauges.map(({ id }) => id) };
  const ohms = feetOneWay.mul(2).mul(row.ohmPer1000ft).div(1000);
  return { code: 'wireDrop', drop: amps.mul(ohms), ohms, gauge: row };
}

/** What flows through `ohms` of magnets behind `wireOhms` of wire, and the volts that reach them. */
export function throughWire(
  volts: Fraction,
  ohms: Fraction,
  wireOhms: Fraction,
): { readonly amps: Fraction; readonly atMagnets: Fraction } {
  const amps = volts.div(ohms.add(wireOhms));
  return { amps, atMagnets: amps.mul(ohms) };
}

/** The thinnest listed wire that loses no more than `most` volts, or undefined. */
export function gaugeFor(amps: Fraction, feetOneWay: Fraction, most: Fraction): WireGaugeRow | undefined {
  return wireGauges.findLast(({ id }) => {
    const lost = wireDrop(amps, feetOneWay, id);
    return lost.code === 'wireDrop' && lost.drop.compare(most) <= 0;
  });
}
