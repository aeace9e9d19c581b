// The bay as a whole: it reads the state and calls the controller's hands; it decides nothing.
import type { JobView, Settings as Shop } from '#wire';
import { pictureFor } from '../drawings/choose.ts';
import { Drawing } from '../drawings/picture.tsx';
import { useStore } from '../shared/store.ts';
import { JobCard } from './card.tsx';
import { Question } from './question.tsx';
import { Settings } from './settings.tsx';
import { bay } from './state.ts';
import { Cautions, StepMore, StepPanel } from './step-panel.tsx';
import { Strip } from './strip.tsx';
import { TalkBar } from './talk-bar.tsx';
import { LastHeard, Tally } from './tally.tsx';
import { TypedLine } from './typed-line.tsx';

export interface Hands {
  readonly say: (text: string) => void;
  readonly takeJob: (id: string) => void;
  readonly saveShop: (change: Partial<Shop>) => void;
  readonly tryVoice: () => void;
  readonly openSettings: () => void;
  readonly closeSettings: () => void;
  readonly dismiss: () => void;
  readonly settleDoubt: (right: boolean) => void;
  readonly hold: { readonly down: () => void; readonly up: () => void; readonly lost: () => void };
}

export function BayView({ hands }: { hands: Hands }) {
  const state = useStore(bay);
  const asks = state.view?.question !== undefined || state.doubtful !== undefined;
  // An order or a move is the matter in hand: it is drawn large, beside the step.
  const leads = Boolean(state.view?.sequence || state.view?.alignment);
  return (
    <>
      <Strip state={state} onSettings={hands.openSettings} />
      <Cautions state={state} />
      <main class={`floor ${asks ? 'asking' : ''} ${leads ? 'leads' : ''} ${state.view ? '' : 'idle'}`}>
        <h1 class="unseen">The bay</h1>
        <div class="work">
          <StepPanel state={state} onJob={hands.takeJob} onSay={hands.say} />
          {leads ? null : <Picture view={state.view} onSay={hands.say} />}
          <StepMore state={state} />
        </div>
        <div class="board">
          {leads ? <Picture view={state.view} onSay={hands.say} /> : null}
          {state.view || state.kept.length > 0 ? <JobCard view={state.view} kept={state.kept} /> : null}
          <Tally lines={state.lines} />
        </div>
      </main>
      <footer class="hand">
        {state.notice ? (
          <p class="notice" role="alert">
            {state.notice}{' '}
            <button type="button" class="plain" onClick={hands.dismiss}>
              Seen
            </button>
          </p>
        ) : null}
        <div class={`hand-lines ${asks ? 'asking' : ''}`}>
          <LastHeard state={state} />
          <Question view={state.view} doubtful={state.doubtful} onSay={hands.say} onDoubt={hands.settleDoubt} />
          <TypedLine giveBack={state.giveBack} onSay={hands.say} />
        </div>
        <TalkBar voice={state.voice} hold={hands.hold} />
      </footer>
      {state.settingsOpen ? (
        <Settings settings={state.settings} onShop={hands.saveShop} onTry={hands.tryVoice} onClose={hands.closeSettings} />
      ) : null}
    </>
  );
}

function Picture({ view, onSay }: { view: JobView | null; onSay: (text: string) => void }) {
  if (!view) return null;
  return (
    <figure class="picture">
      <Drawing picture={pictureFor(view)} />
      {view.sequence ? (
        <button type="button" class="plain" onClick={() => onSay('next nut')}>
          Next nut
        </button>
      ) : null}
    </figure>
  );
}
