// The one entry: names a command and runs it.
import { existsSync } from 'node:fs';

const [command = 'start', ...args] = process.argv.slice(2);
const file = new URL(`./commands/${command}.ts`, import.meta.url);

if (!/^[a-z]+$/.test(command) || !existsSync(file)) {
  console.error(
    `axlehand: no command '${command}'. There are: start, parse, talk, demo, sheet, verify, rebuild, backup, restore.`,
  );
  process.exitCode = 1;
} else {
  const { run } = (await import(file.href)) as { run: (args: readonly string[]) => Promise<number> };
  process.exitCode = await run(args);
}
