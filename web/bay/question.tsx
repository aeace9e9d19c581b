// What is being asked, with an answer under each thumb. The words on a button are what would be spoken.
import type { Bay } from './state.ts';

export function Question({ state, onSay }: { state: Bay; onSay: (text: string) => void }) {
  const { view, last } = state;
  if (!view?.question) return null;
  // The reply that asks shows its figures; the question alone is written as it is spoken.
  const words = last?.tone === 'ask' && last.taken ? last.taken : view.question;
  const choices = view.choices ?? [];
  return (
    <section class="question" aria-label="Question">
      <Words words={words} />
      <div class="answers">
        {choices.map(({ say, show }) => (
          <button key={say} type="button" class="answer choice" onClick={() => onSay(say)}>
            {show}
          </button>
        ))}
        {view.expects.yesNo ? (
          <>
            {view.ownWord ? null : (
              <button type="button" class="answer yes" onClick={() => onSay('yes')}>
                <span aria-hidden="true">✓</span> Yes
              </button>
            )}
            <button type="button" class="answer no" onClick={() => onSay('no')}>
              <span aria-hidden="true">✗</span> No
            </button>
          </>
        ) : null}
      </div>
    </section>
  );
}

/** Of a long question the first line is what it is about: that is what is read from afar. */
function Words({ words }: { words: string }) {
  const [lead = '', ...rest] = words.split('\n');
  if (words.length <= 60 || rest.length === 0 || lead.length > 60)
    return <p class={`question-words ${words.length > 110 ? 'long' : ''}`}>{words}</p>;
  return (
    <p class="question-words long">
      <b class="question-lead">{lead}</b>
      {rest.join('\n')}
    </p>
  );
}
