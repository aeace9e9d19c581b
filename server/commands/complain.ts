import { LogFault } from '#log';
import { AuthorityFault } from '../http/certificates.ts';
import { ProcedureFault } from '../http/procedures.ts';

/** One line on standard error for a failure that a person can mend; anything else is a fault of ours and thrown on. @returns 1 */
export function complain(error: unknown): number {
  const text = wordsFor(error);
  if (text === null) throw error;
  console.error(`axlehand: ${text}`);
  return 1;
}

function wordsFor(error: unknown): string | null {
  if (error instanceof LogFault || error instanceof ProcedureFault || error instanceof AuthorityFault)
    return `${error.message} ${error.whatToDo}`;
  if (!(error instanceof Error) || !('code' in error)) return null;
  const place = 'address' in error ? `${error.address}:${'port' in error ? error.port : ''}` : '';
  switch (error.code) {
    case 'EADDRINUSE':
      return `${place} is in use. Stop what uses it, or set PORT (LAN_PORT, LAN_HELP_PORT on the shop's network) to another.`;
    case 'EADDRNOTAVAIL':
    case 'EACCES':
      return `cannot listen at ${place} (${error.code}). Set HOST and PORT to what this machine has.`;
    case 'ENOENT':
      return `${error.message}. Check the name.`;
    default:
      if (String(error.code).startsWith('ERR_OSSL'))
        return `the certificate cannot be used (${error.message}). Name a PEM certificate and the key that belongs to it.`;
      return String(error.code).startsWith('ERR_PARSE_ARGS') ? `${error.message}.` : null;
  }
}
