// A job held against the rack: how many fit, the best with every check, and the nearest that work would make fit.
import type { FitAxle, FitRow, JobRack } from '#wire';
import { Heads } from '../shared/heads.tsx';

const words: Readonly<Record<FitAxle['result'], string>> = {
  fits: 'fit',
  fitsWithWork: 'fit with work',
  cannotSayYet: 'cannot be told yet',
  doesNotFit: 'do not fit',
};

export function Held({ rack: { counts, best, nearest, problems } }: { rack: JobRack }) {
  const told = (Object.keys(words) as FitAxle['result'][]).map((result) => `${counts[result]} ${words[result]}`);
  const shown = new Set(best.filter(({ result }) => result !== 'doesNotFit').map(({ id }) => id));
  return (
    <>
      <p class="count">{told.join(', ')}.</p>
      {problems.map((text) => (
        <p class="trouble">{text}</p>
      ))}
      <Axles title="Best first" axles={best.filter(({ id }) => shown.has(id))} />
      <Axles title="Nearest that work would make fit" axles={nearest} />
    </>
  );
}

function Axles({ title, axles }: { title: string; axles: readonly FitAxle[] }) {
  if (axles.length === 0) return null;
  return (
    <>
      <h3>{title}</h3>
      {axles.map((axle) => (
        <Axle key={axle.id} axle={axle} />
      ))}
    </>
  );
}

function Axle({ axle: { id, title, place, words: result, rows, takes, again } }: { axle: FitAxle }) {
  return (
    <details class="axle">
      <summary>
        <b>{result}</b>: {[title, place].filter(Boolean).join(', ')} <span class="number">{id}</span>
        {takes.length > 0 ? <small>Takes {takes.join('; ')}.</small> : null}
        {again.length > 0 ? <small>Measure {again.join(', ')} again before ordering.</small> : null}
      </summary>
      <table class="jobs">
        <Heads names={['Check', ...told, 'Source']} />
        <tbody>
          {rows.map((row) => (
            <Check key={row.check} row={row} />
          ))}
        </tbody>
      </table>
    </details>
  );
}

const told = ['This axle', 'Wanted', 'To spare', 'Result', 'Why'] as const;

function Check({ row }: { row: FitRow }) {
  const { name, measured, needed, margin, result, words: verdict, why, remedy, source, unconfirmed } = row;
  const work = remedy && result !== 'cannotSayYet' ? `; needs ${remedy}` : '';
  const cells = [measured, needed, margin, verdict, `${why}${work}${unconfirmed.length > 0 ? ' (not confirmed)' : ''}`];
  return (
    <tr>
      <th scope="row">{name}</th>
      {told.map((title, at) => (
        <td key={title} data-name={title}>
          {cells[at] ?? ''}
        </td>
      ))}
      <td data-name="Source">{source}</td>
    </tr>
  );
}
