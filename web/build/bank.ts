// Renders the phrase bank: every name, number word, unit and prompt that a read-back can need.
import { createHash } from 'node:crypto';
import { fields, units } from '#data';
import { sayField, sayValue } from '#intents';
import { openVoice, voiceRate } from '../../server/voice/flite.ts';
import { joinParts } from '../shared/parts.ts';
import { encode } from '../speaking/adpcm.ts';
import { bankRate, bankWords } from '../speaking/bank.ts';
import prompts from '../speaking/prompts.json' with { type: 'json' };

const count = (value: string): string => sayValue(undefined, { value, unit: '1' });
const range = (from: number, to: number): number[] => Array.from({ length: to - from + 1 }, (_, index) => from + index);

function fractions(): string[] {
  const parts = [2, 4, 8, 16].flatMap((under) => range(1, under - 1).map((over) => count(`${over}/${under}`)));
  const joined = [2, 4, 8, 16].flatMap((under) =>
    range(1, under - 1).map((over) => count(`72 ${over}/${under}`).replace(/^seventy-two /, '')),
  );
  return [...parts, ...joined];
}

function phrases(): string[] {
  const numbers = [...range(0, 20), 30, 40, 50, 60, 70, 80, 90].map(String).map(count);
  const names = fields.map(({ id }) => sayField(id));
  const measures = units.flatMap(({ id }) =>
    ['1', '2'].map((value) => sayValue(undefined, { value, unit: id }).replace(/^(one|two)\b/, '')),
  );
  return [...numbers, ...fractions(), ...names, ...measures, ...prompts.phrases];
}

/** Seldom spoken, so not rendered whole. */
function words(): string[] {
  const odd = ['1/32', '3/32', '1/64', '3/64', '1/1000', '5/1000', '101', '5050'].map(count);
  const choices = fields.flatMap(({ id, choices = [] }) => choices.map((choice) => sayValue(id, { value: choice })));
  return [...phrases(), ...odd, ...choices, ...prompts.words, ...'abcdefghijklmnopqrstuvwxyz'].flatMap((text) =>
    plain(text).split(' '),
  );
}

const plain = (text: string): string =>
  bankWords(text)
    .replace(/[^\p{L}' ]/gu, ' ')
    .replace(/\s+/g, ' ')
    .trim();

const clips = (): string[] => [...new Set([...phrases().map(plain), ...words()])].filter(Boolean).sort();

/** Changes when the bank would. */
export const bankKey = (): string =>
  createHash('sha256')
    .update(JSON.stringify(['flite slt 1', clips()]))
    .digest('hex')
    .slice(0, 10);

/** How flite reads a clip aright. */
const asSaid = (words: string): string =>
  words === 'a' ? 'uh' : words.replace(/\b([b-z])\b/g, (letter) => letter.toUpperCase());

/** Without the silence that a synthesiser puts around each sentence. */
function trimmed(samples: Int16Array): Int16Array {
  const loudest = samples.reduce((top, sample) => Math.max(top, Math.abs(sample)), 0);
  const limit = loudest * 0.02;
  const pad = Math.round(voiceRate * 0.012);
  const first = samples.findIndex((sample) => Math.abs(sample) > limit);
  const last = samples.findLastIndex((sample) => Math.abs(sample) > limit);
  return samples.slice(Math.max(0, first - pad), last + pad);
}

export async function renderBank(): Promise<Uint8Array> {
  if (voiceRate !== bankRate) throw new TypeError(`bank is ${bankRate} Hz, voice is ${voiceRate}`);
  const voice = await openVoice();
  return joinParts(clips().map((words) => [words, encode(trimmed(voice.say(asSaid(words))))]));
}
