// The address of this page, to be handed on inside the shop: through the device's own sharing, the clipboard, or by eye.
import { useState } from 'hono/jsx/dom';
import { useModal } from './modal.ts';

const ownOnly = /^(localhost|127\.|\[::1\])/;

export function Share({ title }: { title: string }) {
  const [told, tell] = useState('');
  const { href, hostname } = location;
  const share = async (): Promise<void> => {
    if (ownOnly.test(hostname))
      return tell(
        "Only this computer reaches that address. Open the log book at the shop's own address, and share it from there.",
      );
    try {
      if (navigator.share) return await navigator.share({ title, url: href });
      await navigator.clipboard.writeText(href);
      tell('Copied. Whoever has a paired device can open it.');
    } catch (cause) {
      // Called off by the user: nothing to say.
      if (cause instanceof DOMException && cause.name === 'AbortError') return;
      tell('Copy it from here. Whoever has a paired device can open it.');
    }
  };
  return (
    <>
      <button type="button" class="plain" onClick={() => void share()}>
        Share
      </button>
      {told === '' ? null : <Told href={href} told={told} onClose={() => tell('')} />}
    </>
  );
}

function Told({ href, told, onClose }: { href: string; told: string; onClose: () => void }) {
  const sheet = useModal();
  return (
    <dialog class="desk" ref={sheet} aria-labelledby="share-title" onClose={onClose}>
      <h2 id="share-title">Share this page</h2>
      <label>
        Address <input readonly value={href} onFocus={(event: Event) => (event.target as HTMLInputElement).select()} />
      </label>
      <p role="status">{told}</p>
      <p class="hands">
        <button type="button" class="plain" onClick={() => sheet.current?.close()}>
          Close
        </button>
      </p>
    </dialog>
  );
}
