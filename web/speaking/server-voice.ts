const patienceMs = 3000;

/** The server's synthesiser: a WAV of one sentence, or undefined where it does not answer. */
export async function fetchSpeech(sentence: string): Promise<ArrayBuffer | undefined> {
  if (sentence === '') return undefined;
  try {
    const response = await fetch(`/api/speech?text=${encodeURIComponent(sentence)}`, { signal: AbortSignal.timeout(patienceMs) });
    return response.ok ? await response.arrayBuffer() : undefined;
  } catch {
    return undefined;
  }
}
