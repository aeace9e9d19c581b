import { join } from 'node:path';
import { openToRead } from '#log';
import { logPath } from '../http/house.ts';
import { backupFolder, backupName } from '../http/nightly.ts';
import { complain } from './complain.ts';

/** A checked copy of the log, also while the server runs: `backup [FILE]`; without a name, into the folder of backups. */
export async function run(args: readonly string[]): Promise<number> {
  try {
    const log = openToRead(logPath());
    const file = args[0] ?? join(backupFolder(log.path), backupName(new Date().toISOString()));
    const { events, head } = await log.backup(file);
    log.close();
    console.log(`${file}: ${events} events, head ${head}`);
    return 0;
  } catch (error) {
    return complain(error);
  }
}
