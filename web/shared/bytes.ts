/** One after the other. */
export function joined(pieces: readonly Uint8Array[]): Uint8Array {
  const whole = new Uint8Array(pieces.reduce((sum, { length }) => sum + length, 0));
  let at = 0;
  for (const piece of pieces) {
    whole.set(piece, at);
    at += piece.length;
  }
  return whole;
}

/** Gives the memory back at once where the platform can: the collector waits until a hundred megabytes have come together. */
export function letGo({ buffer }: ArrayBufferView): void {
  (buffer as ArrayBufferLike & { transfer?: (length: number) => unknown }).transfer?.(0);
}
