// Whatever the tool tells a technician to say, it understands: every example in its own sentences, and every hint of every step.
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { understand } from '#intents';
import { hintsFor } from '../../../server/dialogue/hints.ts';
import { wanted } from '../../../server/dialogue/plan.ts';
import { know, say, silent, type Talk, viewed } from '../../support/dialogue.ts';

const root = new URL('../../../', import.meta.url);

/** What the files of a folder say, by their text. */
const textsUnder = (folder: string, ending: string): readonly string[] =>
  readdirSync(new URL(folder, root), { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && entry.name.endsWith(ending))
    .map((entry) => readFileSync(`${entry.parentPath}/${entry.name}`, 'utf8'));

/** "Say it as two oh five, seventy-five, fifteen", "such as one and an eighth". */
const inSentences = /(?:\b[Ss]ay it (?:like|as)|, such as) ([a-zA-Z][^.'"`\n$]+)/g;
/** "Say the U-bolt thread: 'U bolt thread half twenty'." */
const inQuotes = /(?:: |[Ss]ay )'([^'\n]+)'/g;

const found = (texts: readonly string[], pattern: RegExp) =>
  texts.flatMap((text) => [...text.matchAll(pattern)].flatMap(([, example = '']) => example.split(/,? or (?=[a-zA-Z])/)));

const offered = [
  ...found(
    [...textsUnder('server/dialogue', '.ts'), ...textsUnder('intents/refine', '.ts'), ...textsUnder('intents/stamped', '.ts')],
    inSentences,
  ),
  ...found(textsUnder('data/procedures', '.json'), inQuotes),
];

describe("examples in the tool's own sentences", () => {
  it('are found', () => expect(new Set(offered).size).toBeGreaterThan(6));

  it.each([...new Set(offered)])('%s', (example) => {
    const { intents } = understand(example);
    expect(intents.map(({ kind }) => kind)).not.toContain('unknown');
    expect(intents.map(({ kind }) => kind)).not.toContain('problem');
    expect(intents.length).toBeGreaterThan(0);
  });
});

/** The job at each of its steps, each skipped in turn. */
function stepsOf(opening: string): readonly Talk[] {
  const talks: Talk[] = [say(silent, opening)];
  for (let talk = talks[0]; talk?.job && viewed(talk.job).step && talks.length < 80; talk = talks.at(-1)) {
    const skipped = say(talk, 'skip it for the test');
    const next = skipped.job?.asked ? say(skipped, 'yes') : skipped;
    if (next.job?.currentStep === talk.job.currentStep) break;
    talks.push(next);
  }
  return talks;
}

describe.each(['new job, axle replacement', 'new job, hub service'])('hints of a %s', (opening) => {
  const talks = stepsOf(opening);

  it('are given at each step', () => expect(talks.length).toBeGreaterThan(15));

  it('are understood, and the first is of what the step wants', () => {
    for (const { job } of talks) {
      if (!job) continue;
      const hints = hintsFor(job, know.shop);
      for (const hint of hints) {
        const { intents, unclaimed } = understand(hint, viewed(job).expects);
        expect({ step: job.currentStep, hint, unclaimed, unknown: intents.some(({ kind }) => kind === 'unknown') }).toEqual({
          step: job.currentStep,
          hint,
          unclaimed: [],
          unknown: false,
        });
      }
      const waited: readonly string[] = wanted(job).map(({ record }) => record.field);
      const [first] = understand(hints[0] ?? '', viewed(job).expects).intents;
      if (hints.length > 3) expect(waited).toContain(first?.kind === 'measure' ? first.field : first?.kind);
    }
  });
});
