// A command that was hardly heard is asked about before it is sent: "Did you say: done?"
import type { Hearing } from '../recogniser/index.ts';

export type HeardWell = Extract<Hearing, { readonly ok: true }>;

export type Weighed =
  | { readonly take: HeardWell }
  /** Waits for a yes. */
  | { readonly ask: HeardWell }
  /** It was not that: say it again. */
  | { readonly drop: HeardWell };

/** `open`: what is being asked about. To say it again is a yes; anything else but a yes or a no lets it go. */
export function weighed(open: HeardWell | undefined, heard: HeardWell): Weighed {
  if (open && (heard.answers === 'yes' || heard.text === open.text)) return { take: open };
  if (open && heard.answers === 'no') return { drop: open };
  return heard.band === 'ask' && heard.kind === 'grave' ? { ask: heard } : { take: heard };
}

export const asking = ({ text }: HeardWell): string => `Did you say, ${text}?`;
