// How well is a shop heard? Speaks sentences of the grammar in six synthetic voices, mixes shop noise in, and prints what the
// recogniser makes of them: the right value, a wrong one taken, asked about, refused; and the time it took.
//   npm run -s bench:voice -- [--named 64] [--bare 24] [--voices 2] [--seed 2001] [--phrases 48] [--talk 38] [--job] [--alone]
//     [--recorded 104 --recordings /usr/share/asterisk/sounds/en_US_f_Allison] [--only "clean,20 dB"] [--jobs 2] [--json FILE] [--misses]
// --job adds a whole hub service, each line by each voice, heard as the dialogue waits for it; --recordings adds bare numbers joined
// from words that a person recorded (Debian's asterisk-core-sounds-en-wav); --alone hears without the referee. The sentences of a seed
// are the same every time; thresholds were fitted on those of seed 11, and 2001, 3007, 4001, 5003, 6007, 7001 and 8009 have been looked
// at: other seeds are unseen.
import { fork } from 'node:child_process';
import { existsSync, readdirSync, statSync, writeFileSync } from 'node:fs';
import { parseArgs } from 'node:util';
import { engine } from '../../web/recogniser/engine/hear.ts';
import { language, read } from '../../web/recogniser/engine/language.ts';
import { nodeHearing } from '../support/hearing.ts';
import { inNoise, missingTools, randomFrom, rate, shopNoise, testVoices } from '../support/speech.ts';
import { canBeJoined, recordedVoice } from './recordings.ts';
import { type Clip, clipsOf, type Result, table } from './voice-report.ts';
import { bare, bareOf, chatter, hubService, named, nothing, phrases } from './voice-sets.ts';

const { values: given } = parseArgs({
  options: {
    named: { type: 'string', default: '64' },
    bare: { type: 'string', default: '24' },
    voices: { type: 'string', default: '2' },
    phrases: { type: 'string', default: '48' },
    talk: { type: 'string', default: '38' },
    job: { type: 'boolean', default: false },
    recorded: { type: 'string', default: '104' },
    recordings: { type: 'string' },
    only: { type: 'string' },
    seed: { type: 'string', default: '2001' },
    jobs: { type: 'string', default: '2' },
    json: { type: 'string' },
    misses: { type: 'boolean', default: false },
    alone: { type: 'boolean', default: false },
    share: { type: 'string' },
  },
});

if (missingTools.length > 0) {
  console.error(`bench:voice needs ${missingTools.join(', ')}. Get them with: apt-get install espeak-ng flite sox`);
  process.exit(1);
}

const seed = Number(given.seed);
const shop = phrases();
/** Spread over the whole list. */
const every = Math.max(1, Math.ceil(shop.utterances.length / Math.max(1, Number(given.phrases))));
const clips = clipsOf({
  named: named(Number(given.named), randomFrom(seed)),
  bare: bare(Number(given.bare), randomFrom(seed + 1)),
  phrases: shop.utterances.filter((_, index) => Number(given.phrases) > 0 && index % every === 0),
  job: given.job ? hubService() : [],
  recorded: given.recordings ? bareOf(Number(given.recorded), randomFrom(seed + 2), canBeJoined) : [],
  chatter: chatter.slice(0, Number(given.talk)).map((text) => ({ text, expects: nothing })),
  voices: Number(given.voices),
}).filter(({ condition }) => given.only?.split(',').includes(condition) ?? true);

/** One share of the work, in a process of its own. */
async function share(which: number, of: number): Promise<void> {
  const begin = performance.now();
  const { model, spellings, referee } = await nodeHearing();
  const ears = engine(model, spellings, language, given.alone ? undefined : referee);
  await ears.hear(new Float32Array(rate), nothing);
  process.send?.({ initMs: performance.now() - begin });
  const noises = [0, 1, 2].map((index) => shopNoise(20, seed * 10 + index));
  const spoken = new Map<string, Float32Array>();
  const voices = [...testVoices, ...(given.recordings ? [recordedVoice(given.recordings)] : [])];
  for (const clip of clips.filter((each) => each.source % of === which)) {
    const random = randomFrom(seed * 1000 + clip.id);
    const key = `${clip.voice} ${clip.text}`;
    const speech =
      clip.text === '' ? new Float32Array(2 * rate) : (spoken.get(key) ?? voices[clip.voice]?.say(clip.text, random()));
    if (!speech) continue;
    spoken.set(key, speech);
    const noise = noises[Math.floor(random() * noises.length)] ?? new Float32Array(rate);
    const sound = clip.text === '' ? stretch(noise, clip.id, 2 * rate) : inNoise(speech, noise, clip.db, random());
    process.send?.({ result: await heard(ears, clip, sound) });
  }
  await model.free();
}

function stretch(noise: Float32Array, which: number, length: number): Float32Array {
  const at = (which * 9973) % (noise.length - length);
  return noise.subarray(at, at + length);
}

async function heard(ears: ReturnType<typeof engine>, clip: Clip, sound: Float32Array): Promise<Result> {
  const [begin, used] = [performance.now(), process.cpuUsage()];
  const { hearing, fit, lead, candidates, alternatives } = await ears.hear(sound, clip.expects);
  const ms = performance.now() - begin;
  const { user, system } = process.cpuUsage(used);
  const want = clip.text === '' ? '' : read(clip.text, clip.expects).key;
  const key = (text: string | undefined): string => (text === undefined ? '-' : read(text, clip.expects).key);
  const best = candidates[0]?.text;
  const kind = best === undefined ? 'none' : read(best, clip.expects).kind;
  return {
    ...clip,
    best: best ?? '',
    kind,
    fit,
    lead,
    ms,
    cpuMs: (user + system) / 1000,
    seconds: sound.length / rate,
    right: key(best) === want,
    band: hearing.ok ? hearing.band : 'refuse',
    offered: [best, ...alternatives].some((text) => key(text) === want),
  };
}

async function run(): Promise<void> {
  const jobs = Number(given.jobs);
  const results: Result[] = [];
  const inits: number[] = [];
  const begin = performance.now();
  await Promise.all(
    Array.from({ length: jobs }, (_, which) => {
      const child = fork(new URL(import.meta.url).pathname, [...process.argv.slice(2), '--share', `${which}/${jobs}`]);
      child.on('message', (message: { readonly result?: Result; readonly initMs?: number }) => {
        if (message.result) results.push(message.result);
        if (message.initMs) inits.push(message.initMs);
        if (process.stderr.isTTY) process.stderr.write(`\r${results.length} of ${clips.length} `);
      });
      return new Promise<void>((resolve, reject) =>
        child.on('exit', (code) => (code === 0 ? resolve() : reject(new Error(`a share of the bench ended with ${code}`)))),
      );
    }),
  );
  if (given.json) writeFileSync(given.json, JSON.stringify(results));
  console.log(table(results));
  console.log(`of the shop's ${shop.spoken} spoken phrases the grammar lets ${shop.utterances.length} be said`);
  if (given.misses)
    for (const { set, condition, text, best, band } of results.filter(({ right, text: said }) => said !== '' && !right))
      console.log(`${set} ${condition}: "${text}" heard as "${best}" (${band})`);
  console.log(
    `init ${Math.min(...inits).toFixed(0)} ms; ${payload()}; ${results.length} clips in ${((performance.now() - begin) / 1000).toFixed(0)} s`,
  );
}

function payload(): string {
  const folder = new URL('../../var/web/voice/', import.meta.url).pathname;
  if (!existsSync(folder)) return 'payload: run npm run build first';
  const sizes = readdirSync(folder)
    .filter((name) => name.endsWith('.br'))
    .map((name) => [name, statSync(folder + name).size] as const);
  const sum = (pattern: RegExp) => sizes.filter(([name]) => pattern.test(name)).reduce((total, [, size]) => total + size, 0);
  return `payload, brotli: model and runtime ${sum(/^(encoder|decoder|runtime|words|referee)/)} bytes, phrase bank ${sum(/^bank/)} bytes`;
}

if (given.share === undefined) await run();
else {
  const [which = 0, of = 1] = given.share.split('/').map(Number);
  await share(which, of);
  process.disconnect?.();
}
