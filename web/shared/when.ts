/** "25 Nov, 09:42", in this device's own time, with the year where it is another one; empty for no time. */
export function when(iso: string): string {
  const at = new Date(iso);
  if (iso === '' || Number.isNaN(at.getTime())) return '';
  const isThisYear = at.getFullYear() === new Date().getFullYear();
  return at.toLocaleString('en-GB', {
    day: 'numeric',
    month: 'short',
    hour: '2-digit',
    minute: '2-digit',
    ...(isThisYear ? {} : { year: 'numeric' }),
  });
}

/** "25 November 2026". */
export function day(iso: string): string {
  const at = new Date(iso);
  if (iso === '' || Number.isNaN(at.getTime())) return '';
  return at.toLocaleDateString('en-GB', { day: 'numeric', month: 'long', year: 'numeric' });
}
