// The bay's controller: the one place that knows all its parts.
import { render } from 'hono/jsx/dom';
import type { Settings, StreamTurn } from '#wire';
import { api } from '../shared/api.ts';
import { applyTheme } from '../shared/device.ts';
import { installShell } from '../shared/install.ts';
import { openOutbox } from '../shared/outbox.ts';
import { followStream } from '../shared/stream.ts';
import { keepAwake } from './awake.ts';
import { wakeSound } from './earcon.ts';
import { followHeadset } from './headset.ts';
import { followKeys } from './keys.ts';
import { bay } from './state.ts';
import { addLine, createTurns } from './turns.ts';
import { BayView } from './view.tsx';
import { createVoice } from './voice.ts';

const jobKey = 'axlehand.job';

async function start(): Promise<void> {
  applyTheme();
  const outbox = await openOutbox(() =>
    bay.set({ notice: 'This device has no room left: do not close the page while turns are not sent, and free some room.' }),
  );
  if (!outbox.lasting) bay.set({ notice: 'This browser keeps nothing: do not close the page while turns are not sent.' });
  const voice = createVoice(
    ({ text, confidence, alternatives }, heardBy) => void turns.say(text, { heardBy, confidence, alternatives }),
  );
  const turns = createTurns(outbox, voice.speak);

  const say = (text: string): void => {
    wakeSound();
    bay.set({ doubtful: undefined });
    void turns.say(text, { heardBy: 'typed' });
  };
  const down = (): void => voice.talk({ kind: 'down', at: performance.now() });
  const up = (): void => voice.talk({ kind: 'up', at: performance.now() });
  const lost = (): void => voice.talk({ kind: 'lost' });
  const toggle = (): void => voice.talk({ kind: 'toggle' });

  const takeJob = async (id: string): Promise<void> => {
    bay.set({ job: id, view: null, lines: [] });
    const kept = await outbox.keptView(id);
    if (kept && bay.get().job === id) turns.show(kept);
    await refresh(id);
  };

  async function refresh(id: string): Promise<void> {
    const found = await api.view(id);
    if (bay.get().job !== id) return;
    if (found.ok) return turns.show(found.value);
    if (found.status === 404) forget(id, found.message);
  }

  function forget(id: string, why: string): void {
    bay.set({ job: null, view: null, notice: `${id}: ${why}` });
    void listJobs();
  }

  async function listJobs(): Promise<void> {
    const found = await api.jobs({ status: 'open', limit: '5' });
    if (found.ok) bay.set({ jobs: found.value.jobs, link: 'up' });
  }

  let saving: Promise<void> = Promise.resolve();

  /** One after the other, each with all that was changed by then: two choices made quickly must not undo one another. */
  function saveShop(change: Partial<Settings>): void {
    bay.set({ settings: { ...bay.get().settings, ...change } });
    saving = saving.then(async () => {
      const saved = await api.saveSettings(bay.get().settings);
      if (!saved.ok) bay.set({ notice: `The shop's settings are not saved. ${saved.message} ${saved.whatToDo}` });
      const { job } = bay.get();
      if (job !== null) await refresh(job);
    });
  }

  /** Another page, or our own turn come back: fetch what is newer than what is shown. */
  async function news({ job, seq, turn }: StreamTurn): Promise<void> {
    const { job: ours, view } = bay.get();
    if (job !== ours || (view && view.version >= seq)) return;
    await refresh(job);
    if (bay.get().lines.some(({ id }) => id === turn)) return;
    const said = bay.get().view?.said;
    if (said) addLine({ id: `${turn} reply`, who: 'answered', text: said, at: new Date().toISOString(), mark: 'elsewhere' });
  }

  render(
    <BayView
      hands={{
        say,
        takeJob: (id) => void takeJob(id),
        saveShop,
        tryVoice: () => voice.speak('hub face, seventy-two and three eighths'),
        openSettings: () => bay.set({ settingsOpen: true }),
        closeSettings: () => bay.set({ settingsOpen: false }),
        dismiss: () => bay.set({ notice: '' }),
        settleDoubt: voice.settleDoubt,
        hold: { down, up, lost },
      }}
    />,
    document.getElementById('page') as HTMLElement,
  );

  followKeys({ down, up, toggle });
  followHeadset(toggle);
  for (const gone of ['blur', 'pagehide'] as const) addEventListener(gone, lost);
  document.addEventListener('visibilitychange', () => (document.visibilityState === 'hidden' ? lost() : void turns.kick()));
  addEventListener('online', () => void turns.kick());
  void keepAwake(() => bay.get().job !== null);
  void navigator.storage?.persist?.();

  followStream({
    turn: (turn) => void news(turn),
    link: (isUp) => {
      if (!isUp) return bay.set({ link: 'down' });
      bay.set({ link: 'up' });
      void turns.kick();
      const { job } = bay.get();
      if (job !== null) void refresh(job);
    },
  });
  // The voice's files are fetched when the device keeps what is fetched: the next start may find no network.
  void installShell().then(() => voice.load());

  const settings = await api.settings();
  if (settings.ok) bay.set({ settings: settings.value, link: 'up' });
  const wanted = new URLSearchParams(location.search).get('job') ?? rememberedJob();
  let remembered = rememberedJob();
  bay.subscribe(() => {
    const { job } = bay.get();
    if (job === remembered) return;
    remembered = job;
    rememberJob(job);
  });
  if (wanted) await takeJob(wanted);
  else await listJobs();
  turns.remind((await outbox.all()).filter(({ refused }) => refused === undefined));
  await turns.kick();
}

function rememberJob(id: string | null): void {
  try {
    if (id === null) localStorage.removeItem(jobKey);
    else localStorage.setItem(jobKey, id);
  } catch {
    // Barred storage: the job is then chosen again after a reload.
  }
}

function rememberedJob(): string | null {
  try {
    return localStorage.getItem(jobKey);
  } catch {
    return null;
  }
}

void start();
