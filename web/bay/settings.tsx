// One small sheet: what this device likes, and how the shop speaks. Each change holds at once.
import { useState } from 'hono/jsx/dom';
import type { Settings as Shop } from '#wire';
import { type Device, device, setDevice } from '../shared/device.ts';
import { useModal } from '../shared/modal.ts';
import { useStore } from '../shared/store.ts';
import { learnPedal } from './keys.ts';

interface Props {
  readonly settings: Shop;
  readonly onShop: (change: Partial<Shop>) => void;
  readonly onTry: () => void;
  readonly onClose: () => void;
}

export function Settings({ settings, onShop, onTry, onClose }: Props) {
  const sheet = useModal();
  return (
    <dialog class="settings" ref={sheet} aria-labelledby="settings-title" onClose={onClose}>
      <div class="settings-head">
        <h2 id="settings-title">Settings</h2>
        <button type="button" class="plain" onClick={() => sheet.current?.close()}>
          Close
        </button>
      </div>
      <div class="settings-body">
        <ThisDevice onTry={onTry} />
        <div>
          <Talking />
          <TheShop settings={settings} onShop={onShop} />
        </div>
      </div>
    </dialog>
  );
}

function ThisDevice({ onTry }: { onTry: () => void }) {
  const now = useStore(device);
  return (
    <fieldset>
      <legend>This device</legend>
      <Slide label="Volume" value={now.volume} min={0} max={1} step={0.1} onPick={(volume) => setDevice({ volume })} />
      <Slide label="Speaking rate" value={now.rate} min={0.6} max={1.6} step={0.1} onPick={(rate) => setDevice({ rate })} />
      <p>
        <button type="button" class="plain" onClick={onTry}>
          Hear it
        </button>
      </p>
      <Check
        label="Speak the replies (turn off if a screen reader speaks)"
        on={now.speaks}
        onPick={(speaks) => setDevice({ speaks })}
      />
      <Check label="Short sounds and buzzes" on={now.sounds} onPick={(sounds) => setDevice({ sounds })} />
      {'webkitSpeechRecognition' in globalThis || 'SpeechRecognition' in globalThis ? (
        <>
          <Choose
            label="Hearing"
            value={now.hearing}
            options={[
              ['builtIn', 'built in, works without network'],
              ['browser', "the browser's own"],
            ]}
            onPick={(hearing) => setDevice({ hearing: hearing as Device['hearing'] })}
          />
          {now.hearing === 'browser' ? (
            <p class="hint">Where the browser cannot hear on this device, it sends what you say to its maker.</p>
          ) : null}
        </>
      ) : null}
      <Choose
        label="Light or dark"
        value={now.theme}
        options={[
          ['auto', 'as the device'],
          ['light', 'light'],
          ['dark', 'dark'],
        ]}
        onPick={(theme) => setDevice({ theme: theme as Device['theme'] })}
      />
    </fieldset>
  );
}

function Talking() {
  const now = useStore(device);
  return (
    <fieldset>
      <legend>Keys that talk on this device</legend>
      <Pedal now={now} />
      <Check label="Headset button starts and ends talking" on={now.headset} onPick={(headset) => setDevice({ headset })} />
    </fieldset>
  );
}

function Pedal({ now }: { now: Device }) {
  const [learning, setLearning] = useState(false);
  const learn = (): void => {
    setLearning(true);
    learnPedal(() => setLearning(false));
  };
  return (
    <div class="pedal">
      <p>
        Pedal or remote: <b>{now.pedal === '' ? 'none yet; Space always talks' : now.pedal}</b>
      </p>
      <button type="button" class="plain" onClick={learn} aria-live="polite">
        {learning ? 'Now press the pedal (Escape gives up)' : 'Teach the pedal'}
      </button>
      {now.pedal === '' ? null : (
        <button type="button" class="plain" onClick={() => setDevice({ pedal: '' })}>
          Forget it
        </button>
      )}
      {/^(Key|Digit|Numpad\d)/.test(now.pedal) ? (
        <p class="hint">This pedal sends a letter or digit: while it is the pedal, that key types nothing here.</p>
      ) : null}
      <Check
        label="The pedal latches: one press starts, the next ends"
        on={now.pedalLatches}
        onPick={(pedalLatches) => setDevice({ pedalLatches })}
      />
    </div>
  );
}

function TheShop({ settings, onShop }: { settings: Shop; onShop: (change: Partial<Shop>) => void }) {
  const sides = `${settings.sides.left}/${settings.sides.right}`;
  const pairs = ['left/right', 'road side/kerb side', 'near side/off side', 'driver side/passenger side'];
  return (
    <fieldset>
      <legend>The whole shop</legend>
      <Choose
        label="Lengths"
        value={settings.lengthUnit}
        options={[
          ['in', 'inches'],
          ['mm', 'millimetres'],
        ]}
        onPick={(unit) => onShop({ lengthUnit: unit as Shop['lengthUnit'] })}
      />
      <Choose
        label="Spelling"
        value={settings.spelling}
        options={[
          ['british', 'centre, tyre'],
          ['american', 'center, tire'],
        ]}
        onPick={(spelling) => onShop({ spelling: spelling as Shop['spelling'] })}
      />
      <Choose
        label="Left and right are called"
        value={sides}
        options={[...new Set([sides, ...pairs])].map((pair) => [pair, pair.replace('/', ' and ')])}
        onPick={(pair) => {
          const [left = 'left', right = 'right'] = pair.split('/');
          onShop({ sides: { left, right } });
        }}
      />
    </fieldset>
  );
}

interface SlideProps {
  readonly label: string;
  readonly value: number;
  readonly min: number;
  readonly max: number;
  readonly step: number;
  readonly onPick: (value: number) => void;
}

function Slide({ label, value, min, max, step, onPick }: SlideProps) {
  return (
    <label class="row">
      <span>
        {label} {Math.round(value * 100)} %
      </span>
      <input
        type="range"
        min={min}
        max={max}
        step={step}
        value={value}
        onInput={(event: Event) => onPick(Number((event.target as HTMLInputElement).value))}
      />
    </label>
  );
}

function Check({ label, on, onPick }: { label: string; on: boolean; onPick: (on: boolean) => void }) {
  return (
    <label class="row check">
      <input type="checkbox" checked={on} onChange={(event: Event) => onPick((event.target as HTMLInputElement).checked)} />
      <span>{label}</span>
    </label>
  );
}

interface ChooseProps {
  readonly label: string;
  readonly value: string;
  readonly options: readonly (readonly [value: string, words: string])[];
  readonly onPick: (value: string) => void;
}

function Choose({ label, value, options, onPick }: ChooseProps) {
  return (
    <label class="row">
      <span>{label}</span>
      <select onChange={(event: Event) => onPick((event.target as HTMLSelectElement).value)}>
        {options.map(([each, words]) => (
          <option key={each} value={each} selected={each === value}>
            {words}
          </option>
        ))}
      </select>
    </label>
  );
}
