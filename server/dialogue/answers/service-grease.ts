// Grease: which, how much, what may meet what, and how it goes through a greasable spindle.
import { amountIn, cavityVolume, gramsToFill, mayMix, measured, strokeRange, strokesFor, thickenersIn } from '#core';
import { greaseGrades, greaseServices } from '#data';
import type { Answer } from '../types.ts';
import { type Ask, answer, givenIn, join, lines, same } from './service-ask.ts';
import { askBack } from './service-follow-ups.ts';

export function grease(ask: Ask): Answer {
  const { words } = ask;
  if (/mix|together|on top of|compatib|over |top (up|off)|add /.test(words)) return mixing(ask);
  const graded = gradeIn(words);
  if (graded) return graded;
  if (/stroke|how much|how many/.test(words)) return amount(ask);
  if (/through|zerk|fitting|nipple|greasable/.test(words)) return through();
  if (/pump|fill/.test(words)) return amount(ask);
  if (/pack/.test(words)) return packing();
  return which(ask);
}

function which(ask: Ask): Answer {
  const lube = measured(ask.readings, { field: 'spindleLube' });
  return answer(
    'grease.which',
    {
      speak: join(
        'N L G I two, G C L B: severe wheel bearing and severe chassis duty.',
        lube?.value === 'greasable' ? 'Through the fitting: slowly, turning the hub, until clean grease shows.' : undefined,
        'Do not mix it with another kind.',
      ),
      show: lines(
        'NLGI 2 (stiffness: worked penetration 265 to 295), service GC-LB.',
        ...greaseServices.filter(({ id }) => id === 'GC' || id === 'LB').map(({ id, about }) => `${id}: ${about} (ASTM D4950)`),
        "The axle maker's grease comes first. Not known what is in there: clean it all out.",
      ),
    },
    {
      sources: ['ASTM D4950 letters: liquisearch.com; NAVFAC P-300', 'realservices.com NLGI consistency table'],
      used: [lube],
      caution: 'mixGrease',
    },
  );
}

const grades: Readonly<Record<string, string>> = { zero: '0', one: '1', two: '2', three: '3' };

/** What an NLGI number says; of the number that wheel bearings take, the whole answer is the better one. */
function gradeIn(words: string): Answer | undefined {
  const said = /(?:nlgi|n l g i)(?: number| grade)? (\w+)/.exec(words)?.[1] ?? '';
  const row = greaseGrades.find(({ id }) => id === (grades[said] ?? said) && id !== '2');
  if (!row) return undefined;
  const way = Number(row.id) > 2 ? 'Stiffer' : 'Softer';
  return answer(
    'grease.grade',
    {
      speak: `${way} than number two, which is what wheel bearings take unless the maker says so.`,
      show: `NLGI ${row.id}: worked penetration ${row.min} to ${row.max} tenths of a millimetre (ASTM D217). Wheel bearings: NLGI 2, 265 to 295.`,
    },
    { sources: [row.source] },
  );
}

const mixWords = {
  mixes: 'Those two may meet.',
  mixesBorderline: 'Borderline: clean it out and change.',
  mixesNot: 'Not together: clean it all out first.',
} as const;

/** What a tube says of its use or its colour, which tells no thickener (common practice, no source). */
const forUse =
  /\b(marine|boat|trailer|wheel bearing|chassis|multi ?purpose|all ?purpose|high temp\w*|water\s?proof|synthetic|moly|extreme pressure|red|blue|green|black|white|purple|brown|yellow)\b/;

function mixing({ words }: Ask): Answer {
  const named = thickenersIn(words);
  const [one, other] = named;
  if (one === undefined || other === undefined) return askBack(forUse.test(words) ? 'grease.mixNameless' : 'grease.mixMissing');
  const mix = mayMix(one, other);
  if (mix.code === 'thickenerUnknown')
    return answer('grease.thickenerUnknown', same('Name the thickeners as they stand on the tubes.'), { caution: 'mixGrease' });
  return answer(
    `grease.${mix.code}`,
    {
      speak: mixWords[mix.code],
      show: lines(`${one} with ${other}: ${mixWords[mix.code]}`, 'Charts disagree: the safe rule is clean out and change.'),
    },
    {
      sources: [mix.source, 'lubesngreases.com 25_10 (21 charts compared)'],
      caution: 'mixGrease',
    },
  );
}

/** Strokes from three lengths named in the question: hub bore, spindle, distance between the bearings. */
function amount(ask: Ask): Answer {
  const sizes = givenIn(ask, 'in', 'mm').map(({ value, unit }) => (unit === 'mm' ? value.div('25.4') : value));
  const known = measured(ask.readings, { field: 'innerJournal' });
  const [bore, spindle, length] = sizes.length === 2 && known ? [sizes[0], amountIn(known, 'in').value, sizes[1]] : sizes;
  const volume = bore && spindle && length ? cavityVolume({ bore, spindle, length }) : undefined;
  if (!volume) {
    return answer(
      'grease.amount',
      {
        speak: known
          ? 'Until clean grease shows, not by count. For a count ask: how many strokes for a two and a half bore and three inches between bearings.'
          : 'Until clean grease shows, not by count. For a count ask: how many strokes for a two and a half bore one and a half spindle and three inches between bearings.',
        show: lines(
          'Pack the bearings full; the hub to the level of the cups, a thin film in the cap (documents differ: some fill the cap).',
          'For a count of strokes: hub bore, spindle diameter and distance between the bearings, in that order, in one breath. The spindle is not needed once the inner journal is measured.',
        ),
      },
      { sources: ['jamestowndistributors.com hub sheet; TM 9-2330-331-14&P'], caution: 'sealBlow' },
    );
  }
  const grams = gramsToFill(volume);
  const [fewest, mostStrokes] = [strokesFor(grams, strokeRange.high) ?? 0, strokesFor(grams, strokeRange.low) ?? 0];
  const ounces = ask.tell.count(Math.round(grams.div('28.349523125').valueOf()));
  const [few, many] = [ask.tell.count(fewest), ask.tell.count(mostStrokes)];
  return answer(
    'grease.strokes',
    {
      speak: `About ${ounces.speak} ounces: ${few.speak} to ${many.speak} strokes, by the gun. Measure one stroke of yours. Stop when it pushes back.`,
      show: lines(
        `${volume.valueOf().toFixed(1)} cubic inches, about ${Math.round(grams.valueOf())} g (${ounces.show} oz)`,
        `${few.show} to ${many.show} strokes at 3 to 1 g a stroke: weigh ten strokes of yours.`,
      ),
    },
    {
      sources: [strokeRange.source, 'volume by geometry; grease near 0.9 g/cm3: common practice, no source'],
      caution: 'sealBlow',
    },
  );
}

function packing(): Answer {
  return answer(
    'grease.packing',
    {
      speak: 'Old grease out first. Press grease through the rollers until it shows at the other end, then smear the outside.',
      show: lines(
        'All old grease out, bearing dry.',
        'By packer or palm: force grease in at the wide end until it shows at the other, all round.',
        'A film on the spindle and in the cups.',
      ),
    },
    { sources: ['jamestowndistributors.com hub sheet doc 1056'], caution: 'mixGrease' },
  );
}

function through(): Answer {
  return answer(
    'grease.through',
    {
      speak: 'Clean the fitting, turn the hub by hand, pump slowly until clean grease shows at the outer bearing.',
      show: lines(
        'Rubber plug out, fitting clean, hand gun only.',
        'Turn the hub slowly all the while; stop when clean grease shows, or at once when it pushes back.',
        'Wipe out what came; plug back in. (common practice, no source)',
      ),
    },
    { sources: ['common practice, no source; pressure on seals: NAVFAC P-300'], caution: 'sealBlow' },
  );
}
