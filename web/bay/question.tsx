// What is being asked, with an answer under each thumb. The words on a button are what would be spoken.
import type { Bay } from './state.ts';

interface Props {
  readonly view: Bay['view'];
  readonly doubtful: Bay['doubtful'];
  readonly onSay: (text: string) => void;
  readonly onDoubt: (right: boolean) => void;
}

export function Question({ view, doubtful, onSay, onDoubt }: Props) {
  if (doubtful) return <DidYouSay text={doubtful.text} onAnswer={onDoubt} />;
  if (!view?.question) return null;
  // What was said with it shows its figures; the question alone is written as it is spoken. A yes answers no choice.
  const words = view.said ?? view.question;
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
        {view.expects.yesNo && choices.length === 0 ? (
          <button type="button" class="answer yes" onClick={() => onSay('yes')}>
            <span aria-hidden="true">✓</span> Yes
          </button>
        ) : null}
        {view.expects.yesNo ? (
          <button type="button" class="answer no" onClick={() => onSay('no')}>
            <span aria-hidden="true">✗</span> No
          </button>
        ) : null}
      </div>
    </section>
  );
}

function DidYouSay({ text, onAnswer }: { text: string; onAnswer: (right: boolean) => void }) {
  return (
    <section class="question doubtful" aria-label="Question">
      <p class="question-words">
        Did you say: <bdi>{text}</bdi>?
      </p>
      <div class="answers">
        <button type="button" class="answer yes" onClick={() => onAnswer(true)}>
          <span aria-hidden="true">✓</span> Yes
        </button>
        <button type="button" class="answer no" onClick={() => onAnswer(false)}>
          <span aria-hidden="true">✗</span> No
        </button>
      </div>
    </section>
  );
}

/** Of a long question the first line is what it is about and the last what is asked: those are read from afar. */
function Words({ words }: { words: string }) {
  const lines = words.split('\n');
  const [lead = ''] = lines;
  if (words.length <= 60 || lines.length < 3 || lead.length > 60)
    return <p class={`question-words ${words.length > 110 ? 'long' : ''}`}>{words}</p>;
  return (
    <div class="question-words">
      <p>{lead}</p>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reachable by keyboard */}
      <p class="question-why" tabIndex={0}>
        {lines.slice(1, -1).join('\n')}
      </p>
      <p>{lines.at(-1)}</p>
    </div>
  );
}
