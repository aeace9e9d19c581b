// So much more or less than the value said last. Templates as in phrase.ts.

export const moreWords: readonly string[] = [
  '(more|bigger|longer|wider|higher|larger|farther|further|taller|thicker|deeper) [than that]',
];

export const lessWords: readonly string[] = ['(less|smaller|shorter|narrower|lower|fewer|thinner|tighter) [than that]'];

export const putWords: readonly string[] = ['(add|tack on)'];

export const takeWords: readonly string[] = ['(take|knock|cut|shave) (off|away)', '(subtract|take|deduct|knock off)'];

/** One of these words stands in whatever leans on a value before. */
export const leaningWords: ReadonlySet<string> = new Set(
  'more bigger longer wider higher larger farther further taller thicker deeper less smaller shorter narrower lower fewer thinner tighter add tack take knock cut shave subtract deduct same ditto likewise too also well matches change different'.split(
    ' ',
  ),
);
