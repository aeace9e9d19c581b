// A bolt by its thread and grade, and a torque wrench with something between it and the nut.
import { boltStretch, boltTorque, clampFrom, convert, threadOf, threadSized, wrenchSetting } from '#core';
import type { Answer } from '../types.ts';
import { sentence } from '../words.ts';
import { type Ask, answer, givenIn, lines, same } from './service-ask.ts';
import { askBack } from './service-follow-ups.ts';

const makerFirst = "The maker's figure comes first.";

/** T = K D F for a thread and grade named in the question. */
export function bolt(ask: Ask): Answer {
  const thread = givenThread(ask);
  if (!thread) return askBack('bolt.threadMissing');
  const grade = gradeIn(ask.words);
  if (!grade) return askBack('bolt.gradeMissing');
  const found = boltTorque({ thread, grade, condition: conditionIn(ask.words) });
  if (found.code === 'unknownCondition') throw new TypeError(`no such condition: ${conditionIn(ask.words)}`);
  if (found.code !== 'boltTorque') return askBack(`bolt.${found.code}`);
  const amount = ask.tell.amount(found.torque);
  return answer(
    'bolt',
    {
      speak: `${sentence(ask.tell.value('studThread', found.thread.id).speak)} grade ${ask.tell.count(Number(grade)).speak}, ${conditionWords[found.condition] ?? found.condition}: ${amount.speak}. ${makerFirst}`,
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
/** F L / (A E): at three quarters of proof for a grade, or at the torque named, over the grip length named. */
export function stretch(ask: Ask): Answer {
  const lengthsApart = { ...ask, given: ask.given.filter(({ kind }) => kind === 'measure') };
  const thread = threadOf(givenThread(lengthsApart) ?? '');
  const grade = gradeIn(ask.words);
  const [length] = givenIn(ask, 'in', 'mm');
  const [torque] = givenIn(ask, 'lbf.ft', 'N.m');
  const found = thread && grade ? boltTorque({ thread: thread.id, grade, condition: conditionIn(ask.words) }) : undefined;
  if (!thread || !length || found?.code !== 'boltTorque') return askBack('stretch.missing');
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

/** What is told last counts: it may answer a question back. */
export function givenThread({ given, words }: Ask): string | undefined {
  const said = given.reduce<string | undefined>((before, one) => threadIn(one, before) ?? before, undefined);
  return said ?? words.split(' ').findLast((word) => threadOf(word) !== undefined);
}

/** A thread as said, or a size that only a bolt has: "nine sixteenths" is as fine as what was named before. */
export function threadIn(one: Ask['given'][number], before?: string): string | undefined {
  if (one.kind === 'measure') return /Thread$/.test(one.field) ? one.value : undefined;
  return one.unit === '1' || one.unit === 'in' ? threadSized(one.value, before)?.id : undefined;
}

const grades: Readonly<Record<string, string>> = {
  two: '2',
  five: '5',
  eight: '8',
  'eight point eight': '8.8',
  'ten point nine': '10.9',
};

function gradeIn(words: string): string | undefined {
  const last = [...words.matchAll(/\b(eight point eight|ten point nine|8\.8|10\.9)|(?:grade|class) (\w+)/g)].at(-1);
  const said = last?.[1] ?? last?.[2];
  return said === undefined ? undefined : (grades[said] ?? said);
}

function conditionIn(words: string): string {
  const last = [...words.matchAll(/anti|never|oil|lub|greas|wet|dry/g)].at(-1)?.[0] ?? 'dry';
  if (last === 'anti' || last === 'never') return 'antiSeize';
  return last === 'dry' ? 'dry' : 'oiled';
}

export function extension(ask: Ask): Answer {
  const [wanted] = givenIn(ask, 'lbf.ft', 'N.m', 'lbf.in');
  const [one, other] = givenIn(ask, 'in', 'mm');
  if (!wanted || !one || !other) {
    return askBack('extension.missing');
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
