// Found beside fitted, for every measure that has both or either.
import type { CardRow, JobView } from '#wire';

interface Pair {
  readonly key: string;
  readonly label: string;
  found?: CardRow;
  fitted?: CardRow;
}

export function pairsOf(card: readonly CardRow[]): readonly Pair[] {
  const pairs = new Map<string, Pair>();
  for (const row of card) {
    const key = [row.field, row.axle ?? '', row.side ?? ''].join(' ');
    const pair = pairs.get(key) ?? {
      key,
      label: [row.label, row.side, row.axle && `${row.axle} axle`].filter(Boolean).join(', '),
    };
    pair[row.stage] = row;
    pairs.set(key, pair);
  }
  return [...pairs.values()];
}

export function Compare({ view }: { view: JobView }) {
  const pairs = pairsOf(view.card).filter(({ fitted }) => fitted !== undefined);
  if (pairs.length === 0) return null;
  return (
    <section class="sheetlike" aria-label="Found and fitted">
      <h2>Found and fitted</h2>
      <table class="compare">
        <thead>
          <tr>
            <th scope="col">Measure</th>
            <th scope="col">Found</th>
            <th scope="col">Fitted</th>
            <th scope="col">Same?</th>
          </tr>
        </thead>
        <tbody>
          {pairs.map(({ key, label, found, fitted }) => (
            <tr key={key}>
              <th scope="row">{label}</th>
              <td>{found?.shown ?? 'not measured'}</td>
              <td>{fitted?.shown}</td>
              <td>
                {found === undefined ? '' : found.value === fitted?.value && found.unit === fitted.unit ? 'same' : 'differs'}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}
