// The one entry: names a command and runs it. Each command is loaded only when it is asked for.
interface Command {
  readonly run: (args: string[]) => Promise<number>;
}

const commands = new Map<string, () => Promise<Command>>([
  ['start', () => import('./commands/start.ts')],
  ['parse', () => import('./commands/parse.ts')],
  ['talk', () => import('./commands/talk.ts')],
  ['demo', () => import('./commands/demo.ts')],
  ['sheet', () => import('./commands/sheet.ts')],
  ['verify', () => import('./commands/verify.ts')],
  ['rebuild', () => import('./commands/rebuild.ts')],
  ['backup', () => import('./commands/backup.ts')],
  ['restore', () => import('./commands/restore.ts')],
]);

const [name = 'start', ...args] = process.argv.slice(2);
const load = commands.get(name);

if (load) {
  process.exitCode = await (await load()).run(args);
} else {
  console.error(`axlehand: no command '${name}'. There are: ${[...commands.keys()].join(', ')}.`);
  process.exitCode = 1;
}
