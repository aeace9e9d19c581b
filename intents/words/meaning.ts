// How it is asked what a word means. Templates as in phrase.ts.

export const meaningOpeners: readonly string[] = [
  "(what|what's|whats) [is] (a|an)",
  '(what|which) are',
  "(what's|whats|what is|what are) (that|this|these|those)",
  '(what does|what do you mean by|what do they mean by|what is meant by|explain|define|tell me what) [is] [a|an|the]',
];

/** A measurement may be asked for in the same words. */
export const termOpeners: readonly string[] = ["(what's|whats|what is)"];

/** With the article, a measurement is asked for where the word names one. */
export const valueOpeners: readonly string[] = ["(what's|whats|what is) the"];

export const meaningTails: readonly string[] = ['(mean|means|anyway|again|for|is|exactly)'];
