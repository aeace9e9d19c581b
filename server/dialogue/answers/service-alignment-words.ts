// Squareness, spacing and toe in words: the size first, then the move.
import { Fraction, type HalvesVerdict, type ImpossibleDiagonals, type Spacing, type Squareness, type Toe } from '#core';
import { saySide, sentence } from '../words.ts';
import { type Ask, both, join, same, type Words } from './service-ask.ts';

function inch(value: Fraction | string, { tell }: Ask, form: keyof Words): string {
  return tell.amount({ value: new Fraction(value), unit: 'in' })[form];
}

const angleShown = (degrees: number | undefined, form: keyof Words, name: string): string =>
  form === 'show' && degrees !== undefined ? `, ${name} ${Math.abs(degrees).toFixed(2)}°` : '';

export function squareWords(verdict: Squareness | ImpossibleDiagonals, ask: Ask): Words {
  if (verdict.code === 'impossibleDiagonals')
    return both(
      (form) =>
        `${sentence(inch(verdict.difference, ask, form))} apart: no axle sits that crooked. Move nothing; measure coupler to spindle again, each side.`,
    );
  return both((form) => join(squareHead(verdict, ask, form), moveWords(verdict, ask, form)));
}

function squareHead({ code, difference, limit, uncertainty, degrees }: Squareness, ask: Ask, form: keyof Words): string {
  const [off, most] = [inch(difference, ask, form), inch(limit.limit, ask, form)];
  const angle = angleShown(degrees, form, 'thrust angle');
  if (difference.equals(0)) return 'Square: both the same.';
  if (code === 'square') return `Square: ${off} apart, ${most} allowed${angle}.`;
  if (code === 'notSquare') return `Not square: ${off} apart, ${most} allowed${angle}.`;
  return `${off} apart, ${most} allowed: too close to tell with a tape good to ${inch(uncertainty, ask, form)}${angle}.`;
}

function moveWords({ code, move }: Squareness, ask: Ask, form: keyof Words): string {
  if (!move || code === 'square') return '';
  const side = saySide(move.side, ask.know.shop);
  const other = saySide(move.side === 'left' ? 'right' : 'left', ask.know.shop);
  const at = move.oneEndAtSpring;
  const spring = at ? `, ${inch(at, ask, form)} at the spring` : '';
  return `Bring the ${side} end forward ${inch(move.oneEnd, ask, form)} at the spindle${spring}, or half of that and the ${other} end back as much.`;
}

export function spacingWords(
  { code, difference, wider, limit, uncertainty, byDocument, scrubDegrees }: Spacing,
  ask: Ask,
): Words {
  return both((form) => {
    const size = `${inch(difference, ask, form)} apart, ${inch(limit.limit, ask, form)} allowed${angleShown(scrubDegrees, form, 'scrub')}`;
    const head = {
      parallel: difference.equals(0) ? 'Parallel: both the same.' : `Parallel: ${size}.`,
      parallelUnsure: `${size}: too close to tell with a tape good to ${inch(uncertainty, ask, form)}.`,
      notParallel: `Not parallel: ${size}. ${wider === 'equal' ? '' : `Close the ${saySide(wider, ask.know.shop)} side or open the other.`}`,
    } as const;
    const failing = byDocument.filter(({ passes }) => !passes).map(({ limit: row }) => row.source);
    const documents = form === 'show' && failing.length > 0 ? `Over the limit of ${failing.join(', ')}.` : '';
    return join(head[code].trim(), documents);
  });
}

export function halvesWords({ code, toLeft }: HalvesVerdict, ask: Ask): Words {
  const side = saySide(toLeft.lt(0) ? 'right' : 'left', ask.know.shop);
  if (code === 'halvesAlike') return same('Halves alike: the beam stands in the middle.');
  return both(
    (form) =>
      `Halves ${inch(toLeft.abs().mul(2), ask, form)} apart: the beam stands ${inch(toLeft.abs(), ask, form)} to the ${side}, shifted on its springs or bent.`,
  );
}

export function toeWords({ code, total, eachSide, way, limit, uncertainty, totalDegrees }: Toe, ask: Ask): Words {
  return both((form) => {
    if (way === 'none') return 'No toe.';
    const size = `Toe ${way} ${inch(total.abs(), ask, form)} in all, ${inch(eachSide.abs(), ask, form)} a side${angleShown(totalDegrees, form, 'total')}`;
    const most = `${inch(limit.limit, ask, form)} allowed`;
    const tail = {
      toeWithin: `${most}.`,
      toeUnsure: `${most}: too close to tell with a tape good to ${inch(uncertainty, ask, form)}.`,
      toeBeyond: `${most}. A solid axle with that much is bent: measure again, then do not fit it.`,
    } as const;
    return `${size}; ${tail[code]}`;
  });
}
