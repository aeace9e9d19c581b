import type { CardRow } from '#wire';

/** One line of a job card: what was found beside what was fitted. */
export interface CardLine {
  readonly key: string;
  readonly label: string;
  readonly found: readonly CardRow[];
  readonly fitted: readonly CardRow[];
}

/** One line a field and axle, in the order they were first called out. */
export function linesOf(card: readonly CardRow[]): readonly CardLine[] {
  const lines = new Map<string, { key: string; label: string; found: CardRow[]; fitted: CardRow[] }>();
  for (const row of card) {
    const key = `${row.field} ${row.axle ?? ''}`;
    const line = lines.get(key) ?? { key, label: row.axle ? `${row.label}, ${row.axle} axle` : row.label, found: [], fitted: [] };
    line[row.stage].push(row);
    lines.set(key, line);
  }
  return [...lines.values()];
}
