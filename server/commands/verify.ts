import { openToRead } from '#log';
import { logPath } from '../http/house.ts';
import { complain } from './complain.ts';

/** Checks the whole log, also while the server runs: the chain, the file's pages, the log book. Exit 1 names the first bad event. */
export async function run(args: readonly string[]): Promise<number> {
  try {
    const log = openToRead(args[0] ?? logPath());
    const { events, jobs, head, fault, clockWentBack } = log.verify();
    log.close();
    for (const seq of clockWentBack)
      console.log(`note: the clock went back at event ${seq}; order is by number, so nothing is lost`);
    if (!fault) {
      console.log(`good: ${events} events, ${jobs} jobs, head ${head}`);
      return 0;
    }
    const where = fault.seq === undefined ? '' : `event ${fault.seq} `;
    console.error(
      `axlehand: ${where}${fault.job === undefined ? '' : `(job ${fault.job}) `}${fault.what}. ${events} events before it are good.`,
    );
    return 1;
  } catch (error) {
    return complain(error);
  }
}
