// What this one device likes: kept in the browser, unlike the shop's own settings which the server keeps.
import { createStore } from './store.ts';

export interface Device {
  readonly volume: number;
  readonly rate: number;
  /** Off for those whose screen reader already speaks. */
  readonly speaks: boolean;
  readonly sounds: boolean;
  /** KeyboardEvent.code of the pedal or remote, besides Space. */
  readonly pedal: string;
  readonly pedalLatches: boolean;
  readonly headset: boolean;
  readonly hearing: 'builtIn' | 'browser';
  readonly theme: 'auto' | 'light' | 'dark';
}

const key = 'axlehand.device';
const usual: Device = {
  volume: 1,
  rate: 1,
  speaks: true,
  sounds: true,
  pedal: '',
  pedalLatches: false,
  headset: false,
  hearing: 'builtIn',
  theme: 'auto',
};

function read(): Device {
  try {
    return { ...usual, ...(JSON.parse(localStorage.getItem(key) ?? '{}') as Partial<Device>) };
  } catch {
    return usual;
  }
}

export const device = createStore<Device>(read());

export function setDevice(patch: Partial<Device>): void {
  device.set(patch);
  try {
    localStorage.setItem(key, JSON.stringify(device.get()));
  } catch {
    // Storage full or barred: the choice still holds until the page is closed.
  }
  applyTheme();
}

export function applyTheme(): void {
  document.documentElement.dataset.theme = device.get().theme;
}
