// The engine over a model that plays dead: what fails once is tried again at the next press.
import { describe, expect, it } from 'vitest';
import { engine } from '../../../../web/recogniser/engine/hear.ts';
import { language } from '../../../../web/recogniser/engine/language.ts';
import type { Memory, Model } from '../../../../web/recogniser/engine/model.ts';

const nothing = { fields: [], yesNo: false } as const;
const second = new Float32Array(16_000).fill(0.1);
/** Samples of it, which the model is given to know what it expects anyhow. */
const silence = 8000;
const unspelt = { of: () => ({ mid: [], start: [], joined: [] }), comma: 0, hyphen: 1, period: 2, question: 3 };

/** Fails at one of its beginnings: the first is of the speech, the second of silence. */
function frail(failing: number): Model & { readonly encoded: number[]; readonly kept: Set<number> } {
  let begun = 0;
  const kept = new Set<number>();
  const encoded: number[] = [];
  const memory = { size: 1, frames: {}, crossed: {}, past: {} } as Memory;
  return {
    encoded,
    kept,
    encode: async (samples) => {
      encoded.push(samples.length);
      return memory.frames;
    },
    begin: async () => {
      begun += 1;
      if (begun === failing) throw new Error('out of memory');
      const mine = begun;
      kept.add(mine);
      const row = (): number => {
        if (!kept.has(mine)) throw new TypeError('looked at after it was given back');
        return -1;
      };
      return { memory, rows: [row], free: () => void kept.delete(mine) };
    },
    step: async () => ({ memory, rows: [], free: () => undefined }),
    free: async () => undefined,
  };
}

describe('the engine', () => {
  it.each([1, 2])('hears at the next press when beginning %i failed', async (failing) => {
    const ears = engine(frail(failing), unspelt, language);
    await expect(ears.hear(second, nothing)).rejects.toThrow('out of memory');
    expect((await ears.hear(second, nothing)).hearing).toMatchObject({ ok: false, why: 'notUnderstood' });
  });

  it('hears what it is not sure of at other speeds as well', async () => {
    const model = frail(0);
    await engine(model, unspelt, language).hear(second, nothing);
    const [own = 0, slower = 0, faster = 0, ...more] = model.encoded.filter((length) => length > silence);
    expect(slower).toBeGreaterThan(own * 1.05);
    expect(faster).toBeLessThan(own * 0.95);
    expect(more).toEqual([]);
  });

  it('gives back what it began, when it is done with it, and keeps the silence', async () => {
    const model = frail(0);
    await engine(model, unspelt, language).hear(second, nothing);
    expect(model.encoded).toHaveLength(4);
    expect(model.kept.size).toBe(1);
  });

  it('does not begin to hear it again when it is to give up', async () => {
    const model = frail(0);
    await engine(model, unspelt, language).hear(second, nothing, async () => false);
    expect(model.encoded).toHaveLength(1);
  });

  it('gives the model silence around the speech', async () => {
    const model = frail(0);
    await engine(model, unspelt, language).hear(second, nothing);
    expect(model.encoded[0]).toBe(16_000 + 2 * 2400);
  });
});
