import type { Candidate, FitReading } from '#core';
import type { FieldId, UnitId } from '#data';

/** A confirmed reading of the trailer as found; its id is its field. */
export function reading(field: FieldId, value: string, extra: Partial<FitReading> = {}): FitReading {
  return { id: field, field, stage: 'found', value, status: 'confirmed', ...extra };
}

/** Readings by field; a pair is value and unit. */
export function readings(values: Partial<Record<FieldId, string | readonly [string, UnitId]>>): FitReading[] {
  return Object.entries(values).map(([field, given]) =>
    typeof given === 'string'
      ? reading(field as FieldId, given)
      : reading(field as FieldId, given[0] ?? '', { unit: given[1] as UnitId }),
  );
}

export const axle = (values: Candidate['values'], id = 'A'): Candidate => ({ id, title: 'an axle', values });

/** A trailer on which every check can be made, and the axle that is right for it. */
export const wholeTrailer = {
  hubFace: '579/8',
  springCentre: '58',
  beamDiameter: '19/8',
  beamShape: 'round',
  drop: '0',
  bumpClearance: '5',
  boltPattern: '5x9/2',
  pilotBore: '2.38',
  studThread: '1/2-20',
  brakeType: 'electric',
  brakeFlange: '4',
  brakeSize: '10x9/4',
  capacity: '3500',
  gvwr: '3500',
  tongueWeight: '420',
  axleCount: 'single',
  tyreSize: 'ST205/75R15 C',
  wheelOffset: '0',
  springWidth: '7/4',
  frameWidth: '60',
  fenderWidth: '88',
} as const satisfies Partial<Record<FieldId, string>>;

export const rightAxle = axle({
  hubFace: '579/8',
  springCentre: '58',
  beamDiameter: '19/8',
  beamShape: 'round',
  drop: '0',
  boltPattern: '5x9/2',
  pilotBore: '2.38',
  studThread: '1/2-20',
  brakeType: 'electric',
  brakeFlange: '4',
  brakeSize: '10x9/4',
  capacity: '3500',
  springWidth: '7/4',
});
