// Commands in shop words. Templates as in phrase.ts; <rest> is kept verbatim.
import type { CommandName } from '../types.ts';

export interface CommandWords {
  readonly name: CommandName;
  readonly said: readonly string[];
}

/** After a no. */
const denied =
  "(no|that's wrong|that is wrong|it is not|it's not|that's not right|that is not right|not right|wrong|it isn't|it does not|it doesn't|sir|don't|do not|not yet|that is not it|that's not it)";

export const commandWords: readonly CommandWords[] = [
  {
    name: 'next',
    said: [
      'next [step|one|up] [please]',
      '(go|move|carry) on [to the next [step|one]]',
      'go ahead',
      '(go to|on to|give me|show me) the next [step|one|thing]',
      'keep going',
      'continue',
      'move along',
      'next thing',
      "let's (go on|move on|keep going)",
      'ready for the next [step|one]',
    ],
  },
  {
    name: 'nextNut',
    said: [
      '[on to|go to|give me|show me] [the] next (nut|lug|lug nut|wheel nut|bolt|u bolt|stud|leg)',
      '(that|this) (nut|lug|bolt|leg) is done',
    ],
  },
  {
    name: 'back',
    said: [
      '[go] back [one|a step|one step|up|up one|to the last step|to the last one]',
      'previous [step|one]',
      '(step|go) back [one|a step]',
      'go to the previous [step|one]',
      'last step',
      'back up [one|a step]',
    ],
  },
  {
    name: 'goTo',
    said: [
      '(go|skip|jump|move|get) [ahead|on|forward|straight|over|down|right] to [the] <rest>',
      '(take me|bring me) to [the] <rest>',
      'go back to [the] <rest>',
    ],
  },
  {
    name: 'repeat',
    said: [
      'repeat [that|it|the step|please|that please|that one]',
      'say (that|it) (again|one more time|once more)',
      '(come|run that by me|tell me) again',
      'again [please]',
      'one more time',
      'what was that [again]',
      '(what|pardon|come again|sorry what|huh|eh)',
      'what did you say',
      "(i|i'm) (did not|didn't|missed) (that|catch that|hear that|get that|hear you)",
      'i did not (catch|hear|get) that',
      "i (didn't|did not) (catch|hear|get) (that|you|it)",
      'once more',
      'say again',
      'read that step again',
      'repeat the last one',
      'which [one] [was that]',
    ],
  },
  {
    name: 'slower',
    said: [
      '[a bit|a little|go|say it|say that|talk|speak] slower [please]',
      'slow (down|it down|up)',
      '(too|not so) fast',
      'slowly [please]',
      "you're going too fast",
    ],
  },
  {
    name: 'readBack',
    said: [
      'read (it|that|them|everything|all of it|it all|them all|that all|all that|the numbers|my numbers|the list|the measurements|all the numbers|all of that|those) back [to me] [again]',
      'read back [everything|all of it|the numbers|the measurements|what you have|what you have got|what we have]',
      'read me (back|the numbers|the measurements|what you have|what you have got|everything|the list|my numbers)',
      'what did i (say|tell you|give you|call out) [so far|last|just now]',
      'what did i just say',
      'did you (get|catch|hear|write|take) (that|it|all that) [down]',
      'play (it|that) back',
      'give (it|that|them) back to me',
      'say it all back',
      'run through (it|the numbers|them|the list) [again]',
      'go over (it|the numbers|them|the list) [again]',
      "what (have|do|'ve) (you|we) (got|have) (so far|down|written down|recorded)",
      "what've (you|we) got [so far|down|written down]",
      "(tell|give|show) me (what|everything|all) (you|you've|we|we've) [have] [got|written down]",
      'let me hear (it|them|the numbers)',
    ],
  },
  {
    name: 'undo',
    said: [
      'undo [that|it|the last [one|thing|step|value]|that last [one|thing]|last [one]]',
      'take (that|it|the last one|that one) back',
      'take back (that|the last one)',
      'put it back (how|the way) it was',
    ],
  },
  {
    name: 'confirm',
    said: [
      '(yes|yeah|yep|affirmative|correct|right|confirmed|confirm|okay|ok) [sir|it is|that is right|that is it]',
      "(yes|yeah|yep|yup|ok|okay|sure) (yes|yeah|it is|that is right|that's right|that's it|that is correct|that's correct|it does|sir|please|do it|correct|go ahead|sounds good|looks good|good)",
      "[(yes|yeah|yep|yup|ok|okay|sure)] (that is|that's|thats) (right|correct|it|good|fine|the one|affirmative|what i said|what i want)",
      '[you] got it',
      '(looks|sounds) (good|right|fine|about right)',
      'all good',
      'good [enough|to go|deal]',
      'confirm (it|that|that one|them|all|the last one)',
      'you bet',
      'fine',
      'perfect',
      'spot on',
      'save (it|that)',
      'keep (it|that|that one)',
      "that'll do",
      'that will do',
      'yes confirm',
      'do it',
      'accept [it|that]',
      'sounds like it',
      'of course',
      '(yup|yea|aye|exactly|absolutely|sure|definitely|uh huh|mm hmm|roger|copy|ten four|check) [sir|it is|that is right|that is it]',
    ],
  },
  {
    name: 'deny',
    said: [
      '(no|nope|negative|wrong) [sir|thanks|thank you|way|it is not]',
      `(no|nope) ${denied}`,
      "(that is|that's|thats) (wrong|not right|not correct|not it|incorrect|not what i said|not what i want)",
      'not right',
      '(nah|incorrect) [sir|thanks|thank you|way|it is not]',
      `nah ${denied}`,
      "i (did not|didn't) say that",
      'no way',
      'nothing like it',
      'not that',
      'not that one',
      'no good',
      'do not (save|keep) (that|it)',
      "(don't|dont) (save|keep|do) (that|it)",
    ],
  },
  {
    name: 'done',
    said: [
      '(done|finished|complete|completed|all set|ready)',
      "(that's|that is|it's|it is|all|step is|i'm|i am|we're|we are|this one is|that one is|this is|thats|job is) (done|finished|complete|all done|taken care of)",
      "(that's|that is|it's) (all|in|on|torqued|tight|set)",
      '(done|finished) [with] (that|it|this|this step|that step|that one|this one|the step)',
      'got (it|that) done',
      'check that off',
      'mark (it|that|this step|this|the step) [as] (done|complete|finished)',
      'step (done|complete|finished)',
      'that one is done',
      'i did (that|it)',
      "(i've|i have) (done|finished) (that|it)",
      'finished up',
      'tick that off',
    ],
  },
  {
    name: 'skip',
    said: [
      'skip [that|it|this|the|this step|that step|this one|that one|the step|ahead|over it|over that] [<field>] [because <rest>] [for now]',
      'skip [over] (it|that|this|this one|that one|the step|this step) [,] [because|since|as|cause] <rest>',
      'skip <rest>',
      '(come|get) back to (it|that|this|that one|this one) [later]',
      'pass [on that|on it|on this|on that one]',
      '(leave|do) (it|that|that one|this one) (for later|for now|later|out)',
      "(can't|cannot|can not|could not|couldn't) (do|get|reach|measure|see|read) (it|that|this|that one)",
      'never mind (that|that one|this one|the step)',
      'move past (it|that|this)',
      'not doing that one',
    ],
  },
  {
    name: 'pause',
    said: [
      '(hold on|hang on|wait|hold up|wait up|hold it|one moment|just a moment|give me a moment|give me a minute|give me a second|give me a sec|give it a minute|just a minute|just a second|just a sec|one second|one sec|one minute|stand by|standby|pause|stop|hush|quiet|stop talking|shut up|be quiet|stop listening|take five|time out|back in a minute|be right back|hang tight|stay there) [please] [for me|a minute|a second|a sec|a moment|a bit|for a minute|for a second|there|right there|please|a tick]',
      'pause [the] [axle|hub|trailer] job',
      '(wait|hold) for me',
      'put (it|this|that|the job|this job|the axle job|the hub job|the trailer) on hold',
      'put the <rest> on hold',
      '(park|pause|hold) (it|this|this job|the job|this one)',
      "i'll be (back|right back)",
      'i will be (back|right back)',
      'leave it there',
      'gotta take this call',
      'i have to take (this|a) call',
      'let me (think|look|see|check|grab a tape|find my tape|get my tape|get a light|get the tape)',
    ],
  },
  {
    name: 'resume',
    said: [
      '(resume|unpause|start again|pick up where we left off|pick it up where we left off) [[the] (job|axle job|hub job)]',
      "(i'm|i am|we're|we are) back",
      'back to work',
      "(let's|let us) (pick it up|pick it back up|pick that back up|pick up where we left off|get back to it|get back to work|carry on|resume)",
      '(resume|go back to|switch to|back to|switch over to|open up|pull up|reopen) (the|that|my) <rest>',
      '(resume|go back to|switch to|back to|switch over to|go to|pull up|reopen) (job|job number|ticket) <rest>',
      "(okay|ok|all right|alright) i'm (back|ready)",
      "(i'm|i am) ready",
      'where were we',
      'start listening',
      'wake up',
    ],
  },
  {
    name: 'openJob',
    said: [
      '(open|start|begin|create|make|set up|new|open up|start up) [up] [me] (a|the|another|an) (new|fresh|job|new job|axle job|hub job|inspection|repair order|work order|ticket) [for] [a|an|the] [<rest>]',
      '(open|start|begin|create) [a] [new] (job|ticket|work order|repair order|inspection|axle job|hub job|axle replacement|hub service|bearing service) [for|on] [a|an|the] [<rest>]',
      'new (job|ticket|work order|repair order|trailer|customer) [for|on] [a|an|the] [<rest>]',
      '(next|another) (trailer|job|customer|truck) [is] [for] [a|an|the] [<rest>]',
    ],
  },
  {
    name: 'closeJob',
    said: [
      '(close|finish|end|complete|wrap up|close out|close up|sign off|finish up|button up|shut) [out] [up] (the|this|that|my) [axle|hub|trailer] (job|ticket|work order|repair order|inspection|one)',
      '(close|wrap|finish) (it|this|this one|this job|the job|that job) (up|out)',
      '(close|end|finish) job',
      'job (done|finished|complete)',
      'call (the|this|that) job (done|finished|complete)',
      "that's the job [done]",
      "[(we're|we are|i'm|i am)] (done|finished|all done) (here|for today|with this trailer|with this job|with the job|with the trailer)",
      "(that is|that's|thats) it for this (one|job|trailer)",
    ],
  },
  {
    name: 'renameJob',
    said: ['(call|name|rename|title) (this|the|that) (job|ticket|work order|repair order) [to|as] <rest>'],
  },
  {
    name: 'closeAnyway',
    said: [
      '(close|finish|sign off) (it|the job|this job) (anyway|anyhow|all the same|regardless)',
      '(close|finish) (anyway|anyhow)',
      'close (it|the job|this job) with (it|that|those|them|all that) open',
      '(close|finish) (it|the job|this job) (as it is|as is)',
    ],
  },
  {
    name: 'help',
    said: [
      'help [me] [out] [please]',
      'what (can|do|could|should|all can) i say',
      'what (can|do) you (do|know|understand|take)',
      'how does this work',
      'how do i (use this|talk to you|use you|do this)',
      'what are my options',
      "(i'm|i am) (stuck|lost)",
      'what are the commands',
      'list [the] commands',
      'give me a hand',
      'what do you understand',
    ],
  },
  {
    name: 'remind',
    said: [
      'remind (me|us|him|her|the customer|them) [to|that|about] <rest>',
      '[set] [a] reminder [to|for|about] <rest>',
      "(don't|do not) let me forget <rest>",
      '(make sure|be sure) i <rest>',
      'put (down|in) a reminder <rest>',
      'i need to remember to <rest>',
    ],
  },
];

/** Said out of politeness before a command. */
export const politeWords: readonly string[] = [
  '(can|could|would|will) you [please] [just]',
  "(please|kindly|just|go ahead and|let's|let us|i want to|i'd like to|i need to|we need to|you can|you may)",
];

/** Words that strike what was last said, or the field named. */
export const strikeWords: readonly string[] = [
  '(strike|scratch|scrap|delete|erase|remove|clear|cancel|forget|drop|throw out|toss|lose|wipe|wipe out|get rid of|take out|take off|pull|kill|ditch) (that|it|that one|this|last|the last|the last one|that last one|that last|last one|last number|the last number|that last number|that number|that measurement|the last measurement|the last value|that value)',
  '(strike|scratch|scrap|delete|erase|remove|clear|cancel|forget|lose|toss|wipe|wipe out|get rid of|take out|take off|throw out|kill|ditch) [the|my|that|both] [(left|right|front|rear|middle|driver side|passenger side|left side|right side)] [(left|right|front|rear)] <field> [value|number|measurement|reading]',
  '[never mind|nevermind|nix] (never mind|nevermind|nix that|forget it|belay that|disregard [that|it|the last one])',
  '(take|throw|pull) (that|it|that one|the last one|that last one) (off|out|away)',
  'ignore (that|it|the last one|what i said|that last one)',
];

/** Openers of a note; the rest is kept verbatim. */
export const noteWords: readonly string[] = [
  '[make|take|add|put|put in|put down|write] [me] [down] [a|the|another] (note|notes) [that|to self|down|here|to the job|for the job|on that] [,|:] <rest>',
  '(note|notes|notation|comment|remark|memo) [that|down|to self] [,|:] <rest>',
  '(write|jot|mark|put) (down|this down|that down|in) [that] [,|:] <rest>',
  '(for the record|for the notes) [,|:] <rest>',
  'log (that|a note|a note that|this) [,|:] <rest>',
  '(make|take) a note [,|:] [that] <rest>',
  'add a (comment|remark) [that] [,|:] <rest>',
  '(heads up|fyi) [,|:] <rest>',
];
