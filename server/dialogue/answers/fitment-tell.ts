// One answer, put twice: spoken and shown from the same lines.
import type { FieldId } from '#data';
import type { Answer, Know } from '../types.ts';
import { mannerOf, sentence } from '../words.ts';
import { type Voice, voiceOf } from './fitment-say.ts';

/** What is said of a thing: `always` is spoken and shown, `more` is only shown. */
export interface Lines {
  readonly always: readonly (string | undefined)[];
  readonly more?: readonly (string | undefined)[];
}

const clean = (lines: readonly (string | undefined)[] = []): string[] =>
  lines.filter((line) => line !== undefined && line !== '').map(String);

export function tell(know: Know, code: string, lines: (voice: Voice) => Lines, rest: Partial<Answer> = {}): Answer {
  const manner = mannerOf(know.shop);
  const spoken = lines(voiceOf(manner, true));
  const shown = lines(voiceOf(manner, false));
  return {
    code,
    speak: clean(spoken.always)
      .map((line) => `${sentence(line)}.`)
      .join(' '),
    show: clean([...shown.always, ...(shown.more ?? [])])
      .map(sentence)
      .join('\n'),
    sources: rest.sources ?? [],
    rests: rest.rests ?? [],
    missing: rest.missing ?? [],
    ...(rest.caution === undefined ? {} : { caution: rest.caution }),
    ...(rest.events === undefined ? {} : { events: rest.events }),
    ...(rest.asks ? { asks: rest.asks } : {}),
  };
}

/** "Tell me spring width and frame width." */
export function wanting(fields: readonly FieldId[], voice: Voice): string | undefined {
  const names = [...new Set(fields)].slice(0, 3).map((field) => voice.field(field));
  if (names.length === 0) return undefined;
  const last = names.pop() ?? '';
  return `tell me ${names.length > 0 ? `${names.join(', ')} and ` : ''}${last}`;
}

/** A number from floating point, for the eye: "27.1". */
export const shown = (value: number, places: number): string => value.toFixed(places);
