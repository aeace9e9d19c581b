// A shop's own procedures, read from its folder as start and talk do.
import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { planSteps } from '#core';
import { readPractice } from '../../../server/http/procedures.ts';

const step = { id: 'paintMark', say: 'Mark the pair.', show: 'One dab.', why: 'They stay a pair.', source: 'shop rule 4' };

function folderWith(files: Readonly<Record<string, unknown>>): string {
  const folder = mkdtempSync(join(tmpdir(), 'axlehand-procedures-'));
  for (const [name, content] of Object.entries(files))
    writeFileSync(join(folder, name), typeof content === 'string' ? content : JSON.stringify(content));
  return folder;
}

function refusal(files: Readonly<Record<string, unknown>>): string {
  try {
    readPractice(folderWith(files));
    return 'none';
  } catch (error) {
    return error instanceof Error ? error.message : '';
  }
}

describe("a shop's folder", () => {
  test('no folder and an empty one change nothing', () => {
    expect(readPractice(join(tmpdir(), 'axlehand-no-such-folder'))).toBeUndefined();
    expect(readPractice(folderWith({ 'notes.txt': 'x' }))).toBeUndefined();
  });

  test('its step stands where it says, in every job that has the procedure', () => {
    const practice = readPractice(folderWith({ 'hubs.json': { id: 'makeSafe', steps: [{ ...step, after: 'park' }] } }));
    const keys = planSteps('inspection', [], practice).map(({ key }) => key);
    expect(keys.indexOf('makeSafe/paintMark')).toBe(keys.indexOf('makeSafe/park') + 1);
  });

  test.each([
    ['not JSON', '{"id":', /^a\.json: .*JSON/],
    ['a step without what to say', { id: 'makeSafe', steps: [{ ...step, say: '' }] }, /^a\.json, step 'paintMark': say: /],
    ['a name that no step has', { id: 'makeSafe', stepz: [] }, /^a\.json: .*stepz/],
    [
      'a gate that nothing fills',
      { id: 'makeSafe', steps: [{ ...step, record: [{ field: 'mood', stage: 'found', gate: true }] }] },
      /^a\.json, step 'paintMark': record\.0\.field: /,
    ],
    [
      'a step that is never reached',
      { id: 'makeSafe', steps: [{ ...step, when: [{ field: 'slung', is: ['overSlung'] }] }] },
      /^a\.json, step 'paintMark': waits for 'slung', .*never reached\.$/,
    ],
    ['a procedure that no job has', { id: 'wash', steps: [step] }, /^a\.json: no kind of job uses it/],
    [
      'a step after none',
      { id: 'makeSafe', steps: [{ ...step, after: 'zz' }] },
      /^a\.json, step 'paintMark': comes after step 'zz'/,
    ],
    ['a drop of nothing', { id: 'inspectMeasure', drop: ['nothing'] }, /^a\.json: drops step 'nothing', which is not there/],
  ])('%s is refused whole, naming file, step and fault', (_what, content, line) => {
    expect(refusal({ 'a.json': content })).toMatch(line);
  });
});
