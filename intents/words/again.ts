// So much more or less than the value said last. Templates as in phrase.ts.

export const moreWords: readonly string[] = [
  '(more|bigger|longer|wider|higher|larger|farther|further|taller|thicker|deeper) [than that]',
];

export const lessWords: readonly string[] = ['(less|smaller|shorter|narrower|lower|fewer|thinner|tighter) [than that]'];

export const putWords: readonly string[] = ['(add|tack on)'];

export const takeWords: readonly string[] = ['(take|knock|cut|shave) (off|away)', '(subtract|take|deduct|knock off)'];

/** The value said last belongs elsewhere: "sorry, that was the rear axle", "I meant the left". */
export const movedWords: readonly string[] = [
  "[no] [sorry|wait|oops|whoops] [,] (that was|that is|that's|it was|those were|they were|that should be|that should have been) [actually] (the|on|on the|for the|from the)",
  '[no] [sorry|wait|oops|whoops] [,] (i meant|i mean|make that|make it|call that) [the|on the|for the]',
];

/** One of these words stands in whatever leans on a value before. */
export const leaningWords: ReadonlySet<string> = new Set(
  'more bigger longer wider higher larger farther further taller thicker deeper less smaller shorter narrower lower fewer thinner tighter add tack take knock cut shave subtract deduct same ditto likewise too also well matches change different'.split(
    ' ',
  ),
);
