import { parseArgs } from 'node:util';
import { sheet, sheetText } from '#dialogue';
import { openToRead } from '#log';
import { logPath } from '../http/house.ts';
import { knowOf } from '../http/know.ts';
import { loadSpeech } from '../http/load-speech.ts';
import { sheetCsv, sheetFile } from '../http/sheet.ts';
import { complain } from './complain.ts';

/** Prints a job's sheet, also while the server runs: `sheet JOB [--format text|csv|json]`. */
export async function run(args: readonly string[]): Promise<number> {
  try {
    const { values, positionals } = parseArgs({
      args: [...args],
      options: { format: { type: 'string' } },
      allowPositionals: true,
    });
    const { format = 'text' } = values;
    if (positionals.length !== 1 || !['text', 'csv', 'json'].includes(format))
      return say('usage: sheet JOB [--format text|csv|json]');
    return await print(positionals[0] ?? '', format);
  } catch (error) {
    return complain(error);
  }
}

async function print(id: string, format: string): Promise<number> {
  const speech = await loadSpeech(logPath());
  const log = openToRead(logPath());
  try {
    const job = log.job(id);
    if (!job) return say(`there is no job ${id}. The log book lists them: npm start, then /log.`);
    const know = knowOf(log, speech);
    if (format === 'csv') process.stdout.write(sheetCsv(job, know));
    else console.log(format === 'json' ? JSON.stringify(sheetFile(job, know), null, 2) : sheetText(sheet(job, know)));
    return 0;
  } finally {
    log.close();
  }
}

function say(text: string): number {
  console.error(`axlehand: ${text}`);
  return 1;
}
