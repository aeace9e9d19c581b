// The beam: the step in chalk, large enough to read from where the work is.
import type { JobSummary, StepView } from '#wire';
import { openWords } from '../shared/open-words.ts';
import type { Bay } from './state.ts';

export function StepPanel({ state, onJob, onSay }: { state: Bay; onJob: (id: string) => void; onSay: (text: string) => void }) {
  const { view } = state;
  if (!view) return <NoJob jobs={state.jobs} onJob={onJob} onSay={onSay} />;
  if (!view.step) {
    return (
      <section class="beam" aria-label="Step">
        <p class="step-say short">{view.status === 'closed' ? 'Job closed.' : 'All steps are done.'}</p>
        <p class="step-show">{view.open.length > 0 ? `${openWords(view.open)}: say "what is open".` : 'Nothing is open.'}</p>
      </section>
    );
  }
  return <Step step={view.step} />;
}

/** Short steps may be larger: the plate is filled either way. */
function sizeOf({ length }: string): string {
  return length <= 32 ? 'short' : length <= 70 ? 'medium' : 'long';
}

function Step({ step }: { step: StepView }) {
  return (
    <section class="beam" aria-label="Step">
      <p class="step-where">
        {step.number} of {step.of} · {step.procedure}
        {step.where ? ` · ${step.where}` : ''}
      </p>
      <p class={`step-say ${sizeOf(step.say)}`}>{step.say}</p>
      {step.record.length > 0 ? (
        <ul class="step-record" aria-label="To be recorded">
          {step.record.map(({ field, label, have, gate }) => (
            <li key={field} class={have ? 'have' : 'want'}>
              {label}: {have ? 'have it' : gate ? 'needed' : 'wanted'}
            </li>
          ))}
        </ul>
      ) : null}
    </section>
  );
}

/** Outside all that scrolls: whoever sees the page sees what can hurt. */
export function Cautions({ state }: { state: Bay }) {
  const cautions = state.view?.step?.cautions ?? [];
  if (cautions.length === 0) return null;
  return (
    <section class="cautions" aria-label="Caution">
      {cautions.map((caution) => (
        <p key={caution}>
          <strong>Caution.</strong> {caution}
        </p>
      ))}
    </section>
  );
}

/** What stands behind the step, below the drawing: the whole instruction, why, with what, and who says so. */
export function StepMore({ state }: { state: Bay }) {
  const step = state.view?.step;
  if (!step) return null;
  return (
    <section class="plate" aria-label="About this step">
      <p class="step-show">{step.show}</p>
      <details class="step-more">
        <summary>Why, tools and parts</summary>
        <p>{step.why}</p>
        {step.tools.length > 0 ? <p>Tools: {step.tools.join(', ')}.</p> : null}
        {step.parts.length > 0 ? <p>Parts: {step.parts.join(', ')}.</p> : null}
        <p class="source">Source: {step.source}</p>
      </details>
    </section>
  );
}

function NoJob({
  jobs,
  onJob,
  onSay,
}: {
  jobs: readonly JobSummary[];
  onJob: (id: string) => void;
  onSay: (text: string) => void;
}) {
  return (
    <section class="beam" aria-label="Step">
      <p class="step-say medium">No job open.</p>
      <p class="step-show">Say "open job", and what came in: "open job, blue flatbed, bent axle". Or take up one of these:</p>
      <ul class="resume">
        <li>
          <button type="button" class="big" onClick={() => onSay('open job')}>
            Open a new job
          </button>
        </li>
        {jobs.map((job) => (
          <li key={job.id}>
            <button type="button" class="big" onClick={() => onJob(job.id)}>
              {job.title}
              <small>
                {job.id} · {job.openPoints} open
              </small>
            </button>
          </li>
        ))}
      </ul>
    </section>
  );
}
