// Whole jobs, said and expected line by line, through the real turn line and a real log.
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { play } from '../../support/script.ts';

const folder = new URL('.', import.meta.url);
const scripts = readdirSync(folder).filter((name) => name.endsWith('.txt'));

/** Utterances of the shortest safe jobs by voice. */
const shortest: Readonly<Record<string, number>> = { 'shortest-hub-service.txt': 35, 'shortest-axle-replacement.txt': 51 };

describe('whole jobs', () => {
  it('are all here', () => expect(scripts.length).toBeGreaterThanOrEqual(6));

  it.each(scripts)('%s', (name) => {
    const { said, held } = play(readFileSync(new URL(name, folder), 'utf8'));
    expect(said).toBeGreaterThanOrEqual(30);
    expect(said).toBeLessThanOrEqual(80);
    expect(said).toBe(shortest[name] ?? said);
    expect(held).toBeGreaterThanOrEqual(name.startsWith('shortest') ? 10 : said / 3);
  });
});
