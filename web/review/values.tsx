// Values with their history: the one that stands on top, what it replaced beneath, and the desk's hands on it.

import { showField } from '#intents';
import type { JobRecord, Settings, ValueRecord } from '#wire';
import { when } from '../shared/when.ts';
import { amountWords, sideWords } from './words.ts';

export interface ValueGroup {
  readonly key: string;
  readonly label: string;
  readonly stage: string;
  readonly current: ValueRecord | undefined;
  readonly past: readonly ValueRecord[];
}

const stands = ({ status }: ValueRecord): boolean => status === 'heard' || status === 'confirmed';

/** One group for each field, side, axle and stage, in the order first called out. */
export function groupsOf(values: readonly ValueRecord[], settings: Settings): readonly ValueGroup[] {
  const groups = new Map<string, ValueRecord[]>();
  for (const value of values) {
    const key = [value.field, value.stage, value.axle ?? '', value.side ?? ''].join(' ');
    groups.set(key, [...(groups.get(key) ?? []), value]);
  }
  return [...groups].map(([key, all]) => {
    const current = all.findLast(stands);
    const first = all[0] as ValueRecord;
    const label = [showField(first.field, settings), sideWords(first.side, settings), first.axle && `${first.axle} axle`];
    return {
      key,
      label: label.filter(Boolean).join(', '),
      stage: first.stage,
      current,
      past: all.filter((value) => value !== current).reverse(),
    };
  });
}

export type Action = 'correct' | 'confirm' | 'strike' | 'annotate';

interface Props {
  readonly record: JobRecord;
  readonly settings: Settings;
  readonly onAct: (action: Action, value: ValueRecord) => void;
}

export function Values({ record, settings, onAct }: Props) {
  const groups = groupsOf(record.values, settings);
  return (
    <section class="sheetlike" aria-label="Values">
      <h2>Values and their history</h2>
      {groups.length === 0 ? <p>Nothing measured.</p> : null}
      <ul class="values">
        {groups.map((group) => (
          <Group key={group.key} group={group} settings={settings} onAct={onAct} />
        ))}
      </ul>
    </section>
  );
}

function Group({ group, settings, onAct }: { group: ValueGroup; settings: Settings; onAct: Props['onAct'] }) {
  const { current, past, label, stage } = group;
  return (
    <li class="value-group" data-field={group.key}>
      <h3>
        {label} <span class="stage">{stage}</span>
      </h3>
      {current ? <Standing value={current} label={label} settings={settings} onAct={onAct} /> : <p>Nothing stands.</p>}
      {past.length > 0 ? (
        <ol class="past" aria-label={`Earlier values of ${label}`}>
          {past.map((value) => (
            <li key={value.id}>
              <span class={`value ${value.status}`}>{amountWords(value, settings)}</span> {value.status}
              {value.reason ? `: ${value.reason}` : ''} <small>{heard(value)}</small>
            </li>
          ))}
        </ol>
      ) : null}
    </li>
  );
}

function heard(value: ValueRecord): string {
  const sure = value.confidence === undefined ? '' : `, ${Math.round(value.confidence * 100)} % sure`;
  return `"${value.raw}", ${value.heardBy === 'typed' ? 'typed' : 'by voice'}${sure}, ${value.who}, ${when(value.at)}`;
}

function Standing({
  value,
  label,
  settings,
  onAct,
}: {
  value: ValueRecord;
  label: string;
  settings: Settings;
  onAct: Props['onAct'];
}) {
  const actions: readonly (readonly [Action, string])[] = [
    ...(value.status === 'heard' ? ([['confirm', 'Confirm']] as const) : []),
    ['correct', 'Correct'],
    ['strike', 'Strike'],
    ['annotate', 'Remark'],
  ];
  return (
    <div class="standing">
      <p>
        <span class={`value ${value.status}`}>
          <b>{amountWords(value, settings)}</b>
          {value.status === 'heard' ? <em>unconfirmed</em> : <span class="tick-mark" role="img" aria-label="confirmed" />}
        </span>{' '}
        <small>{heard(value)}</small>
      </p>
      {value.notes.map((note) => (
        <p key={note} class="remark">
          Remark: {note}
        </p>
      ))}
      <p class="hands">
        {actions.map(([action, words]) => (
          <button key={action} type="button" class="plain" onClick={() => onAct(action, value)} aria-label={`${words}: ${label}`}>
            {words}
          </button>
        ))}
      </p>
    </div>
  );
}
