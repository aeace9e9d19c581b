// What is being asked, with an answer under each thumb. The words on a button are what would be spoken.
import type { JobView } from '#wire';

export function Question({ view, onSay }: { view: JobView | null; onSay: (text: string) => void }) {
  if (!view?.question) return null;
  const choices = view.choices ?? [];
  return (
    <section class="question" aria-label="Question">
      <p class="question-words">{view.question}</p>
      <div class="answers">
        {choices.map(({ say, show }) => (
          <button key={say} type="button" class="answer choice" onClick={() => onSay(say)}>
            {show}
          </button>
        ))}
        {view.expects.yesNo ? (
          <>
            <button type="button" class="answer yes" onClick={() => onSay('yes')}>
              <span aria-hidden="true">✓</span> Yes
            </button>
            <button type="button" class="answer no" onClick={() => onSay('no')}>
              <span aria-hidden="true">✗</span> No
            </button>
          </>
        ) : null}
      </div>
    </section>
  );
}
