// `npm run -s parse`: phrases on stdin, one a line; one JSON line {text, intents} each on stdout.
import { createInterface } from 'node:readline';
import { understand } from '#intents';

export async function run(args: string[]): Promise<number> {
  if (args.length > 0) {
    console.error('parse reads phrases on stdin, one a line, and takes no arguments: echo "hub face 72 3/8" | npm run -s parse');
    return 2;
  }
  for await (const text of createInterface({ input: process.stdin })) {
    const { intents, unclaimed } = understand(text);
    process.stdout.write(`${JSON.stringify({ text, intents, unclaimed })}\n`);
  }
  return 0;
}
