// A headset's button, where the user turned it on: browsers give it only to a page that plays something, so a nearly silent
// loop plays.
import { device } from '../shared/device.ts';

let loop: HTMLAudioElement | undefined;

export function followHeadset(toggle: () => void): void {
  const apply = (): void => {
    const { headset } = device.get();
    if (headset && !loop) start(toggle);
    if (!headset && loop) stop();
  };
  device.subscribe(apply);
  addEventListener('pointerdown', apply);
}

function start(toggle: () => void): void {
  loop = new Audio('/quiet.wav');
  loop.loop = true;
  loop.volume = 0.05;
  void loop.play().catch(() => stop());
  for (const action of ['play', 'pause'] as const) {
    navigator.mediaSession?.setActionHandler(action, () => {
      toggle();
      void loop?.play().catch(() => undefined);
    });
  }
}

function stop(): void {
  loop?.pause();
  loop = undefined;
  for (const action of ['play', 'pause'] as const) navigator.mediaSession?.setActionHandler(action, null);
}
