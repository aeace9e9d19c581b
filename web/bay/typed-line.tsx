// Typing: the same sentence, by hand. Nothing typed is lost: a refused line comes back into the box.
import { useEffect, useRef } from 'hono/jsx/dom';

export function TypedLine({ giveBack, onSay }: { giveBack: string | undefined; onSay: (text: string) => void }) {
  const box = useRef<HTMLInputElement>(null);
  useEffect(() => {
    if (box.current && giveBack && box.current.value === '') box.current.value = giveBack;
  }, [giveBack]);
  const send = (event: Event): void => {
    event.preventDefault();
    const input = box.current;
    if (!input || input.value.trim() === '') return;
    onSay(input.value);
    input.value = '';
  };
  return (
    <form class="typed" onSubmit={send}>
      <label for="typed">Type it</label>
      <input
        id="typed"
        ref={box}
        name="text"
        type="text"
        autocomplete="off"
        autocapitalize="off"
        spellcheck={false}
        enterkeyhint="send"
        dir="auto"
        placeholder="for example: hub face 72 3/8"
      />
      <button type="submit" class="plain send">
        Say it
      </button>
    </form>
  );
}
