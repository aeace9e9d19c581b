import { openLog } from '#log';
import { logPath } from '../http/house.ts';
import { complain } from './complain.ts';

/** Makes the log book, the values and the words anew from the events. The server must be stopped. */
export async function run(args: readonly string[]): Promise<number> {
  try {
    const log = openLog(args[0] ?? logPath());
    const jobs = log.rebuild();
    log.close();
    console.log(`rebuilt: ${jobs} jobs from ${log.path}`);
    return 0;
  } catch (error) {
    return complain(error);
  }
}
