// Hub temperatures after a run: side against side first, then against the air and the figures the trade acts on.
import { type HubHeatRow, hubHeat } from '#data';
import { Fraction } from '../quantity/index.ts';

export interface HubReading {
  /** "left", "front.right": whatever names the hub. */
  readonly hub: string;
  /** Fahrenheit. */
  readonly temperature: Fraction;
}

/** All in Fahrenheit. `rows` decided it; `overAmbient` of the hottest, where the air was given. */
export interface HubHeat {
  readonly code: 'hubsAlike' | 'hubApart' | 'hubRise' | 'hubHot' | 'hubStop' | 'hubAlone';
  readonly hottest: HubReading;
  readonly apart?: Fraction;
  readonly overAmbient?: Fraction;
  /** What the hottest would come to in the air of a hot day; only where that is warmer than now. */
  readonly onHotDay?: Fraction;
  readonly rows: readonly string[];
  readonly sources: readonly string[];
}

/** A hot day's air, Fahrenheit (common practice, no source): a hub runs as far over the air on it as today. */
const hotDay = new Fraction(100);

/** Judges the hubs of one run. @returns undefined without a reading. */
export function judgeHubHeat(hubs: readonly HubReading[], ambient?: Fraction): HubHeat | undefined {
  const [hottest, ...rest] = hubs.toSorted((one, other) => other.temperature.compare(one.temperature));
  if (!hottest) return undefined;
  const coolest = rest.at(-1);
  const apart = coolest && hottest.temperature.sub(coolest.temperature);
  const onHotDay = ambient && ambient.compare(hotDay) < 0 ? hottest.temperature.sub(ambient).add(hotDay) : undefined;
  const passed = rowsPassed(hottest.temperature, apart);
  const later = passed.length === 0 && onHotDay ? rowsPassed(onHotDay, undefined) : [];
  const decided = [...passed, ...later];
  const rows = decided.length > 0 ? decided : hubHeat.filter(({ kind }) => kind === 'apart');
  return {
    code: passed[0] ? codeOf(passed[0]) : later[0] ? 'hubRise' : coolest ? 'hubsAlike' : 'hubAlone',
    hottest,
    ...(apart ? { apart } : {}),
    ...(ambient ? { overAmbient: hottest.temperature.sub(ambient) } : {}),
    ...(onHotDay ? { onHotDay } : {}),
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
