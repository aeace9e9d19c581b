// Every check, in the order an eye goes over an axle. Adding one is a line here and a file beside it.
import type { Check, CheckId } from '../types.ts';
import { beam, drop, frameRoom } from './beam.ts';
import { brakes } from './brakes.ts';
import { capacity } from './capacity.ts';
import { hubFace } from './hub-face.ts';
import { springCentre } from './spring-centre.ts';
import { springs } from './springs.ts';
import { straight } from './straight.ts';
import { tandem } from './tandem.ts';
import { tyreRating } from './tyre-rating.ts';
import { wheels } from './wheels.ts';

export const checks: readonly Check[] = [
  springCentre,
  hubFace,
  beam,
  drop,
  frameRoom,
  wheels,
  brakes,
  capacity,
  tyreRating,
  tandem,
  springs,
  straight,
];

/** Without these no axle is called a fit; the others are named where they were not looked at. */
export const essential: ReadonlySet<CheckId> = new Set(['springCentre', 'hubFace', 'boltPattern', 'brakes', 'capacity']);

/** Only looked at where the axle itself comes with it: springs on an axle are the exception. */
export const optional: ReadonlySet<CheckId> = new Set([
  'springLength',
  'springType',
  'seatWidth',
  'tandemCapacity',
  'tandemDrop',
]);
