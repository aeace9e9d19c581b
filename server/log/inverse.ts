// What would take an event back, as further events. Pure; the fold keeps them so that a turn can be undone without deleting anything.
import type { EventBody, ValueId } from './events.ts';
import type { JobRecord } from './fold.ts';

const undone = { reason: 'undone' };

/** Events that restore `job` after `body` was folded into it; none where there is nothing to take back. */
export function inverse(job: Omit<JobRecord, 'trail'>, body: EventBody): readonly EventBody[] {
  switch (body.kind) {
    case 'jobRenamed':
      return [{ kind: 'jobRenamed', title: job.title }];
    case 'valueHeard':
      return [{ kind: 'valueStruck', id: body.value.id, ...undone }];
    case 'valueConfirmed':
    case 'valueCorrected':
    case 'valueStruck':
      return restored(job, body.id);
    case 'stepShown':
      return job.currentStep === undefined ? [] : [{ kind: 'stepShown', step: job.currentStep }];
    case 'stepDone':
    case 'stepSkipped':
    case 'stepReopened':
      return stepAsItWas(job, body.step);
    case 'noteTaken':
      return [{ kind: 'pointClosed', id: body.id, ...undone }];
    case 'candidateChosen':
      return [job.candidate ? { kind: 'candidateChosen', ...job.candidate } : { kind: 'candidateDropped' }];
    case 'reminderSet':
      return [{ kind: 'reminderDone', id: body.id }];
    case 'orderReached':
      return [{ kind: 'orderReached', what: body.what, place: job.reached?.what === body.what ? job.reached.place : 0 }];
    case 'paused':
      return [{ kind: 'resumed' }];
    case 'resumed':
      return job.status === 'paused' ? [{ kind: 'paused' }] : [];
    case 'closed':
      return [{ kind: 'reopened', ...undone }];
    default:
      return [];
  }
}

function restored({ values }: Pick<JobRecord, 'values'>, id: ValueId): readonly EventBody[] {
  const status = values.find((value) => value.id === id)?.status;
  return status === 'heard' || status === 'confirmed' ? [{ kind: 'valueRestored', id, to: status }] : [];
}

function stepAsItWas({ steps }: Pick<JobRecord, 'steps'>, key: string): readonly EventBody[] {
  const before = steps.find(({ step }) => step === key);
  if (!before) return [{ kind: 'stepReopened', step: key }];
  return before.status === 'done'
    ? [{ kind: 'stepDone', step: key }]
    : [{ kind: 'stepSkipped', step: key, reason: before.reason ?? '' }];
}
