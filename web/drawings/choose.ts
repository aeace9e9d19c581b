// Which picture helps now.
import type { JobView } from '#wire';
import { alignment } from './alignment.ts';
import { axleFront } from './axle.ts';
import { tighteningOrder } from './sequence.ts';
import type { Picture } from './shapes.ts';

/** The order or the alignment while it is the matter in hand, else the axle. */
export function pictureFor(view: JobView): Picture {
  if (view.sequence) return tighteningOrder(view.sequence);
  if (view.alignment) return alignment(view.alignment);
  return axleFront(view);
}
