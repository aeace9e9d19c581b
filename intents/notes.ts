// How a free note reads: part, side, axle, condition, how serious. Server only: the one file that may import compromise, which
// splits the note into clauses and brings words to their roots ("leaked" -> leak).
import nlp from 'compromise';
import { type Lexicon, lexicon } from './lexicon.ts';
import { mend } from './mend.ts';
import { type Token, tokenise } from './tokens.ts';
import type { AxlePosition, NoteReading, Side } from './types.ts';
import { conditionWords, partWords } from './words/conditions.ts';
import { axleWords, sideWords } from './words/where.ts';

type Seriousness = NoteReading['seriousness'];

const parts = lexicon(partWords);
const conditions = lexicon(conditionWords.map((row) => [row, row.said] as const));
const sides = lexicon(sideWords);
const axles = lexicon(axleWords);
const order: readonly Seriousness[] = ['info', 'wear', 'safety'];

/** Reads a note; a defect mentioned in passing comes out with its part and side. Nothing recognised: `info`. */
export function readNote(text: string): NoteReading {
  const clauses = (nlp(text).clauses().json({ text: true }) as readonly { readonly text: string }[]).map((clause) =>
    readClause(clause.text),
  );
  const worst = clauses.reduce<Reading>((left, right) => (rank(right) > rank(left) ? right : left), { seriousness: 'info' });
  const first = (key: 'part' | 'side' | 'axle') => clauses.find((clause) => clause[key] !== undefined)?.[key];
  const part = worst.part ?? first('part');
  const side = (worst.side ?? first('side')) as Side | undefined;
  const axle = (worst.axle ?? first('axle')) as AxlePosition | undefined;
  return {
    seriousness: worst.seriousness,
    ...(part ? { part } : {}),
    ...(side ? { side } : {}),
    ...(axle ? { axle } : {}),
    ...(worst.condition ? { condition: worst.condition } : {}),
  };
}

interface Reading {
  readonly part?: string;
  readonly side?: Side;
  readonly axle?: AxlePosition;
  readonly condition?: string;
  readonly seriousness: Seriousness;
}

const rank = ({ seriousness, condition }: Reading) => order.indexOf(seriousness) * 2 + (condition ? 1 : 0);

function readClause(text: string): Reading {
  const tokens = mend(tokenise(text));
  let found: readonly Token[] | undefined;
  /** Only where the words as they stand say too little: finding roots is the slow part. */
  const roots = (): readonly Token[] => {
    found ??= mend(tokenise(rootsOf(text)));
    return found;
  };
  const part = firstIn(parts, tokens) ?? firstIn(parts, roots());
  const condition = worstIn(tokens) ?? worstIn(roots());
  const side = firstIn(sides, tokens);
  const axle = firstIn(axles, tokens);
  const denied = condition !== undefined && isDenied(tokens);
  return {
    seriousness: condition && !denied ? condition.seriousness : 'info',
    ...(part ? { part } : {}),
    ...(side && side !== 'other' ? { side } : {}),
    ...(axle ? { axle } : {}),
    ...(condition ? { condition: denied ? 'good' : condition.condition } : {}),
  };
}

/** The same clause with its verbs in their plain form. */
function rootsOf(text: string): string {
  const doc = nlp(text);
  doc.verbs().toInfinitive();
  doc.nouns().toSingular();
  return doc.text('normal');
}

/** "no cracks", "isn't leaking", "not bent"; but in "no grease" and "won't latch" the denial is what is wrong. */
function isDenied(tokens: readonly Token[]): boolean {
  for (let at = 0; at < tokens.length; ) {
    const found = conditions.longest(tokens, at);
    if (!found && denials.test(tokens[at]?.word ?? '')) return true;
    if (found?.meaning.condition === 'good' && denials.test(tokens[at]?.word ?? '')) return true;
    at = found?.end ?? at + 1;
  }
  return false;
}

const denials =
  /^(no|not|never|without|none|neither|nor|cannot|nothing)$|n['’]t$|^(is|are|was|were|do|does|did|has|have|had|ca|wo|could|would|should|ai)nt$/;

function firstIn<T>(of: Lexicon<T>, tokens: readonly Token[]): T | undefined {
  for (const at of tokens.keys()) {
    const found = of.longest(tokens, at);
    if (found) return found.meaning;
  }
  return undefined;
}

function worstIn(tokens: readonly Token[]) {
  const found = [...tokens.keys()].flatMap((at) => conditions.longest(tokens, at)?.meaning ?? []);
  return found.reduce<(typeof found)[number] | undefined>(
    (worst, row) => (worst && order.indexOf(worst.seriousness) >= order.indexOf(row.seriousness) ? worst : row),
    undefined,
  );
}
