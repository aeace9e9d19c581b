// A recogniser of another make, by hidden Markov models of speech sounds. Alone it hears worse than the neural model, but it errs
// elsewhere: of sentences that the search finds close it tells which fits the sound better.
import createModule, { type Decoder, type SoundSwallowerModule } from 'soundswallower';
import { openParts } from '../../shared/parts.ts';

export interface Referee {
  /** How likely the sound is, were this said: a logarithm, in steps of its own; undefined where the text cannot be laid over the
   * sound. `samples` at 16 kHz. */
  likelihood(samples: Float32Array, text: string): number | undefined;
}

type Pointer = number;

/** What the package's own loader calls, which wants a folder of files; here they come as bytes. */
interface Inside extends SoundSwallowerModule {
  _s3file_init(at: Pointer, length: number): Pointer;
  _s3file_free(file: Pointer): void;
  _decoder_init_cleanup(decoder: Pointer): number;
  _decoder_init_fe(decoder: Pointer): Pointer;
  _decoder_init_feat_s3file(decoder: Pointer, lda: Pointer): Pointer;
  _decoder_init_acmod_pre(decoder: Pointer): Pointer;
  _decoder_init_acmod_post(decoder: Pointer): number;
  _bin_mdef_read_s3file(file: Pointer, withoutContext: number): Pointer;
  _set_mdef(decoder: Pointer, mdef: Pointer): void;
  _decoder_logmath(decoder: Pointer): Pointer;
  _tmat_init_s3file(file: Pointer, logmath: Pointer, floor: number): Pointer;
  _set_tmat(decoder: Pointer, tmat: Pointer): void;
  _load_gmm(decoder: Pointer, means: Pointer, variances: Pointer, mixture: Pointer, sendump: Pointer): number;
  _decoder_init_dict_s3file(decoder: Pointer, words: Pointer, fillers: Pointer): Pointer;
  _decoder_hyp(decoder: Pointer, score: Pointer): Pointer;
}

type Inner = Decoder & { readonly cdecoder: Pointer };

const none: Pointer = 0;
const quiet = () => undefined;

/** @param file made by web/build/referee.ts @throws Error when the file is not what it should be */
export async function loadReferee(file: Uint8Array): Promise<Referee> {
  const parts = openParts(file);
  const part = (name: string): Uint8Array => {
    const bytes = parts.get(name);
    if (!bytes) throw new TypeError(`the referee's file has no ${name}`);
    return bytes;
  };
  const runtime = {
    wasmBinary: new Uint8Array(part('runtime.wasm')).buffer,
    defaultModel: null,
    print: quiet,
    printErr: quiet,
  };
  const inside = (await createModule(runtime)) as Inside;
  const decoder = new inside.Decoder({ samprate: 16_000, bestpath: false, loglevel: 'FATAL', ...wide }) as Inner;
  prepare(inside, decoder, part);
  const score = inside._malloc(4);

  return {
    likelihood(samples, text) {
      decoder.set_align_text(text);
      decoder.start();
      try {
        decoder.process_audio(samples, false, true);
      } finally {
        decoder.stop();
      }
      return inside._decoder_hyp(decoder.cdecoder, score) === none ? undefined : inside.HEAP32[score >> 2];
    },
  };
}

/** No path is given up: there is one sentence to lay over the sound, and a bad fit must be seen as bad. */
const wide = { beam: 1e-120, pbeam: 1e-120, wbeam: 1e-100 };

function prepare(inside: Inside, decoder: Inner, part: (name: string) => Uint8Array): void {
  const at = decoder.cdecoder;
  const loaded = (name: string): Pointer => {
    const bytes = part(name);
    const copy = inside._malloc(bytes.length + 1);
    inside.HEAPU8.set(bytes, copy);
    inside.HEAPU8[copy + bytes.length] = 0;
    return inside._s3file_init(copy, bytes.length);
  };
  const settings = JSON.parse(new TextDecoder().decode(part('feat_params.json'))) as Record<string, string | number>;
  for (const [key, value] of Object.entries(settings)) if (decoder.has_config(key)) decoder.set_config(key, value);
  inside._decoder_init_cleanup(at);
  inside._decoder_init_fe(at);
  inside._decoder_init_feat_s3file(at, none);
  inside._decoder_init_acmod_pre(at);
  const mdef = loaded('mdef');
  inside._set_mdef(at, inside._bin_mdef_read_s3file(mdef, 0));
  inside._s3file_free(mdef);
  const transitions = loaded('transition_matrices');
  const floor = Number(decoder.get_config('tmatfloor'));
  inside._set_tmat(at, inside._tmat_init_s3file(transitions, inside._decoder_logmath(at), floor));
  inside._s3file_free(transitions);
  inside._load_gmm(at, loaded('means'), loaded('variances'), none, loaded('sendump'));
  const made = inside._decoder_init_acmod_post(at);
  if (made < 0 || inside._decoder_init_dict_s3file(at, loaded('words.txt'), loaded('noisedict.txt')) === none)
    throw new Error('The second part of the speech model could not be started.');
  decoder.initialized = true;
}
