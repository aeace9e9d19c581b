import { restoreLog } from '#log';
import { logPath } from '../http/house.ts';
import { complain } from './complain.ts';

/** Puts a backup in the log's place after checking it: `restore FILE`. The server must be stopped; the old log is kept. */
export async function run(args: readonly string[]): Promise<number> {
  const [from] = args;
  if (from === undefined) {
    console.error('axlehand: restore needs the name of a backup. Try: npm run -s restore -- var/backups/FILE');
    return 1;
  }
  try {
    const { verdict, kept } = restoreLog(from, logPath());
    console.log(`restored ${logPath()}: ${verdict.events} events, head ${verdict.head}`);
    if (kept !== undefined) console.log(`the log before it is kept as ${kept}`);
    return 0;
  } catch (error) {
    return complain(error);
  }
}
