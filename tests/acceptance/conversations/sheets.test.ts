// The sheet of each whole job: whatever stands in the record is on it, in each of its forms.
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { type Sheet, sheet, sheetHeader, sheetRows, sheetText } from '#dialogue';
import type { JobRecord } from '#log/events';
import { aTechnician } from '../../support/conversation.ts';
import { know } from '../../support/dialogue.ts';
import { play } from '../../support/script.ts';

const folder = new URL('.', import.meta.url);
const scripts = readdirSync(folder).filter((name) => name.endsWith('.txt'));

function played(name: string): { readonly job: JobRecord; readonly made: Sheet } {
  const technician = aTechnician();
  play(readFileSync(new URL(name, folder), 'utf8'), technician);
  const job = technician.job();
  if (!job) throw new TypeError(`${name} ends without a job`);
  return { job, made: sheet(job, know) };
}

describe.each(scripts)('the sheet of %s', (name) => {
  const { job, made } = played(name);
  const text = sheetText(made);
  const rows = sheetRows(made).map((cells) => Object.fromEntries(cells.map((cell, at) => [sheetHeader[at], cell])));
  const cells = [...made.measurements, ...made.proof].flatMap(({ found, fitted }) =>
    [found, fitted].flatMap((cell) => (cell ? [...cell.earlier, cell] : [])),
  );

  it('has every value that stands, once, and says which nobody confirmed', () => {
    const live = job.values.filter(({ status }) => status === 'heard' || status === 'confirmed');
    expect(cells.map(({ id }) => id).sort()).toEqual(live.map(({ id }) => id).sort());
    for (const { status, id } of live) expect(cells.find((cell) => cell.id === id)?.sure).toBe(status === 'confirmed');
    for (const { shown, sure } of cells) expect(text).toContain(sure ? ` ${shown}` : `? ${shown}`);
    for (const { value, at, who } of cells) expect(rows).toContainEqual(expect.objectContaining({ value, at, who }));
  });

  it('keeps what was corrected or struck, with the reason', () => {
    const gone = job.values.filter(({ status }) => status === 'corrected' || status === 'struck');
    expect(made.changed.map(({ was }) => was.id)).toEqual(gone.map(({ id }) => id));
    for (const { was, reason } of made.changed) expect(text).toMatch(new RegExp(`${was.shown}.*${reason}`));
    expect(rows.filter(({ part }) => part === 'changed').map(({ value }) => value)).toEqual(gone.map(({ value }) => value));
  });

  it('has the verdict, what was skipped, the notes, the cautions and what is open', () => {
    expect(made.verdict?.taken).toBe(job.verdict && job.verdict.accepted === true);
    expect(made.skipped).toHaveLength(job.steps.filter(({ status }) => status === 'skipped').length);
    const said = [
      ...(made.verdict ? [made.verdict.text, ...made.verdict.reasons] : []),
      ...made.skipped.flatMap(({ step, reason }) => [step, reason]),
      ...made.notes.map((note) => note.text),
      ...made.cautions,
      ...made.open.map((point) => point.text),
    ];
    for (const words of said) {
      expect(text).toContain(words);
      expect(rows.some(({ item, remark }) => [item, remark].some((cell) => cell?.includes(words)))).toBe(true);
    }
    expect(new Set(job.cautions.map(({ id }) => id)).size).toBe(made.cautions.length);
  });
});

it('signs for nobody', () => expect(sheetText(played('hub-service.txt').made)).toContain('Signature: ____'));
