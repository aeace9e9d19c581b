// Stand-in until #intents/grammar is there: measurements, yes, no and a few commands.
import { fields } from '#data';
import type { Grammar } from './lexicon.ts';

interface Net {
  readonly free: Net[];
  readonly words: [string, Net][];
  end: boolean;
}
export interface Set_ {
  readonly nets: readonly Net[];
  next?: ReadonlyMap<string, Set_>;
}

const net = (): Net => ({ free: [], words: [], end: false });
const join = (from: Net, sequences: readonly (readonly string[])[]): Net => {
  const out = net();
  for (const sequence of sequences) {
    let at = from;
    sequence.forEach((word, index) => {
      const to = index === sequence.length - 1 ? out : net();
      at.words.push([word, to]);
      at = to;
    });
    if (sequence.length === 0) from.free.push(out);
  }
  return out;
};
const split = (text: string) => text.split('|').map((line) => line.split(' ').filter(Boolean));
const ones = 'one|two|three|four|five|six|seven|eight|nine';
const small = `${ones}|ten|eleven|twelve|thirteen|fourteen|fifteen|sixteen|seventeen|eighteen|nineteen`;
const tens = 'twenty|thirty|forty|fifty|sixty|seventy|eighty|ninety';
const upTo99 = `${small}|${tens}|${tens
  .split('|')
  .flatMap((ten) => ones.split('|').map((one) => `${ten} ${one}`))
  .join('|')}`;
const parts =
  'a half|a quarter|three quarters|an eighth|three eighths|five eighths|seven eighths|one sixteenth|three sixteenths|five sixteenths|seven sixteenths|nine sixteenths|eleven sixteenths|thirteen sixteenths|fifteen sixteenths';

function number(from: Net): Net {
  const whole = join(from, split(upTo99));
  const out = net();
  whole.free.push(out);
  join(join(whole, split('and')), split(parts)).free.push(out);
  join(whole, split('hundred|thousand')).free.push(out);
  join(from, split(parts)).free.push(out);
  const point = join(net2(from, whole), split('point'));
  const digit = join(point, split(`oh|zero|${ones}`));
  digit.free.push(out);
  join(digit, split(`oh|zero|${ones}`)).free.push(out);
  return out;
}
function net2(a: Net, b: Net): Net {
  const both = net();
  a.free.push(both);
  b.free.push(both);
  return both;
}

const cache = new Map<string, Set_>();
const ids = new Map<Net, number>();
function closed(nets: readonly Net[]): Set_ {
  const seen = new Set<Net>();
  const open = [...nets];
  for (let at = open.pop(); at; at = open.pop()) {
    if (seen.has(at)) continue;
    seen.add(at);
    open.push(...at.free);
  }
  const all = [...seen];
  for (const one of all) if (!ids.has(one)) ids.set(one, ids.size);
  const key = all
    .map((one) => ids.get(one))
    .sort()
    .join();
  const set = cache.get(key) ?? { nets: all };
  cache.set(key, set);
  return set;
}

export function interim(): Grammar<Set_> {
  const start = net();
  const names = fields.flatMap(({ said }) => said).map((name) => name.split(' '));
  const value = net();
  start.free.push(value);
  const named = join(join(start, [[], ['left'], ['right']]), names);
  named.free.push(value);
  join(named, [['is']]).free.push(value);
  join(start, [['no']]).free.push(value);
  const done = number(value);
  done.end = true;
  join(done, split('inches|pounds|foot pounds|inch|millimetres')).end = true;
  join(start, split('yes|no|undo|next|repeat|done|go back|confirm|does it fit|what fits|strike that')).end = true;
  const again = join(done, names);
  number(again).end = true;
  return {
    start: closed([start]),
    next(set) {
      if (!set.next) {
        const to = new Map<string, Net[]>();
        for (const [word, at] of set.nets.flatMap(({ words }) => words)) to.set(word, [...(to.get(word) ?? []), at]);
        set.next = new Map([...to].map(([word, at]) => [word, closed(at)]));
      }
      return set.next;
    },
    accepts: ({ nets }) => nets.some(({ end }) => end),
  };
}

export function vocabulary(): Set<string> {
  const words = new Set<string>();
  const grammar = interim();
  const open = [grammar.start];
  const seen = new Set<Set_>();
  for (let at = open.pop(); at; at = open.pop()) {
    if (seen.has(at)) continue;
    seen.add(at);
    for (const [word, to] of grammar.next(at)) {
      words.add(word);
      open.push(to);
    }
  }
  return words;
}
