// The browser's own recogniser, by choice: on this device where the browser offers that, else by its maker's service.
import { fields } from '#data';
import type { Expects } from '#intents';
import { wordList } from '#intents/grammar';
import { read } from './engine/language.ts';
import { fault } from './faults.ts';
import { type Guessed, gather, type Results } from './free-text.ts';
import type { Hearing, Recogniser, RecogniserEvents, Why } from './types.ts';

/** As far as it is used here: https://webaudio.github.io/web-speech-api/ */
interface SpeechRecognition {
  lang: string;
  continuous: boolean;
  interimResults: boolean;
  maxAlternatives: number;
  processLocally?: boolean;
  phrases?: unknown[];
  onstart: (() => void) | null;
  onresult: ((event: { readonly results: Results }) => void) | null;
  onerror: ((event: { readonly error: string }) => void) | null;
  onend: (() => void) | null;
  start(): void;
  stop(): void;
  abort(): void;
}

interface Kind {
  new (): SpeechRecognition;
  available?(wish: { langs: string[]; processLocally: boolean }): Promise<string>;
  install?(wish: { langs: string[]; processLocally: boolean }): Promise<boolean>;
}

interface Offered {
  readonly SpeechRecognition?: Kind;
  readonly webkitSpeechRecognition?: Kind;
  readonly SpeechRecognitionPhrase?: new (phrase: string, boost: number) => unknown;
}

const offered = globalThis as Offered;
const here = { langs: ['en-US'], processLocally: true };
/** A service that does not answer must not keep the page waiting. */
const patienceMs = 4000;
const mostHints = 1000;

export function createBrowserEars({ onState, onLevel }: RecogniserEvents): Recogniser {
  let kind: Kind | undefined;
  /** Words of the trade; undefined where the browser does not hear on this device. */
  let hints: readonly string[] | undefined;
  let ears: SpeechRecognition | undefined;
  let answered: Promise<Hearing> | undefined;
  let answer: (hearing: Hearing) => void = () => undefined;

  function begin(made: SpeechRecognition, expects: Expects): void {
    let heard: ReturnType<typeof gather>;
    let trouble: Why = 'silence';
    Object.assign(made, { lang: 'en-US', continuous: true, interimResults: true, maxAlternatives: 4 });
    if (hints) made.processLocally = true;
    const { SpeechRecognitionPhrase: Phrase } = offered;
    if (hints && Phrase && 'phrases' in made)
      made.phrases = [...namesOf(expects), ...hints].slice(0, mostHints).map((hint) => new Phrase(hint, 2));
    made.onresult = ({ results }) => {
      heard = gather(results) ?? heard;
    };
    made.onerror = ({ error }) => {
      trouble = troubles[error] ?? 'failed';
    };
    made.onend = () => answer(heard ? meant(heard, expects) : fault(trouble));
    made.start();
  }

  return {
    async load(onProgress) {
      kind = offered.SpeechRecognition ?? offered.webkitSpeechRecognition;
      if (!kind) throw new Error('This browser has no hearing of its own. Choose the built-in one in Settings; typing works.');
      onState('loading');
      if (await offersHere(kind)) hints = wordList({ fields: fields.map(({ id }) => id), yesNo: true });
      onProgress(1);
      onState('ready');
    },
    press(expects) {
      ears?.abort();
      if (!kind) return Promise.resolve(fault('failed'));
      const made = new kind();
      ears = made;
      answered = new Promise((resolve) => {
        answer = resolve;
      });
      onState('listening');
      return new Promise((resolve) => {
        made.onstart = () => resolve(undefined);
        void answered?.then((hearing) => resolve(hearing.ok ? undefined : hearing));
        try {
          begin(made, expects);
        } catch {
          resolve(fault('failed'));
        }
      });
    },
    async release() {
      if (!ears || !answered) return fault('cancelled');
      onState('hearing');
      onLevel(0);
      ears.stop();
      const timer = setTimeout(() => answer(fault('noService')), patienceMs);
      const hearing = await answered;
      clearTimeout(timer);
      ears = undefined;
      onState('ready');
      return hearing;
    },
    cancel() {
      answer(fault('cancelled'));
      ears?.abort();
      ears = undefined;
      onState('ready');
    },
  };
}

function meant(guessed: Guessed, expects: Expects): Hearing {
  const { kind, answers } = read(guessed.text, expects);
  return { ...guessed, kind, answers };
}

const troubles: Readonly<Record<string, Why>> = {
  'no-speech': 'silence',
  'audio-capture': 'noMicrophone',
  'not-allowed': 'micRefused',
  'service-not-allowed': 'noService',
  'language-not-supported': 'noService',
  network: 'noService',
  aborted: 'cancelled',
};

async function offersHere(made: Kind): Promise<boolean> {
  try {
    const state = await made.available?.(here);
    return state === 'available' || (state === 'downloadable' && (await made.install?.(here)) === true);
  } catch {
    return false;
  }
}

const namesOf = (expects: Expects): string[] =>
  fields.filter(({ id }) => expects.fields.includes(id)).flatMap(({ said }) => said);
