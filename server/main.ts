// The one entry: names a command and runs it.
const commands = ['start', 'parse', 'talk', 'demo', 'sheet', 'verify', 'rebuild', 'backup', 'restore'];
const [command = 'start', ...args] = process.argv.slice(2);

if (!commands.includes(command)) {
  console.error(`axlehand: no command '${command}'. There are: ${commands.join(', ')}.`);
  process.exitCode = 1;
} else {
  const { run } = (await import(`./commands/${command}.ts`)) as { run: (args: readonly string[]) => Promise<number> };
  process.exitCode = await run(args);
}
