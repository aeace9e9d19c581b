// A person who recorded words one by one: numbers joined from such recordings, where a folder of them is installed. Never committed.
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { rate, sox, type TestVoice } from '../support/speech.ts';

// biome-ignore format: a list
const ones = [
  'zero', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten', 'eleven', 'twelve', 'thirteen', 'fourteen',
  'fifteen', 'sixteen', 'seventeen', 'eighteen', 'nineteen',
];
const tens = ['twenty', 'thirty', 'forty', 'fifty', 'sixty', 'seventy', 'eighty', 'ninety'];
/** Where Debian's asterisk-core-sounds-en-wav keeps each word. */
const files: Readonly<Record<string, string>> = {
  ...Object.fromEntries(ones.map((word, value) => [word, `digits/${value}.wav`])),
  ...Object.fromEntries(tens.map((word, index) => [word, `digits/${20 + 10 * index}.wav`])),
  hundred: 'digits/hundred.wav',
  thousand: 'digits/thousand.wav',
  oh: 'digits/oh.wav',
  and: 'vm-and.wav',
};

/** Between two words of a quick talker who does not run them together. */
const gapSeconds = 0.06;
/** An "s" at telephone bandwidth is hardly louder than the room: at 1 % of full scale "six" would lose its end. */
const untilSound = ['silence', '1', '0.01', '0.2%'];
const trimmed = [...untilSound, 'reverse', ...untilSound, 'reverse'];

export const canBeJoined = (text: string): boolean => text.split(' ').every((word) => word in files);

/** @throws TypeError where a recording is missing */
export function recordedVoice(folder: string): TestVoice {
  const missing = Object.values(files).filter((file) => !existsSync(join(folder, file)));
  if (missing.length > 0) throw new TypeError(`${folder} lacks ${missing.join(', ')}`);
  const known = new Map<string, Float32Array>();
  const word = (text: string): Float32Array => {
    const sound = known.get(text) ?? sox([join(folder, files[text] ?? '')], trimmed);
    known.set(text, sound);
    return sound;
  };
  const gap = new Array<number>(Math.round(gapSeconds * rate)).fill(0);
  return { name: 'recordings', say: (text) => Float32Array.from(text.split(' ').flatMap((each) => [...word(each), ...gap])) };
}
