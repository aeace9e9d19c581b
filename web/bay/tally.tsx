// What was heard and what was made of it: the last one large, all of them as a tally that a screen reader follows.
import type { Bay, Line } from './state.ts';

const marks: Record<NonNullable<Line['mark']>, string> = {
  sending: 'on its way',
  kept: 'kept on this device, not sent',
  refused: 'not accepted',
  elsewhere: 'from another device',
};

export function LastHeard({ state }: { state: Bay }) {
  const { view } = state;
  const last = state.last ?? before(view);
  const [lead, ...rest] = (last?.taken ?? '…').split('\n');
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reachable by keyboard
    <section class={`last ${last?.tone ?? ''}`} tabIndex={0} aria-label="Heard last">
      {last ? (
        <>
          {last.heard === '' ? null : (
            <p class="last-heard">
              <span class="last-label">Heard</span> <bdi>{last.heard}</bdi>
            </p>
          )}
          <p class="last-taken" hidden={last.tone === 'ask' && view?.question !== undefined}>
            <span class="last-label">{labelOf(last.tone)}</span> {lead}
            {rest.length > 0 ? <span class="last-rest">{`\n${rest.join('\n')}`}</span> : null}
          </p>
        </>
      ) : null}
    </section>
  );
}

/** What was said on this job before the page was opened. */
function before(view: Bay['view']): Bay['last'] {
  return view?.said ? { turn: '', heard: '', taken: view.said, tone: view.question ? 'ask' : 'answer' } : undefined;
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
      {lines.length > 0 ? <h2>Heard and answered</h2> : null}
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
