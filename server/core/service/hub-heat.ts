// Hub temperatures after a run: side against side first, then against the air and the figures the trade acts on.
import { type HubHeatRow, hubHeat } from '#data';
import type { Fraction } from '../quantity/index.ts';

export interface HubReading {
  /** "left", "front.right": whatever names the hub. */
  readonly hub: string;
  /** Fahrenheit. */
  readonly temperature: Fraction;
}

/** All in Fahrenheit. `rows` decided it; `overAmbient` of the hottest, where the air was given. */
export interface HubHeat {
  readonly code: 'hubsAlike' | 'hubApart' | 'hubHot' | 'hubStop' | 'hubAlone';
  readonly hottest: HubReading;
  readonly apart?: Fraction;
  readonly overAmbient?: Fraction;
  readonly rows: readonly string[];
  readonly sources: readonly string[];
}

/** Judges the hubs of one run. @returns undefined without a reading. */
export function judgeHubHeat(hubs: readonly HubReading[], ambient?: Fraction): HubHeat | undefined {
  const [hottest, ...rest] = hubs.toSorted((one, other) => other.temperature.compare(one.temperature));
  if (!hottest) return undefined;
  const coolest = rest.at(-1);
  const apart = coolest && hottest.temperature.sub(coolest.temperature);
  const passed = rowsPassed(hottest.temperature, apart);
  const rows = passed.length > 0 ? passed : hubHeat.filter(({ kind }) => kind === 'apart');
  return {
    code: passed[0] ? codeOf(passed[0]) : coolest ? 'hubsAlike' : 'hubAlone',
    hottest,
    ...(apart ? { apart } : {}),
    ...(ambient ? { overAmbient: hottest.temperature.sub(ambient) } : {}),
    rows: rows.map(({ id }) => id),
    sources: rows.map(({ source }) => source),
  };
}

/** Gravest first. */
function rowsPassed(hottest: Fraction, apart: Fraction | undefined): readonly HubHeatRow[] {
  const passes = ({ kind, above }: HubHeatRow) =>
    kind === 'absolute' ? hottest.compare(above) > 0 : apart !== undefined && apart.compare(above) >= 0;
  return hubHeat.filter(passes).toSorted((one, other) => Number(other.above) - Number(one.above));
}

const codes: Readonly<Record<string, HubHeat['code']>> = { stop: 'hubStop', inspect: 'hubHot', apart: 'hubApart' };

function codeOf({ id }: HubHeatRow): HubHeat['code'] {
  const code = codes[id];
  if (!code) throw new TypeError(`data/service/hub-heat.json row '${id}' has no verdict`);
  return code;
}
