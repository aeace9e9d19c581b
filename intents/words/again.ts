// So much more or less than the value said last. Templates as in phrase.ts.

export const moreWords: readonly string[] = [
  '(more|bigger|longer|wider|higher|larger|farther|further|taller|thicker|deeper) [than that]',
  'on top of that',
];

export const lessWords: readonly string[] = ['(less|smaller|shorter|narrower|lower|fewer|thinner|tighter) [than that]'];

export const putWords: readonly string[] = ['(add|put on|tack on)'];

export const takeWords: readonly string[] = ['(take|knock|cut|shave|drop) (off|away)', '(subtract|take|deduct|knock off)'];
