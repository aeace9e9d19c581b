import { useLayoutEffect, useRef } from 'hono/jsx/dom';

/** A sheet before the page, opened as it is drawn: the next key is already typed into it. */
export function useModal() {
  const sheet = useRef<HTMLDialogElement>(null);
  useLayoutEffect(() => sheet.current?.showModal(), []);
  return sheet;
}
