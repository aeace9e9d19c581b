// A bolt by its thread and grade, and a torque wrench with something between it and the nut.
import { boltStretch, boltTorque, clampFrom, convert, threadOf, wrenchSetting } from '#core';
import type { Answer } from '../types.ts';
import { sentence } from '../words.ts';
import { type Ask, answer, givenIn, lines, same, type Words } from './service-ask.ts';

const makerFirst = "The maker's figure comes first.";

/** T = K D F for a thread and grade named in the question. */
export function bolt(ask: Ask): Answer {
  const thread = givenThread(ask);
  if (!thread) return answer('bolt.threadMissing', same('Which thread? Say it like half twenty grade five dry.'));
  const grade = gradeIn(ask.words);
  if (!grade)
    return answer(
      'bolt.gradeMissing',
      same('Which grade? Count the head marks and add two: none is two, three is five, six is eight.'),
    );
  const found = boltTorque({ thread, grade, condition: conditionIn(ask.words) });
  if (found.code !== 'boltTorque') return answer(`bolt.${found.code}`, boltFaults[found.code], { caution: 'makerFirst' });
  const amount = ask.tell.amount(found.torque);
  return answer(
    'bolt',
    {
      speak: `${sentence(amount.speak)} for grade ${ask.tell.count(Number(grade)).speak}, ${conditionWords[found.condition] ?? found.condition}. ${makerFirst}`,
      show: lines(
        `${found.thread.id} grade ${grade}, ${conditionWords[found.condition] ?? found.condition}: ${amount.show}`,
        `T = K D F, K ${found.k.valueOf()}, clamp ${Math.round(found.clamp.valueOf())} ${found.clampUnit} (three quarters of proof)`,
        makerFirst,
      ),
    },
    { sources: found.sources, caution: 'makerFirst' },
  );
}

const conditionWords: Readonly<Record<string, string>> = { dry: 'dry', oiled: 'oiled', antiSeize: 'with anti-seize' };
const boltFaults: Readonly<Record<'unknownThread' | 'unknownGrade' | 'unknownCondition', Words>> = {
  unknownThread: same('That thread is not in my table. Say it again, like half twenty or M twelve by one point five.'),
  unknownGrade: same(
    'That grade is not made in that thread. Inch bolts are grade two, five or eight; metric eight point eight or ten point nine.',
  ),
  unknownCondition: same('Dry, oiled or anti-seize?'),
};

/** F L / (A E): at three quarters of proof for a grade, or at the torque named, over the grip length named. */
export function stretch(ask: Ask): Answer {
  const thread = threadOf(givenThread(ask) ?? '');
  const grade = gradeIn(ask.words);
  const [length] = givenIn(ask, 'in', 'mm');
  const [torque] = givenIn(ask, 'lbf.ft', 'N.m');
  const found = thread && grade ? boltTorque({ thread: thread.id, grade, condition: conditionIn(ask.words) }) : undefined;
  if (!thread || !length || found?.code !== 'boltTorque')
    return answer(
      'stretch.missing',
      same('Give me thread, grade and the grip from head to nut: stretch over four inches of a half twenty grade eight.'),
    );
  const suits = torque && (torque.unit === 'N.m') === (thread.unit === 'mm');
  const clamp = suits ? clampFrom(torque.value, thread, found.k) : found.clamp;
  const drawn = boltStretch(clamp, convert(length, thread.unit === 'in' ? 'in' : 'mm').value, thread);
  const tell = ask.tell.amount(drawn.stretch, 'endPlay');
  return answer(
    'stretch',
    {
      speak: `${sentence(tell.speak)} at ${suits ? 'that torque' : 'three quarters of proof'}, figured on steel and the thread's area all the way; a plain shank draws out less.`,
      show: lines(
        `${thread.id} grade ${grade}: ${tell.show}`,
        `F L / (A E): clamp ${Math.round(clamp.valueOf())} ${found.clampUnit}, area ${thread.area}, E of steel`,
        'A plain shank is thicker and draws out less. Stretch that stays after loosening: new bolt.',
      ),
    },
    { sources: [drawn.source, thread.source, found.grade.source] },
  );
}

export function givenThread({ given, words }: Ask): string | undefined {
  const said = given.find((one) => 'field' in one && /Thread$/.test(one.field))?.value;
  return said ?? words.split(' ').find((word) => threadOf(word) !== undefined);
}

const grades: Readonly<Record<string, string>> = { two: '2', five: '5', eight: '8', '8.8': '8.8', '10.9': '10.9' };

function gradeIn(words: string): string | undefined {
  const metric = /8\.8|eight point eight/.test(words) ? '8.8' : /10\.9|ten point nine/.test(words) ? '10.9' : undefined;
  const said = /(?:grade|class) (\w+)/.exec(words)?.[1] ?? '';
  return metric ?? grades[said] ?? (/^\d+$/.test(said) ? said : undefined);
}

function conditionIn(words: string): string {
  if (/anti|never/.test(words)) return 'antiSeize';
  return /oil|lub|greas|wet/.test(words) ? 'oiled' : 'dry';
}

export function extension(ask: Ask): Answer {
  const [wanted] = givenIn(ask, 'lbf.ft', 'N.m', 'lbf.in');
  const [one, other] = givenIn(ask, 'in', 'mm');
  if (!wanted || !one || !other) {
    return answer(
      'extension.missing',
      same(
        'Give me the torque, the wrench length and the extension: ninety foot pounds, wrench eighteen inches, extension three inches.',
      ),
    );
  }
  const [length, extra] = one.value.compare(other.value) >= 0 ? [one, other] : [other, one];
  const [degrees] = givenIn(ask, 'deg');
  const found = wrenchSetting(wanted, length.value, extra.value, degrees?.value.valueOf() ?? 0);
  if (found.code !== 'wrenchSetting')
    return answer(`extension.${found.code}`, same('The wrench length must be more than nothing. Measure grip to square.'));
  const [set, wrong] = [ask.tell.amount(found.set), ask.tell.amount(found.uncorrected)];
  return answer(
    'extension',
    {
      speak: `Set it to ${set.speak}. Uncorrected, the nut would get ${wrong.speak}. At right angles no correction is needed.`,
      show: lines(
        `Set ${set.show}`,
        `Uncorrected the nut gets ${wrong.show}`,
        'T x L / (L + E); at right angles, or on the drive axis, no correction.',
      ),
    },
    { sources: [found.source] },
  );
}
