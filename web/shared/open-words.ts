import type { OpenPoint } from '#wire';

/** "3 open, 11 still to do": what came up, as the log book counts it, and steps that are only not done yet. */
export function openWords(open: readonly OpenPoint[]): string {
  const ahead = open.filter(({ kind }) => kind === 'missing').length;
  const raised = open.length - ahead;
  const parts = [raised > 0 ? `${raised} open` : '', ahead > 0 ? `${ahead} still to do` : ''].filter(Boolean);
  return parts.length > 0 ? parts.join(', ') : 'Nothing open';
}
