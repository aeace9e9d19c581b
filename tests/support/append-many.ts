// Run under strace: appends turns one by one, so that the calls that reach the disk can be counted.
import { openLog } from '#log';

const [path = '', count = '0'] = process.argv.slice(2);
const log = openLog(path);
for (let i = 0; i < Number(count); i++) {
  const events = [{ kind: 'jobOpened', jobKind: 'inspection', title: `job ${i}` }] as const;
  log.append({ turn: `counted-${i}`, job: null, at: '2026-11-25T09:00:00.000Z', who: 'x', events, receipt: { digest: 'x' } });
}
// Not closed: closing would flush once more and hide a turn that had not been.
process.kill(process.pid, 'SIGKILL');
