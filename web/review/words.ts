// Events in words, for the timeline. A new kind of event does not compile until it has words here.
import { cautions } from '#data';
import { showField, showValue } from '#intents';
import type { EventBody, JobEvent, Settings, ValueRecord } from '#wire';

export interface Told {
  readonly mark: 'heard' | 'taken' | 'answered' | 'asked' | 'desk' | 'moved';
  readonly text: string;
}

/** "hubBearing/packInner@front.left" -> "hub bearing: pack inner, front left". */
export function stepWords(step: string): string {
  const words = step.replace(/([a-z])([A-Z])/g, '$1 $2').toLowerCase();
  return words.replace('/', ': ').replace('@', ', ').replace('.', ' ');
}

type ShownValue = Pick<ValueRecord, 'field' | 'value' | 'unit' | 'hedge' | 'to' | 'plusMinus' | 'side' | 'axle' | 'stage'>;

/** "hub face, left, found: 72 3/8 in". */
export function valueWords(value: ShownValue, settings: Settings): string {
  const place = [
    showField(value.field, settings),
    sideWords(value.side, settings),
    value.axle && `${value.axle} axle`,
    value.stage,
  ];
  return `${place.filter(Boolean).join(', ')}: ${amountWords(value, settings)}`;
}

export function amountWords(value: ShownValue, settings: Settings): string {
  return showValue(value.field, value, settings);
}

export function sideWords(side: ShownValue['side'], { sides }: Settings): string {
  if (side === undefined) return '';
  return side === 'both' ? 'both sides' : sides[side];
}

const tell = (mark: Told['mark'], text: string): Told => ({ mark, text });
const why = (reason: string | undefined): string => (reason ? ` Reason: ${reason}` : '');

export function wordsOf({ body }: JobEvent, values: ReadonlyMap<string, ValueRecord>, settings: Settings): Told {
  const named = (id: string): string => {
    const value = values.get(id);
    return value ? valueWords(value, settings) : `value ${id}`;
  };
  return bodyWords(body, named, settings);
}

function bodyWords(body: EventBody, named: (id: string) => string, settings: Settings): Told {
  switch (body.kind) {
    case 'jobOpened':
      return tell('moved', `Job opened: ${body.title}`);
    case 'jobRenamed':
      return tell('moved', `Renamed: ${body.title}`);
    case 'heard':
      return tell('heard', body.text);
    case 'valueHeard':
      return tell('taken', `${valueWords(body.value, settings)} (unconfirmed)`);
    case 'valueConfirmed':
      return tell(body.how === 'desk' ? 'desk' : 'taken', `Confirmed${howConfirmed[body.how]}: ${named(body.id)}`);
    case 'valueCorrected':
      return tell('taken', `Corrected: ${named(body.id)}, now ${named(body.by)}.${why(body.reason)}`);
    case 'valueStruck':
      return tell('taken', `Struck: ${named(body.id)}.${why(body.reason)}`);
    case 'valueRestored':
      return tell('taken', `Restored: ${named(body.id)}`);
    case 'asked':
      return tell('asked', body.asked.question);
    case 'askClosed':
      return tell('asked', `Question closed: ${body.outcome}`);
    case 'stepShown':
      return tell('moved', `Step shown: ${stepWords(body.step)}`);
    case 'stepDone':
      return tell('moved', `Step done: ${stepWords(body.step)}`);
    case 'stepReopened':
      return tell('moved', `Step opened again: ${stepWords(body.step)}`);
    case 'stepSkipped':
      return tell('moved', `Step skipped: ${stepWords(body.step)}.${why(body.reason)}`);
    case 'cautionGiven':
      return tell('answered', `Caution given: ${cautions.find(({ id }) => id === body.caution)?.text ?? body.caution}`);
    case 'noteTaken':
      return tell('taken', `Note: ${body.text}`);
    case 'pointClosed':
      return tell('desk', `Point closed.${why(body.reason)}`);
    case 'candidateChosen':
      return tell('taken', `Candidate: ${body.title}`);
    case 'candidateDropped':
      return tell('taken', 'Candidate dropped');
    case 'undone':
      return tell('moved', 'The turn before was undone');
    case 'verdictGiven':
      return tell('answered', `Verdict: ${body.verdict.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`)}`);
    case 'reminderSet':
      return tell('taken', `Reminder: ${body.text}`);
    case 'reminderDone':
      return tell('taken', 'Reminder done');
    case 'annotated':
      return tell('desk', `Remark${body.value ? ` on ${named(body.value)}` : ''}: ${body.text}`);
    case 'orderReached':
      return tell('moved', `Tightening: number ${body.place + 1} of the order is next`);
    case 'paused':
      return tell('moved', 'Job paused');
    case 'resumed':
      return tell('moved', 'Job taken up again');
    case 'closed':
      return tell(
        'moved',
        body.open.length > 0 ? `Job closed with ${body.open.length} open: ${body.open.join('; ')}` : 'Job closed, nothing open',
      );
    case 'reopened':
      return tell('moved', `Job opened again.${why(body.reason)}`);
    case 'replied':
      return tell('answered', body.show);
  }
}

const howConfirmed = { said: ' by voice or key', wentOn: ' by going on', desk: ' at the desk' } as const;

export interface TurnTold {
  readonly turn: string;
  readonly at: string;
  readonly who: string;
  readonly heardBy?: string;
  readonly told: readonly Told[];
}

/** Events grouped by the utterance or desk action they came from, oldest first. */
export function turnsOf(
  events: readonly JobEvent[],
  values: ReadonlyMap<string, ValueRecord>,
  settings: Settings,
): readonly TurnTold[] {
  const turns = new Map<string, { turn: string; at: string; who: string; heardBy?: string; told: Told[] }>();
  for (const event of events) {
    const turn = turns.get(event.turn) ?? { turn: event.turn, at: event.at, who: event.who, told: [] };
    if (event.body.kind === 'heard') turn.heardBy = heardWords(event.body.heardBy, event.body.confidence);
    turn.told.push(wordsOf(event, values, settings));
    turns.set(event.turn, turn);
  }
  return [...turns.values()];
}

function heardWords(by: string, confidence: number | undefined): string {
  const how = by === 'typed' ? 'typed' : by === 'builtIn' ? 'by voice' : "by the browser's voice";
  return confidence === undefined ? how : `${how}, ${Math.round(confidence * 100)} % sure`;
}
