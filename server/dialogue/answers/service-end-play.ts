// End play: the figure, what was measured, and what a part of a turn of the nut does.
import {
  Fraction,
  isNumber,
  lockChoices,
  lockPositions,
  makersRange,
  measured,
  type Quantity,
  type Rotation,
  threadsPerInch,
  travelOf,
  turnsFor,
  usualEndPlay,
} from '#core';
import { endPlayLimits } from '#data';
import type { Answer } from '../types.ts';
import { showNamed } from '../words.ts';
import { type Ask, answer, both, givenIn, join, lines, type Words } from './service-ask.ts';
import { askBack } from './service-follow-ups.ts';
import { judged, playRange } from './service-judged.ts';

export function endPlay(ask: Ask): Answer {
  const stops = stopWords(ask);
  if (stops)
    return answer(
      'endPlay.stops',
      { speak: `${stops.speak} Dial it after.`, show: lines(stops.show, 'By thread geometry; dial it after.') },
      { used: playsOf(ask), sources: ['thread geometry: one turn moves one pitch'] },
    );
  const rotation = rotationIn(ask);
  if (rotation) return nutTravel(ask, rotation);
  if (/how far|how much.*turn|what turn|turn.*for/.test(ask.words)) return turnFor(ask);
  return figure(ask);
}

function figure(ask: Ask): Answer {
  const maker = makersRange(ask.readings, 'endPlay');
  const usual = usualEndPlay();
  const range = maker
    ? { ...usual, low: maker.low.value, high: maker.high.value, source: "the part maker's value, as given" }
    : usual;
  const done = playsOf(ask);
  return answer(
    maker ? 'endPlay.maker' : 'endPlay.published',
    {
      speak: join(
        `${playRange(range, ask, 'speak')} by the dial${maker ? ", the maker's figure" : ''}.`.replace(/^./, (letter) =>
          letter.toUpperCase(),
        ),
        maker ? undefined : "The maker's figure comes first.",
      ),
      show: lines(
        ...(maker
          ? [`Maker's figure: ${playRange(range, ask, 'show')}`]
          : endPlayLimits.map(
              (row) =>
                `${row.about}: ${ask.tell.range(new Fraction(row.min), new Fraction(row.max), 'in', 'endPlay').show} (${row.source})`,
            )),
        ...done.map((value) => `${showNamed(value, ask.know.shop)}. ${judged(value, ask)?.show ?? ''}`),
        'Push, pull, read the dial; rocking the tyre measures nothing.',
      ),
    },
    { sources: maker ? [range.source] : endPlayLimits.map(({ source }) => source), used: done, caution: 'makerFirst' },
  );
}

const playsOf = ({ readings }: Ask) => readings.filter(({ field, origin }) => field === 'endPlay' && origin !== 'maker');

/** A part of a turn named in the question: one slot, a flat, sixty degrees, a quarter turn. */
function rotationIn(ask: Ask): Rotation | undefined {
  const { words } = ask;
  const [degrees] = givenIn(ask, 'deg');
  if (degrees) return { degrees: degrees.value };
  const count = countIn(ask);
  if (/\bflats?\b/.test(words)) return { flats: count };
  if (/\bslots?\b|\bholes?\b|\bnotch/.test(words)) return { slots: count, positions: positionsIn(words) };
  const part = Object.entries(parts).find(([said]) => words.includes(`${said} turn`) || words.includes(`${said} of a turn`));
  return part ? { turns: new Fraction(part[1]) } : undefined;
}

const parts: Readonly<Record<string, string>> = {
  half: '1/2',
  'half a': '1/2',
  quarter: '1/4',
  third: '1/3',
  sixth: '1/6',
  eighth: '1/8',
  twelfth: '1/12',
  sixteenth: '1/16',
  '1/4': '1/4',
  '1/6': '1/6',
  '1/8': '1/8',
  full: '1',
  one: '1',
};

const positionsIn = (words: string): number =>
  /two holes|twelve|flip/.test(words) ? lockPositions.twoHoles : lockPositions.oneHole;

function countIn({ words }: Ask): Fraction {
  return new Fraction(/\btwo (slot|flat|notch)/.test(words) ? 2 : /\bthree (slot|flat|notch)/.test(words) ? 3 : 1);
}

function pitchOf(ask: Ask): { readonly thread: string; readonly tpi: Fraction } | undefined {
  const said = ask.given.find((one) => 'field' in one && /Thread$/.test(one.field))?.value;
  const thread =
    said ??
    ask.words.split(' ').find((word) => threadsPerInch(word)) ??
    spokenThread(ask.words) ??
    measured(ask.readings, { field: 'spindleThread' })?.value;
  const tpi = thread === undefined ? undefined : threadsPerInch(thread);
  return thread !== undefined && tpi ? { thread, tpi } : undefined;
}

/** "one inch fourteen": spindle threads are said by pitch alone often enough. */
function spokenThread(words: string): string | undefined {
  const named = /\b(twelve|fourteen|sixteen|eighteen|twenty|12|14|16|18|20)\b/.exec(words)?.[1];
  return named === undefined ? undefined : `1-${pitches[named] ?? named}`;
}
const pitches: Readonly<Record<string, string>> = { twelve: '12', fourteen: '14', sixteen: '16', eighteen: '18', twenty: '20' };

function thousandths(value: Fraction, form: keyof Words): string {
  const thou = value.mul(1000).round(1);
  return form === 'show' ? `${value.valueOf().toFixed(4)} in` : `about ${thou.valueOf()} thousandths`;
}

function nutTravel(ask: Ask, rotation: Rotation): Answer {
  const pitch = pitchOf(ask);
  if (!pitch) return askBack('endPlay.threadMissing');
  const travel = travelOf(rotation, pitch.tpi);
  const wide = travel.compare(usualEndPlay().high.sub(usualEndPlay().low)) > 0;
  return answer(
    'endPlay.travel',
    both((form) =>
      join(
        `That moves the nut ${spokenThousandths(travel, ask, form)} on ${ask.tell.count(Number(pitch.tpi.valueOf().toFixed(0)))[form]} threads an inch${wide ? ', more than the whole window' : ''}.`,
        'The nut is not the end play: out of a seated nut the first part only lets the squeeze go. Dial it.',
      ),
    ),
    { sources: ['thread geometry: one turn moves one pitch'], used: [measured(ask.readings, { field: 'spindleThread' })] },
  );
}

function spokenThousandths(value: Fraction, { tell }: Ask, form: keyof Words): string {
  return form === 'show' ? thousandths(value, form) : tell.amount({ value, unit: 'in' }, 'endPlay').speak;
}

/** How far to turn for a change of end play named in the question. */
function turnFor(ask: Ask): Answer {
  const pitch = pitchOf(ask);
  const wanted = givenIn(ask, 'in', 'mm').at(-1) ?? thousandthsIn(ask);
  if (!pitch) return askBack('endPlay.threadMissing');
  if (!wanted) return askBack('endPlay.sizeMissing');
  const inches = wanted.unit === 'mm' ? wanted.value.div('25.4') : wanted.value;
  const degrees = turnsFor(inches, pitch.tpi).mul(360).round(0);
  return answer(
    'endPlay.turn',
    both((form) => `${ask.tell.amount({ value: degrees, unit: 'deg' })[form]} of turn on the nut. Then dial it.`),
    {
      sources: ['thread geometry: one turn moves one pitch'],
    },
  );
}

/** "Three thousandths" needs no unit to be of an inch. */
function thousandthsIn({ given }: Ask): Quantity | undefined {
  const small = given.findLast(({ value, unit }) => unit === '1' && isNumber(value) && 1000n % new Fraction(value).d === 0n);
  const value = new Fraction(small?.value ?? 1);
  return value.abs().compare('1/10') < 0 ? { value, unit: 'in' } : undefined;
}

/** What the next stop of the lock would make of the last play measured. */
function stopWords(ask: Ask): Words | undefined {
  const pitch = pitchOf(ask);
  const last = measured(ask.readings, { field: 'endPlay', stage: 'fitted' });
  if (!pitch || !last || !/tighter|looser|next (slot|stop|hole|flat|place)|(slot|stop|hole) (more|back|on)/.test(ask.words))
    return undefined;
  const play = new Fraction(last.value);
  if (play.compare(0) <= 0) return undefined;
  const choices = lockChoices(play, pitch.tpi, positionsIn(ask.words)).filter(({ move }) => move !== 'stay');
  return both((form) =>
    choices
      .map(
        ({ move, endPlay: left }) =>
          `One stop ${move}: ${left.compare(0) === 0 ? 'no play left' : spokenThousandths(left, ask, form)}.`,
      )
      .join(' '),
  );
}
