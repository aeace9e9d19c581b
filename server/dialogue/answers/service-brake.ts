// Electric brakes: current, magnets, wire, breakaway, drums and linings.
import {
  brakeCurrent,
  brakesOf,
  breakawayCharge,
  breakawayRule,
  drumOf,
  Fraction,
  isNumber,
  liningLimit,
  magnetRows,
  measured,
  type Quantity,
  throughWire,
  wireDrop,
} from '#core';
import { drumLimits, type FieldId, wireGauges } from '#data';
import type { Answer } from '../types.ts';
import { sentence, showNamed } from '../words.ts';
import { type Ask, answer, both, givenIn, lines, same } from './service-ask.ts';
import { askBack } from './service-follow-ups.ts';
import { judged } from './service-judged.ts';

export function brake(ask: Ask): Answer {
  const { words } = ask;
  if (/break ?away/.test(words)) return breakaway(ask);
  if (/gauge|wire|drop/.test(words)) return wire(ask);
  if (/drum/.test(words)) return drums(ask);
  if (/lining|shoe/.test(words)) return linings(ask);
  if (/ohm|resist|magnet/.test(words) && !/amp|current/.test(words)) return magnets(ask);
  return current(ask);
}

/** Lines of what was recorded, each with its verdict. */
function recorded(ask: Ask, ...fields: readonly FieldId[]): readonly string[] {
  const values = ask.readings.filter(({ field }) => fields.includes(field));
  return values.map((value) => `${showNamed(value, ask.know.shop)}. ${judged(value, ask)?.show ?? ''}`);
}

function current(ask: Ask): Answer {
  const kind = measured(ask.readings, { field: 'brakeType' });
  if (kind?.value === 'idler') return answer('brake.none', same('No brakes on this axle.'), { used: [kind] });
  const [volts] = givenIn(ask, 'V');
  const expected = brakeCurrent(brakesIn(ask), volts?.value ?? new Fraction('12.5'), drumIn(ask));
  const { low, high } = expected.total;
  const count = ask.tell.count(expected.brakes);
  return answer(
    'brake.current',
    {
      speak: `${ask.tell.range(low, high, 'A').speak} in all for ${count.speak} brakes at full, and nothing at zero.`.replace(
        /^./,
        (letter) => letter.toUpperCase(),
      ),
      show: lines(
        `${count.show} brakes at ${expected.volts.valueOf()} V: ${low.valueOf().toFixed(1)} to ${high.valueOf().toFixed(1)} A in all, ${expected.each.low.valueOf().toFixed(1)} to ${expected.each.high.valueOf().toFixed(1)} A each`,
        'Back to zero amps at off (49 CFR 570.58). Wire and joints take some.',
        ...recorded(ask, 'magnetCurrent', 'magnetResistance'),
      ),
    },
    {
      sources: [...expected.sources, '49 CFR 570.58'],
      used: [kind, measured(ask.readings, { field: 'brakeSize' }), measured(ask.readings, { field: 'axleCount' })],
    },
  );
}

function magnets(ask: Ask): Answer {
  const rows = magnetRows(drumIn(ask));
  const band = rows.map((row) => ({
    drums: row.drums,
    told: ask.tell.range(new Fraction(row.low), new Fraction(row.high), 'ohm'),
  }));
  return answer(
    'brake.magnets',
    {
      speak:
        `${band.map(({ drums, told }) => `${told.speak}${band.length > 1 ? ` for ${drums.length > 1 ? 'ten and twelve' : 'seven'} inch` : ''}`).join(', ')}. Lead to case must read open.`.replace(
          /^./,
          (letter) => letter.toUpperCase(),
        ),
      show: lines(
        ...band.map(({ drums, told }) => `${drums.join(', ')} in: ${told.show}`),
        'Lead to case: open, or the magnet is shorted.',
        ...recorded(ask, 'magnetResistance'),
      ),
    },
    { sources: rows.map(({ source }) => source) },
  );
}

/** "twelve gauge, thirty feet, fifteen amps". */
function wire(ask: Ask): Answer {
  const [amps] = givenIn(ask, 'A');
  const [length] = givenIn(ask, 'in', 'm');
  const gauge = gaugeIn(ask.words);
  if (!gauge && length && amps) return gaugeFor(ask, amps.value, length);
  if (!gauge || !length) return askBack('brake.wireMissing');
  const feet = feetOf(length);
  const expected = brakeCurrent(brakesIn(ask), new Fraction(12), drumIn(ask));
  const flow = amps?.value ?? expected.total.high;
  const found = wireDrop(flow, feet, gauge);
  if (found.code !== 'wireDrop') return answer('brake.unknownGauge', same(`I have wire of ${found.known.join(', ')} gauge.`));
  const true_ = throughWire(new Fraction(12), expected.together, found.ohms);
  return answer(
    'brake.wire',
    {
      speak: `${ask.tell.amount({ value: found.drop, unit: 'V' }).speak} lost out and back.`.replace(/^./, (letter) =>
        letter.toUpperCase(),
      ),
      show: lines(
        `AWG ${found.gauge.id}, ${feet.valueOf()} ft one way, ${flow.valueOf().toFixed(1)} A: ${found.drop.valueOf().toFixed(2)} V lost out and back`,
        `${expected.brakes} magnets behind it draw ${true_.amps.valueOf().toFixed(1)} A and get ${true_.atMagnets.valueOf().toFixed(1)} of 12 V.`,
      ),
    },
    { sources: [found.gauge.source] },
  );
}

const feetOf = ({ value, unit }: Quantity): Fraction => (unit === 'm' ? value.div('0.3048') : value.div(12));

/** No gauge named: what each loses over that run; the choice is the maker's and the code's. */
function gaugeFor(ask: Ask, amps: Fraction, length: Quantity): Answer {
  const feet = feetOf(length);
  const runs = wireGauges
    .flatMap(({ id }) => {
      const found = wireDrop(amps, feet, id);
      return found.code === 'wireDrop' ? [{ id, drop: found.drop, source: found.gauge.source }] : [];
    })
    .toSorted((one, other) => Number(one.id) - Number(other.id));
  const told = runs.filter(({ id }) => ['10', '12', '14'].includes(id));
  return answer(
    'brake.gauges',
    {
      speak: `${sentence(told.map(({ id, drop }) => `${ask.tell.count(Number(id)).speak} gauge loses ${ask.tell.amount({ value: drop, unit: 'V' }).speak}`).join(', '))}. The brake maker's and local wiring rules choose.`,
      show: lines(
        `${feet.valueOf()} ft one way, ${amps.valueOf().toFixed(1)} A, lost out and back:`,
        ...runs.map(({ id, drop }) => `AWG ${id}: ${drop.valueOf().toFixed(2)} V`),
        "The brake maker's and local wiring rules choose.",
      ),
    },
    { sources: runs.map(({ source }) => source) },
  );
}

const gaugeWords: Readonly<Record<string, string>> = {
  eight: '8',
  ten: '10',
  twelve: '12',
  fourteen: '14',
  sixteen: '16',
  eighteen: '18',
  twenty: '20',
};

function gaugeIn(words: string): string | undefined {
  const said = /\b(\w+) ?gauge/.exec(words)?.[1] ?? /\bawg (\w+)/.exec(words)?.[1];
  return said === undefined ? undefined : (gaugeWords[said] ?? (/^\d+$/.test(said) ? said : undefined));
}

function breakaway(ask: Ask): Answer {
  const expected = brakeCurrent(brakesIn(ask), new Fraction(12), drumIn(ask));
  const { needed } = breakawayCharge(expected.total.high);
  return answer(
    'brake.breakaway',
    {
      speak: 'Unplug the trailer, pull the pin: brakes lock at once and hold fifteen minutes. Then pin back in.',
      show: lines(
        `Unplugged. Pin out: every brake locks at once and holds ${breakawayRule.minutes} minutes.`,
        `${expected.brakes} brakes take ${needed.valueOf().toFixed(1)} Ah in that time, without reserve.`,
      ),
    },
    { sources: [breakawayRule.source], caution: 'liveBrakes' },
  );
}

function drums(ask: Ask): Answer {
  const asked = drumIn(ask);
  const rows = drumLimits.filter(({ nominal }) => asked === undefined || nominal === asked);
  const listed = (rows.length > 0 ? rows : drumLimits).toReversed();
  return answer(
    'brake.drums',
    {
      speak: `The figure cast in the drum rules; ${listed
        .map(
          ({ nominal, max }) =>
            `${ask.tell.count(Number(nominal)).speak} inch goes to ${ask.tell.decimal({ value: new Fraction(max), unit: '1' }).speak}`,
        )
        .join(', ')}.`,
      show: lines(
        'The figure cast in the drum rules.',
        ...listed.map(({ nominal, max, source }) => `${nominal} in: ${max} in (${source})`),
        ...recorded(ask, 'drumDiameter', 'liningThickness'),
      ),
    },
    { sources: listed.map(({ source }) => source), caution: 'brakeDust' },
  );
}

function linings(ask: Ask): Answer {
  return answer(
    'brake.linings',
    both((form) =>
      lines('A sixteenth of an inch or less at the shoe is out.', ...(form === 'show' ? recorded(ask, 'liningThickness') : [])),
    ),
    {
      sources: [liningLimit.source],
      caution: 'brakeDust',
    },
  );
}

/** The drum that the question names ("ten inch magnet"), else the trailer's. */
function drumIn({ given, readings }: Ask): string | undefined {
  const said = given.find(({ value, unit }) => unit === 'in' && isNumber(value) && sizes.has(new Fraction(value).toFraction()));
  return said ? new Fraction(said.value).toFraction() : drumOf(readings);
}

const sizes: ReadonlySet<string> = new Set(drumLimits.map(({ nominal }) => nominal));

const counts: Readonly<Record<string, number>> = { one: 1, two: 2, three: 3, four: 4, six: 6, eight: 8 };

/** As many as the question names ("four twelve inch brakes"), else as this trailer has. */
function brakesIn({ words, readings }: Ask): number {
  const said = /\b(one|two|three|four|six|eight|[1-8])\b(?! and| point)[^?]*?\b(?:brakes|magnets)\b/.exec(words)?.[1] ?? '';
  return counts[said] ?? (Number(said) || brakesOf(readings));
}
