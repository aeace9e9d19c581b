// What was heard and what was made of it: the last one large, all of them as a tally that a screen reader follows.
import type { Bay, Line } from './state.ts';

const marks: Record<NonNullable<Line['mark']>, string> = {
  sending: 'on its way',
  kept: 'kept on this device, not sent',
  refused: 'not accepted',
  elsewhere: 'from another device',
};

export function LastHeard({ state }: { state: Bay }) {
  const { last } = state;
  return (
    <div class={`last ${last?.tone ?? ''}`}>
      {last ? (
        <>
          <p class="last-heard">
            <span class="last-label">Heard</span> <bdi>{last.heard}</bdi>
          </p>
          <p class="last-taken" hidden={last.tone === 'ask' && state.view?.question !== undefined}>
            <span class="last-label">{labelOf(last.tone)}</span> {last.taken ?? '…'}
          </p>
        </>
      ) : null}
    </div>
  );
}

function labelOf(tone: NonNullable<Bay['last']>['tone']): string {
  if (tone === 'ask') return 'Asks';
  if (tone === 'refused') return 'Not taken';
  if (tone === 'kept') return 'Kept here';
  return tone === 'taken' ? 'Taken' : 'Says';
}

/** Lines are only ever added at the end, each in one write: the log role does the announcing. */
export function Tally({ lines }: { lines: readonly Line[] }) {
  return (
    <section class="tally" aria-label="Heard and answered">
      <h2>Heard and answered</h2>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reachable by keyboard */}
      <div role="log" class="tally-lines" tabIndex={0} aria-label="Heard and answered">
        {lines.map((line) => (
          <p key={line.id} class={`tally-line ${line.who} ${line.mark ?? ''}`}>
            <span class="tally-who">{line.who === 'heard' ? 'Heard' : 'Said'}</span> <bdi>{line.text}</bdi>
            {line.mark ? <em class="tally-mark"> ({marks[line.mark]})</em> : null}
          </p>
        ))}
      </div>
    </section>
  );
}
