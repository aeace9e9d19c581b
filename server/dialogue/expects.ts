// What the dialogue waits for: lets a field's name be dropped and narrows what the recogniser listens for.
import type { Expects } from '#intents';
import type { JobRecord } from '#log/events';
import { wanted } from './plan.ts';
import { byId } from './values.ts';

export function expectsOf(job: JobRecord): Expects {
  const asked = job.asked?.valueIds.map((id) => byId(job, id)?.field).filter((field) => field !== undefined) ?? [];
  const facts = job.asked?.fields ?? [];
  const step = job.status === 'open' ? wanted(job).map(({ record }) => record.field) : [];
  return { fields: [...new Set([...facts, ...asked, ...step])], yesNo: job.asked !== undefined && job.asked.about !== 'facts' };
}
