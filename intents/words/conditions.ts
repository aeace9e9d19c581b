// What a technician says is wrong (or right) with a part: a statement with one of these is a note, though nobody said "note".
// Templates as in phrase.ts.

export interface ConditionWords {
  readonly condition: string;
  readonly seriousness: 'safety' | 'wear' | 'info';
  readonly said: readonly string[];
}

const negated =
  "(won't|wont|will not|doesn't|doesnt|does not|don't|dont|do not|didn't|did not|can't|cannot|couldn't|not|ain't|isn't|aren't|never|wouldn't|would not)";

/** Parts that may be wanting: "no cotter pin", "no dust cap on the left". */
const absent =
  'no (cotter pin|cotter pins|cotter|keeper|tang washer|lock washer|dust cap|dust caps|grease cap|hub cap|seal|seals|safety chain|safety chains|chains|lights|light|plug|latch|tie plate|centre bolt|bushing|bushings|lug nuts|wheel nuts|valve stem|shackle bolt|brake wires|breakaway switch|breakaway)';

export const conditionWords: readonly ConditionWords[] = [
  {
    condition: 'cracked',
    seriousness: 'safety',
    said: ['(cracked|crack|cracks|cracking|hairline|hairline crack|split|fractured|fracture|split open|coming apart)'],
  },
  {
    condition: 'broken',
    seriousness: 'safety',
    said: [
      '(broken|broke|snapped|sheared|busted|torn|fell off|came off|came apart|failed|shattered|stripped|stripped out|cross threaded|pulled out|let go|separated|delaminated|bulge|bulged|bulging|frayed|separating|separation|cord showing|cords showing|cords out|hole in|nail in|screw in|cut in|gash in|cut through|chewed through|rubbed bare|rubbed through|shorted)',
    ],
  },
  {
    condition: 'bent',
    seriousness: 'safety',
    said: [
      '(bent|bowed|twisted|buckled|warped|out of true|kinked|out of round|egged out|egg shaped|wallowed|wallered|wallowed out|elongated|rolled over|egged|tweaked|crooked|sagging|sagged|collapsed|flattened|stretched|necked down)',
    ],
  },
  {
    condition: 'seized',
    seriousness: 'safety',
    said: ['(seized|frozen|locked up|stuck|welded itself|spun|spun on|galled|dragging|binding)'],
  },
  {
    condition: 'burnt',
    seriousness: 'safety',
    said: [
      '(burnt|burned|blued|blue|heat marked|overheated|cooked|smoking|on fire|heat checked|heat cracked|discoloured|discolored)',
      '(runs|running|ran|run|getting|gets|too|got|smoking|red|burning) hot [to touch]',
    ],
  },
  {
    condition: 'missing',
    seriousness: 'safety',
    said: ['(missing|gone|not there|fallen off|lost|nothing holding)', absent],
  },
  {
    condition: 'notWorking',
    seriousness: 'safety',
    said: [
      `${negated} (work|working|works|lock|locking|locks|latch|latching|latches|close|closing|release|releasing|hold|holding|turn|turning|spin|spinning|light|lighting|light up|come on|stop|engage|apply|seat|seating|line up|come off|come out|come loose|move|go on|go in|charge|charging|click|grab|bite|adjust|retract|crank|tighten)`,
      '(inoperative|inop|dead|unplugged|quit working|quit|stopped working|burned out|burnt out|no power|not connected|disconnected|unhooked|no ground|bad ground|blown fuse|open circuit|short circuit|flickering|intermittent)',
      '(is|are|reads|read|reading|shows|tests|went) open',
      '(is|are|was|went|goes|going|keeps going|gone) (out|flat|dead|dim|down)',
      'flat (tyre|tyres|spot|spots|spotted)',
      '(signal|lamp|light|lights|marker|lamps|signals) (out|dim)',
    ],
  },
  {
    condition: 'loose',
    seriousness: 'safety',
    said: [
      '(loose|not tight|wobbles|wobbly|wobbling|backed off|backing off|rattles|rattling|sloppy|floppy|moves around|walking)',
    ],
  },
  {
    condition: 'leaking',
    seriousness: 'wear',
    said: [
      '(leaking|leaks|leak|leaked|weeping|seeping|slinging grease|grease everywhere|blown out|blown|wet with grease|full of grease|contaminated|soaked)',
      '(grease|oil) on (the|my) [brake] (shoes|shoe|lining|linings|drum|drums|magnet|magnets|brakes)',
    ],
  },
  {
    condition: 'worn',
    seriousness: 'wear',
    said: [
      "(not|isn't|aren't|ain't) (good|right|great|straight|true|round|square|happy|reusable)",
      '(worn|worn out|wore out|too far gone|shot|toast|junk|trash|trashed|done for|wiped|wiped out|bad|thin|worn thin|down to the rivets|down to metal|metal on metal|bald|dry rot|dry rotted|weather checked|weather checking|pulls|pulling|wanders|vibrates|shimmies|cupped|feathered|chewed up|had it|no good|ruined|roached|rough|grooved|finished|past it|gone bad|dented|plugged|clogged|chewed)',
    ],
  },
  {
    condition: 'pitted',
    seriousness: 'wear',
    said: [
      '[a] (groove|grooves|ridge|ridges|lip on it|burr|burrs|gouge|gouges|score mark|score marks) [in it|on it|worn in|worn in it]',
      '(pitted|pitting|scored|scoring|spalled|spalling|brinelled|galling|scuffed|gouged|nicked|marked|etched|scratched up|flaking)',
    ],
  },
  {
    condition: 'rusted',
    seriousness: 'wear',
    said: [
      '(rusted|rusty|rust|corroded|corrosion|rotten|rotted|rusted through|rusted out|rusted solid|pack rust|scaly|rust jacked)',
    ],
  },
  {
    condition: 'dry',
    seriousness: 'wear',
    said: [
      '(dry|no grease|bone dry|out of grease|milky|water in|full of water|dirty|muddy|dirt in|wrong grease|grease is black|noisy|squeals|squealing|grinds|grinding|growls|growling|hums|humming)',
    ],
  },
  {
    condition: 'good',
    seriousness: 'info',
    said: [
      '(looks|look|is|are|still|feels|all) (good|fine|ok|okay|clean|new|like new|tight|solid|straight|smooth|true)',
      '(in good shape|in good condition|no cracks|nothing wrong|good shape)',
      'no (play|wobble|slop|leak|leaks|noise|damage|rust|scoring|pitting)',
      // How a keeper is locked.
      '(bent|folded|bend) (over|back|up|down|around)',
    ],
  },
];

/** Parts by the names they go by; the id is how a note names them. */
export const partWords: readonly (readonly [string, readonly string[]])[] = [
  ['hanger', ['(hanger|hangers|spring hanger|spring hangers|hanger bracket)']],
  ['shackle', ['(shackle|shackles|shackle strap|shackle link|shackle links)']],
  ['equaliser', ['(equaliser|equalisers|rocker)']],
  ['spring', ['(spring|springs|leaf spring|leaf springs|main leaf|leaf|leaves|spring pack)']],
  ['uBolt', ['(u bolt|u bolts)']],
  ['centreBolt', ['(centre bolt|centre pin|centre bolts)']],
  ['tiePlate', ['(tie plate|tie plates|u bolt plate)']],
  ['springSeat', ['(spring seat|spring seats|spring pad|spring pads|perch|perches)']],
  ['bushing', ['(bushing|bushings|bush|bushes|spring bushing)']],
  ['beam', ['(axle|axles|beam|tube|axle tube|axle beam)']],
  ['spindle', ['(spindle|spindles|axle stub|stub|stub axle|spindle threads|threads)']],
  ['hub', ['(hub|hubs|hub face)']],
  ['bearing', ['(bearing|bearings|inner bearing|outer bearing|wheel bearing|wheel bearings|cone|cones|roller|rollers|cage)']],
  ['cup', ['(race|races|cup|cups|inner race|outer race|bearing race)']],
  ['seal', ['(seal|seals|grease seal|grease seals)']],
  ['dustCap', ['(dust cap|dust caps|grease cap|cap|caps|hub cap)']],
  ['keeper', ['(cotter pin|cotter|cotter pins|keeper|tang washer|castle nut|spindle nut|lock washer|tang)']],
  [
    'brake',
    ['(brake|brakes|shoe|shoes|brake shoes|lining|linings|magnet|magnets|backing plate|backing plates|brake wires|brake wiring)'],
  ],
  ['drum', ['(drum|drums|brake drum|brake drums|rotor|rotors)']],
  ['wheel', ['(wheel|wheels|rim|rims)']],
  ['stud', ['(stud|studs|wheel stud|wheel studs|lug|lugs|lug nut|lug nuts|wheel nut|wheel nuts)']],
  ['tyre', ['(tyre|tyres|sidewall|sidewalls|tread|valve stem)']],
  ['frame', ['(frame|frame rail|frame rails|crossmember|cross member|weld|welds|tongue|a frame)']],
  ['body', ['(deck|bed|ramp|ramps|tailgate|floor|deck boards|dovetail)']],
  ['coupler', ['(coupler|couplers|ball|latch|hitch|safety chain|safety chains|chains|jack|tongue jack)']],
  ['fender', ['(fender|fenders|fender bracket|fender brackets)']],
  [
    'wiring',
    [
      '(wire|wires|wiring|plug|harness|connector|lights|light|lamp|lamps|turn signal|turn signals|signal|signals|brake light|brake lights|tail light|tail lights|marker light|marker lights|brake controller|controller|breakaway|breakaway switch|battery)',
    ],
  ],
];

/** Stand for a part that both sides know: "the outer is too far gone". */
export const standIns: readonly string[] = [
  '(it|grease|outer|inner|left|right|one|side|nut|nuts|that one|this one|spins|turns|feels)',
];
