// What was heard, what it was taken to mean, and what was answered: one block a turn.

import { when } from '../shared/when.ts';
import type { TurnTold } from './words.ts';

const marks = { heard: 'Heard', taken: 'Taken', answered: 'Answered', asked: 'Asked', desk: 'Desk', moved: 'Job' } as const;

export function Timeline({ turns }: { turns: readonly TurnTold[] }) {
  return (
    <section class="sheetlike timeline" aria-label="Timeline">
      <h2>Heard, taken, answered</h2>
      <ol class="turns">
        {turns.map(({ turn, at, who, heardBy, told }) => (
          <li key={turn} class="turn">
            <p class="turn-head">
              <time datetime={at}>{when(at)}</time> {who}
              {heardBy ? `, ${heardBy}` : ''}
            </p>
            <dl>
              {told.map(({ mark, text }, index) => (
                <div key={`${turn}${index}`} class={`told ${mark}`}>
                  <dt>{marks[mark]}</dt>
                  <dd>{text}</dd>
                </div>
              ))}
            </dl>
          </li>
        ))}
      </ol>
    </section>
  );
}
