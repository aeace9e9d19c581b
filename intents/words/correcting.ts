// Words that take something back. Templates as in phrase.ts.

/** Followed by a value, they correct; alone, each means what `alone` says. */
export const correctionWords: readonly (readonly ['deny' | 'strike' | 'pause' | 'nothing', readonly string[]])[] = [
  [
    'deny',
    [
      '(no|nope|nah) [no] [no]',
      "(no|nope) (that is|that's|it is|it's) (wrong|not right)",
      "that's (wrong|not right)",
      'that is (wrong|not right)',
      'wrong',
    ],
  ],
  ['strike', ['[no] (scratch|strike|forget|cancel|delete) (that|it|the last one|the last)', '[no] (scratch|strike) [the] last']],
  ['pause', ['[no] (wait|hold on|hang on)', '(wait|hold on) a (minute|second|sec)', 'wait wait']],
  [
    'nothing',
    [
      '[no] [wait] [actually] (make|call) (that|it)',
      '[no] [sorry] (i|we) (said|meant|mean|should have said|meant to say)',
      '[no] (actually|correction|sorry|oops|whoops|rather|instead|my mistake|my bad|excuse me|apologies)',
      "(no|no wait|wait|actually|no actually|sorry|no sorry) (it is|it's|that is|that's|its|it was) [actually]",
      '[no] [it] (should be|should read|should have been|ought to be|needs to be|was supposed to be)',
      '[no] change (that|it) to',
      "[no] (let us|lets|let's) (call|make) (it|that)",
      '[no] try',
      '[no] (scratch|strike|forget) (that|it) (make|call) (that|it)',
      '(or rather|i mean to say|to be exact)',
      "[no] [sorry] [i|we] (misread|misspoke|read it wrong|said it wrong|read that wrong) [it|that|the tape] [it's|it is|its]",
      '[no] correct that to',
      '[no] fix that to',
    ],
  ],
];

/** Followed by a value, they deny it: "not seventy-two", "instead of fifteen". */
export const denialWords: readonly string[] = [
  '[and] not',
  "(isn't|ain't|wasn't|aint|isnt)",
  '(is|was) not',
  '(instead of|rather than)',
  'never [said]',
];

/** "change hub face to seventy-three": the field comes between. */
export const changeWords: readonly string[] = ['(change|correct|fix|update|revise|amend|set|switch|alter) [my|the|that]'];

/** The number comes from the part's maker, not from the tape. */
export const makerWords: readonly string[] = [
  '[the] [part] (maker|manufacturer|makers|manufacturers|builder|factory) (says|said|calls for|wants|gives|lists|spec is|specifies|specs)',
  '[the] (book|manual|sheet|spec sheet|catalogue|catalog|spec|chart) (says|said|calls for|wants|gives|lists|reads|shows)',
  '[the] [data|rating|certification] (label|tag|plate|placard|decal|sticker) [(on|off|from) the (axle|trailer|tongue|frame|beam|tube|coupler|hub)] (says|said|calls for|gives|lists|reads|shows|has|is stamped)',
  'according to [the] [part] (maker|manufacturer|book|manual|sheet|label|tag|plate|chart)',
  "(maker's|makers|manufacturer's|manufacturers|published|factory|book) (value|figure|number|spec|torque) [is]",
  "(maker's|makers|manufacturer's|manufacturers)",
];
