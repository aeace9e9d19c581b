// How work is told as done beside the words of data/told.json.

/** Said before work is told: "okay, chocked it". In "springs are okay" the word tells. */
export const openingWords: ReadonlySet<string> = new Set(['okay', 'ok', 'so', 'well', 'alright']);

/** Says nothing of the work: may stand anywhere in what is told. */
export const smallWords: ReadonlySet<string> = new Set(
  (
    "i i've ive i'm we we've we're they they're it it's its that that's this these those them is are has have been got all both everything the a an my our of new " +
    'now already just um uh er then'
  ).split(' '),
);

/** Not what is told but what is still to come: "going to chock it", "about to pull the hub". */
export const planWords: ReadonlySet<string> = new Set(
  "yet still almost nearly about going gonna to will i'll we'll let me must should later soon trying half".split(' '),
);

/** Turns what is told round: "not chocked". */
export const denyingWords: ReadonlySet<string> = new Set(
  "not never isn't aren't ain't hasn't haven't didn't don't doesn't wasn't weren't can't cannot couldn't".split(' '),
);
