import { Hono } from 'hono';
import { openVoice, type Voice, voiceRate } from '../../voice/flite.ts';
import { problem } from '../problem.ts';

const longest = 200;

/** One sentence as a WAV, for devices that have no voice of their own. */
export function speechRoutes(): Hono {
  let voice: Promise<Voice> | undefined;
  const app = new Hono();
  app.get('/', async (c) => {
    const text = (c.req.query('text') ?? '').replace(/[^\p{L}\p{N}\p{P}\p{Zs}]/gu, ' ').trim();
    if (text === '' || text.length > longest) return problem(c, 'badRequest');
    voice ??= openVoice();
    const sound = (await voice).say(text);
    return c.body(wav(sound), 200, { 'Content-Type': 'audio/wav' });
  });
  return app;
}

function wav(sound: Int16Array): ArrayBuffer {
  const bytes = new Uint8Array(44 + sound.byteLength);
  const head = new DataView(bytes.buffer);
  const text = (at: number, word: string) => bytes.set(new TextEncoder().encode(word), at);
  text(0, 'RIFF');
  head.setUint32(4, 36 + sound.byteLength, true);
  text(8, 'WAVEfmt ');
  head.setUint32(16, 16, true);
  head.setUint16(20, 1, true);
  head.setUint16(22, 1, true);
  head.setUint32(24, voiceRate, true);
  head.setUint32(28, voiceRate * 2, true);
  head.setUint16(32, 2, true);
  head.setUint16(34, 16, true);
  text(36, 'data');
  head.setUint32(40, sound.byteLength, true);
  bytes.set(new Uint8Array(sound.buffer, sound.byteOffset, sound.byteLength), 44);
  return bytes.buffer;
}
