// Is the hub too hot: the hubs named in the question, else those of this job, against each other, the air and the trade's figures.
import { amountIn, axlesInWork, type Fraction, type HubReading, isNumber, judgeHubHeat, measured, type Reading } from '#core';
import { hubHeat as figures } from '#data';
import type { Answer } from '../types.ts';
import { type Ask, answer, join, lines, same } from './service-ask.ts';
import { heatWords } from './service-judged.ts';

export function hubHeat(ask: Ask): Answer {
  const air = named(ask, 'ambientTemperature')[0] ?? degreesOf(measured(ask.readings, { field: 'ambientTemperature' }));
  const verdict = judgeHubHeat(hubsOf(ask), air);
  const table = figures.map(
    ({ kind, above, act, source }) => `${kind === 'apart' ? 'apart by' : 'over'} ${above} °F: ${act} (${source})`,
  );
  const told = verdict
    ? heatWords[verdict.code](verdict, ask)
    : same('Compare the hubs after the same run; twenty degrees apart, look at the hotter one. No law sets a figure.');
  return answer(
    `hubHeat.${verdict?.code ?? 'unmeasured'}`,
    {
      speak: join(
        told.speak,
        verdict && !air && verdict.code !== 'hubAlone' ? 'Call the ambient and I hold them against it.' : undefined,
      ),
      show: lines(
        told.show,
        ...table,
        'On a hundred-degree day a hub runs as far over the air as today (common practice, no source).',
      ),
    },
    {
      sources: figures.map(({ source }) => source),
      used: ask.readings.filter(({ field }) => field === 'hubTemperature' || field === 'ambientTemperature'),
      missing: verdict ? (air ? [] : ['ambientTemperature']) : ['hubTemperature'],
    },
  );
}

function hubsOf(ask: Ask): readonly HubReading[] {
  const said = ask.given.flatMap((one): readonly HubReading[] => {
    const isHub = one.kind === 'quantity' || one.field === 'hubTemperature';
    const degrees = isHub ? degreesOf({ ...one, field: 'hubTemperature', stage: 'fitted' }) : undefined;
    return degrees ? [{ hub: one.side === 'left' || one.side === 'right' ? one.side : '', temperature: degrees }] : [];
  });
  return said.length > 0 ? said : hubsMeasured(ask);
}

function hubsMeasured({ readings }: Ask): readonly HubReading[] {
  return axlesInWork(readings).flatMap((axle) =>
    (['left', 'right'] as const).flatMap((side) => {
      const where = axle === undefined ? { side } : { side, axle };
      const degrees = degreesOf(measured(readings, { field: 'hubTemperature', ...where }));
      return degrees ? [{ hub: [axle, side].filter(Boolean).join(' '), temperature: degrees }] : [];
    }),
  );
}

function named({ given }: Ask, field: 'ambientTemperature'): readonly Fraction[] {
  return given.flatMap((one) =>
    one.kind === 'measure' && one.field === field ? (degreesOf({ ...one, field, stage: 'fitted' }) ?? []) : [],
  );
}

/** Fahrenheit; undefined for what is no temperature ("two hubs"). */
function degreesOf(reading: Pick<Reading, 'field' | 'value' | 'unit' | 'stage'> | undefined): Fraction | undefined {
  const bare = reading?.unit === undefined || ['1', 'degF', 'degC'].includes(reading.unit);
  return reading && bare && isNumber(reading.value) ? amountIn(reading, 'degF').value : undefined;
}
