// Every read-back can be said back: what the phrase bank speaks, the recogniser hears, and the parser takes for the same value.
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import type { FieldId } from '#data';
import { sayField, sayValue, understand } from '#intents';
import { engine } from '../../web/recogniser/engine/hear.ts';
import { language } from '../../web/recogniser/engine/language.ts';
import { type Bank, bankRate, openBank } from '../../web/speaking/bank.ts';
import { nodeHearing } from '../support/hearing.ts';

const folder = new URL('../../var/web/voice/', import.meta.url).pathname;

function builtBank(): Bank {
  const name = existsSync(folder) ? readdirSync(folder).find((each) => /^bank-.*\.bin$/.test(each)) : undefined;
  if (!name) throw new Error('No phrase bank: run npm run build first.');
  const { buffer, byteOffset, byteLength } = readFileSync(folder + name);
  return openBank(buffer.slice(byteOffset, byteOffset + byteLength) as ArrayBuffer);
}

function spoken(bank: Bank, text: string): Float32Array {
  const pieces = bank.plan(text);
  if (!pieces) throw new Error(`the bank cannot speak "${text}"`);
  return Float32Array.from(
    [0.3, ...pieces, 0.3].flatMap((piece) =>
      typeof piece === 'number' ? new Array<number>(Math.round(piece * bankRate)).fill(0) : [...bank.samples(piece)],
    ),
  );
}

const readBacks: readonly (readonly [FieldId, string, Parameters<typeof sayValue>[1]['unit']])[] = [
  ['hubFace', '579/8', 'in'],
  ['springCentre', '58', 'in'],
  ['springCentre', '117/2', 'in'],
  ['overhang', '35/4', 'in'],
  ['springWidth', '7/4', 'in'],
  ['beamDiameter', '19/8', 'in'],
  ['capacity', '3500', 'lb'],
  ['wheelNutTorque', '95', 'lbf.ft'],
  ['hubTemperature', '140', 'degF'],
  ['tyrePressure', '65', 'psi'],
  ['springLength', '15', 'in'],
  ['springLength', '50', 'in'],
];

it('hears its own read-backs as the values they speak', async () => {
  const { model, spellings, referee } = await nodeHearing();
  const ears = engine(model, spellings, language, referee);
  const bank = builtBank();
  const nothing = { fields: [], yesNo: false };
  for (const [field, value, unit] of readBacks) {
    const text = `${sayField(field)} ${sayValue(field, { value, ...(unit && { unit }) })}`;
    const { hearing } = await ears.hear(spoken(bank, text), nothing);
    const intents = hearing.ok ? understand(hearing.text, nothing).intents : [];
    expect({ text, hearing, intents }).toMatchObject({ text, intents: [{ kind: 'measure', field, value, unit }] });
    expect({ text, length: intents.length }).toEqual({ text, length: 1 });
  }
  await model.free();
});
