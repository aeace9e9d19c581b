// Questions: how they open, and which words tell their topic. `said` templates are also what the recogniser listens for.
import type { Topic } from '../types.ts';

/** A statement that begins so is a question. Templates as in phrase.ts. */
export const openers: readonly string[] = [
  "(what|what's|whats|which|how|how's|when|when's|why|where|where's|who|whose)",
  '(does|will|would|can|could|should|is|are|am|did|do|has|have) (it|this|that|the|these|those|they|a|an|i|we|my|our|there|you|any)',
  "(doesn't|won't|isn't|aren't|shouldn't) (it|this|that|the|these|those|they|i|we)",
  '(check|look) (for|up|on|at) [the]',
  'check [the]',
  "(tell|show) me (what|how|which|when|why|where|if|about|the)",
  '(find|find out|look up|get) [me] [the|a|an|me]',
  '(i|we) (need|want|would like) to know',
  'any (idea|chance|clue)',
  '(remind me|say) (what|how|which|when)',
  'anything (else|left|still|missing|open)',
  '(got|have you got|have we got|do we have|do you have|you got) (a|an|any|the|anything|something)',
  'need to know',
  'give me the (torque|sequence|specs|spec|bolt pattern|end play|tyre pressure|pressure)',
];

export interface TopicWords {
  readonly topic: Topic;
  readonly of?: string;
  /** Word groups, first row that has one wins: all words of a group occur, in any order; "a|b" is either. */
  readonly keys: readonly string[];
  /** Whole questions as they are asked most; <field> is any field's name. */
  readonly said: readonly string[];
}

export const topics: readonly TopicWords[] = [
  { topic: 'why', keys: ['why', 'come how', 'reason', 'what for is that'], said: ['why', 'why is that', 'why do i do that', 'how come'] },
  {
    topic: 'whatFits',
    keys: [
      'what fits|fit', 'which fits|fit', 'which axle', 'what axle|axles have|got|need|use|take|work|works|order|stock', 'rack', 'in stock', 'replacement axle what', 'what works', 'anything fits|fit', 'what replaces|replace',
      'have axle we', 'got axle we', 'find axle', 'any axles', 'what options',
    ],
    said: ['what fits', 'what fits this axle', 'what have we got that fits', 'what have we got on the rack that fits', 'which axle fits', 'what do we have in stock'],
  },
  {
    topic: 'fits',
    keys: ['fit|fits|fitting', 'interchange|interchangeable|interchanges', 'match|matches', 'compatible', 'bolt up', 'bolt right up', 'drop in', 'will work', 'does work', 'can use', 'go on this', 'swap'],
    said: ['does it fit', 'will it fit', 'will that fit', 'will it work', 'does this axle fit'],
  },
  {
    topic: 'sequence',
    keys: ['order tighten|torque|do|go|nuts|lugs|bolts|lug what|which', 'sequence', 'pattern tighten|torque', 'star', 'criss', 'cross pattern', 'tighten first', 'which nut|lug|bolt first'],
    said: ['what order do i tighten the lugs', 'what order do i tighten five lugs', 'what order do i tighten six lugs', 'what order do i tighten eight lugs', 'what is the sequence', 'give me the sequence'],
  },
  { topic: 'due', keys: ['due', 'how often', 'interval', 'when again|next|back', 'when retorque', 'when re torque', 'when check|repack|grease|service', 'how many miles until|before|till'], said: ['when is it due', 'when is it due again', 'when do i retorque', 'how often do i repack'] },
  {
    topic: 'open',
    keys: ['still open', "what's open", 'is open', 'left do', "what's left", 'missing', 'outstanding', 'still need', 'not done', 'unconfirmed', 'skipped|skip', 'what remains', 'what is left', 'anything left', 'forget|forgot|forgotten', "haven't", 'still to do', 'open points|items|questions', 'not measured', 'have not'],
    said: ["what's still open", 'what is still open', "what's missing", 'what is missing', 'what did i skip', "what's left to do"],
  },
  { topic: 'parts', keys: ['need order', 'what order', 'parts', 'need buy', 'else need', 'list parts|shopping', 'what tools', 'need get', 'have to order', 'what hardware', 'what goes with', 'order with'], said: ['what do i need to order', 'what parts do i need', 'what else do i need'] },
  {
    topic: 'nextStep',
    keys: ["what's next", 'what next', 'do now', 'do next', 'do first', 'next step', 'where am', 'where was', 'what step|steps', 'now what', 'what now', 'comes next', 'after this', 'after that', 'where are we', 'where do start', 'how do start', 'what do i do', 'what do we do'],
    said: ["what's next", 'what is next', 'what do i do now', 'what do i do next', 'what now', 'what step am i on', 'where am i'],
  },
  { topic: 'sequence', keys: ['which first'], said: [] },
  { topic: 'endPlay', keys: ['end play', 'endplay', 'preload', 'how loose', 'how much play', 'bearing adjust|adjustment|set', 'adjust bearing|bearings', 'free play'], said: ['how much end play', 'how much end play am i after', 'what should the end play be', 'what is the end play'] },
  {
    topic: 'torque',
    keys: ['torque|torqued|torques', 'how tight', 'tighten', 'foot pounds', 'u bolts get|take|go', 'nuts get|take|go', 'bolts get|take|go', 'lugs get|take|go', 'nut get|take', 'spec nuts|bolts|lugs|nut|bolt', 'crank'],
    said: ['what torque for the wheel nuts', 'what torque for the u bolts', 'what do the u bolts get', 'what do the wheel nuts get', 'what do the lug nuts get', 'what is the lug torque', 'what is the seat torque', 'what torque for the spring bolts', 'how tight'],
  },
  { topic: 'grease', keys: ['grease|greased', 'lube|lubricant|lubrication', 'pack bearing|bearings', 'repack', 'what oil', 'gear oil'], said: ['what grease', 'what grease do i use', 'how much grease', 'how do i pack the bearings'] },
  { topic: 'alignment', keys: ['align|aligned|alignment', 'square', 'toe', 'track|tracking|tracks', 'thrust', 'straight', 'camber', 'diagonal|diagonals', 'parallel'], said: ['is it square', 'is the axle square', 'how far out of square', 'how is the alignment', 'what is the toe'] },
  {
    topic: 'clearance',
    keys: ['clearance', 'over tyres|tires', 'wide over', 'rub|rubs', 'clear|clears', 'room', 'overall width', 'how wide', 'legal width', 'too wide', 'hit frame|fender'],
    said: ['how wide is it over the tyres', 'how much tyre clearance', 'will the tyres clear', 'will it clear the frame'],
  },
  { topic: 'tyre', keys: ['tyre|tyres|tire|tires', 'psi', 'how much air', 'inflate', 'load range', 'air pressure', 'tyre pressure'], said: ['what tyre do i need', 'what tyre pressure', 'how much air', 'what size tyre'] },
  {
    topic: 'load',
    keys: ['load|loads|loaded|overloaded', 'carry|carries', 'capacity', 'weigh|weighs|weight', 'heavy', 'gvwr', 'rated|rating', 'tongue', 'haul', 'how much can', 'enough axle', 'strong enough', 'hold'],
    said: ['how much can it carry', 'is it overloaded', 'what is the capacity', 'how much tongue weight'],
  },
  { topic: 'seal', keys: ['seal|seals'], said: ['what seal do i need', 'what size seal do i need', 'which seal', 'what seal'] },
  { topic: 'bearing', keys: ['bearing|bearings', 'cone|cones', 'cup|cups', 'race|races', 'spindle what takes|take|fits'], said: ['which bearing', 'what bearing do i need', 'which bearing goes on the outer', 'which bearing goes on the inner', 'what bearings does it take'] },
  { topic: 'boltPattern', keys: ['bolt pattern', 'lug pattern', 'bolt circle', 'pattern', 'how many lugs|studs|bolts|holes', 'measure lugs|studs|circle', 'measure five lug', 'stud spacing'], said: ['what bolt pattern is it', 'how do i measure the bolt pattern', 'what is the bolt pattern'] },
  { topic: 'brake', keys: ['brake|brakes', 'magnet|magnets', 'drum|drums', 'shoes|shoe', 'lining|linings', 'amps', 'volts|voltage', 'brake controller', 'wire|wires|wiring'], said: ['what brakes does it have', 'what brakes do i need', 'how many amps should the magnets draw'] },
  {
    topic: 'value',
    keys: ['so far', 'what have got', 'what did say', 'what did i', 'what was', 'recorded|written|logged|down', 'what are the numbers|measurements', 'what numbers|measurements', 'what is my', 'what i have', 'what you have', 'have so far'],
    said: ['what have i got so far', 'what is the <field>', "what's the <field>", 'what was the <field>', 'what did i say for the <field>'],
  },
];

/** Parts a torque question may be about; also what `of` is for other topics. */
export const aboutParts: readonly (readonly [string, readonly string[]])[] = [
  ['wheelNut', ['(wheel|lug) (nut|nuts|torque|bolts|bolt)', '(lugs|lug|wheels)', 'wheel studs']],
  ['uBolt', ['u (bolt|bolts)', 'ubolts', 'ubolt', 'u-bolts']],
  ['springBolt', ['(spring|shackle|equaliser|hanger|spring eye) (bolt|bolts)', '(shackles|shackle|hanger bolts|eye bolts)']],
  ['seat', ['(spindle|axle|castle) (nut|nuts)', '(seat|seating) [torque]', 'bearing (nut|torque)', 'seating torque']],
];

