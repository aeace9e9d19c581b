// Words that carry no value: said and heard, and claimed here so that nothing else need be.

/** May stand anywhere between the parts of a measurement. */
export const fillers: ReadonlySet<string> = new Set(
  (
    'is are was were be at of the a an on in for to it its that this these those there here my our your his her their i we you he she they with by ' +
    'um uh er erm ah hmm mm like so well okay ok alright now then got get gets have has had measured measures measuring measure reads read reading ' +
    "comes came come coming out says say shows showing looks look see about i've i'll we'll you'll he'll gonna gotta it's that's i'm we're we've there's you're let's what's " +
    'torqued set sits sitting runs running weighs please just from off up down over all right as per and or but one piece size sized number value ' +
    'cold dial indicator draws pulls bolt hole holes mark put down log record write enter call called give gives me us him go goes going do does did'
  ).split(' '),
);

/** Said before a statement begins. */
export const interjections: ReadonlySet<string> = new Set(
  'okay ok so well now um uh er erm ah hmm please like just alright all right and hey then'.split(' '),
);

/** Ends one statement and begins the next. */
export const separators: ReadonlySet<string> = new Set([',', '.', ';', ':', '!', '?', 'then']);
