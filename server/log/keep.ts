// Which backups stay: the newest seven, then one a week for four weeks, one a month for twelve.

/** Names of backups (`axlehand-2026-11-25T02-00-00.db`) that may go. */
export function surplus(names: readonly string[]): string[] {
  const dated = names
    .filter((name) => /^axlehand-\d{4}-\d\d-\d\dT[\d-]+\.db$/.test(name))
    .sort()
    .reverse();
  const daily = dated.slice(0, 7);
  const weekly = newestOfEach(dated, week).slice(0, 4);
  const monthly = newestOfEach(dated, (name) => name.slice(9, 16)).slice(0, 12);
  const kept = new Set([...daily, ...weekly, ...monthly]);
  return dated.filter((name) => !kept.has(name));
}

function newestOfEach(names: readonly string[], key: (name: string) => string): string[] {
  return names.filter((name, i) => i === 0 || key(names[i - 1] ?? '') !== key(name));
}

function week(name: string): string {
  return String(Math.floor(Date.parse(name.slice(9, 19)) / (7 * 86_400_000)));
}
