// Measures what the speech model expects of each word before it hears anything: its log-probability with silence for sound,
// averaged over sentences of the grammar. Rare trade words ("hub") come out low; the search takes a part of that back.
// Run after the vocabulary has changed: tsx tests/bench/priors.ts (some minutes); writes web/recogniser/priors.json.
import { writeFileSync } from 'node:fs';
import { fields } from '#data';
import { sample } from '#intents/grammar';
import { vocabulary } from '../../web/recogniser/engine/language.ts';
import { nodeModel, nodeSpellings } from '../support/hearing.ts';
import { randomFrom } from '../support/speech.ts';

const perWord = 5;
const atOnce = 8;
const target = new URL('../../web/recogniser/priors.json', import.meta.url).pathname;

/** Sentences in which every word that can be sampled occurs a few times. */
function sentences(): string[][] {
  const random = randomFrom(5);
  const seen = new Map<string, number>();
  const chosen: string[][] = [];
  const contexts = [undefined, ...fields.map(({ id }) => ({ fields: [id], yesNo: true }))];
  for (let tries = 0; tries < 60_000; tries += 1) {
    const words = sample(random, contexts[tries % contexts.length]).text.split(' ');
    if (words.length > 12 || !words.some((word) => (seen.get(word) ?? 0) < perWord)) continue;
    for (const word of words) seen.set(word, (seen.get(word) ?? 0) + 1);
    chosen.push(words);
  }
  return chosen;
}

interface Step {
  readonly word: string;
  readonly at: number;
  readonly token: number;
}

const spellings = nodeSpellings();

function steps(words: readonly string[]): Step[] {
  return words.flatMap((word) => (spellings.of(word).mid[0] ?? []).map((token, at) => ({ word, at, token })));
}

async function run(): Promise<void> {
  const model = await nodeModel();
  const silence = await model.encode(new Float32Array(8000));
  const sums = new Map<string, { sum: number; count: number }[]>();
  const all = sentences()
    .map(steps)
    .sort((a, b) => a.length - b.length);
  for (let from = 0; from < all.length; from += atOnce) {
    const group = all.slice(from, from + atOnce);
    const first = await model.begin(silence);
    let { memory, rows } = first;
    const length = Math.max(...group.map((each) => each.length));
    for (let index = 0; index < length; index += 1) {
      group.forEach((each, which) => {
        const step = each[index];
        const row = rows[index === 0 ? 0 : which];
        if (!step || !row) return;
        const parts = sums.get(step.word) ?? [];
        sums.set(step.word, parts);
        parts[step.at] ??= { sum: 0, count: 0 };
        const part = parts[step.at];
        if (!part) return;
        part.sum += Math.max(-14, row(step.token));
        part.count += 1;
      });
      const parents = group.map((_, which) => (index === 0 ? 0 : which));
      ({ memory, rows } = await model.step(
        memory,
        parents,
        group.map((each) => each[index]?.token ?? 0),
      ));
    }
  }
  const rounded = (parts: readonly { sum: number; count: number }[]) =>
    parts.map(({ sum, count }) => Math.round((sum / count) * 10) / 10);
  const words = Object.fromEntries([...sums].sort(([a], [b]) => (a < b ? -1 : 1)).map(([word, parts]) => [word, rounded(parts)]));
  const about =
    'What the speech model expects of each word before it hears anything: log-probability of each of its tokens. Made by tests/bench/priors.ts.';
  writeFileSync(target, `${JSON.stringify({ about, words }).replaceAll('],"', '],\n"')}\n`);
  console.log(`${all.length} sentences, ${sums.size} of ${vocabulary().length} words`);
}

await run();
