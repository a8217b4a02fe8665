import { File, OpenFile, PreopenDirectory, WASI } from '@bjorn3/browser_wasi_shim';
import type { VoiceNews, VoiceOrder } from './voice-messages.ts';

declare const self: DedicatedWorkerGlobalScope;
/** Put in by the bundler. */
declare const __VOICE_CACHE__: string;

const PROGRAM = '/voice/flite.wasm.gz';
/** One of the four voices inside. */
const VOICE = 'slt';
const HEADER = 44;

/**
 * The offline voice's own thread: flite (its licence lies beside it at /voice/COPYING.txt) under a WASI of its own
 * memory, a fresh instance for each sentence. It is fetched once and then kept on the device.
 */
async function open(): Promise<void> {
  try {
    const flite = await WebAssembly.compile(await program());
    self.onmessage = ({ data }: MessageEvent<VoiceOrder>) => {
      const samples = say(flite, data);
      self.postMessage({ news: 'said', number: data.number, samples } satisfies VoiceNews, [samples.buffer]);
    };
    tell({ news: 'ready' });
  } catch (error) {
    tell({ news: 'failed', detail: error instanceof Error ? error.message : String(error) });
  }
}

async function program(): Promise<ArrayBuffer> {
  // A private window may refuse a cache: it is then fetched each time.
  const cache = await caches.open(__VOICE_CACHE__).catch(() => undefined);
  let response = await cache?.match(PROGRAM);
  if (response === undefined) {
    response = await fetch(PROGRAM);
    if (!response.ok) throw new Error(`${PROGRAM}: ${response.status} ${response.statusText}`);
    await cache?.put(PROGRAM, response.clone()).catch(() => undefined);
  }
  if (response.body === null) throw new Error(`${PROGRAM} is empty`);
  return new Response(response.body.pipeThrough(new DecompressionStream('gzip'))).arrayBuffer();
}

function say(flite: WebAssembly.Module, { text, rate }: VoiceOrder): Float32Array<ArrayBuffer> {
  const said = new File([]);
  const args = ['flite', '-voice', VOICE, '--setf', `duration_stretch=${1 / rate}`, '-t', text, '-o', '/out/said.wav'];
  const nothing = () => new OpenFile(new File([]));
  const out = new PreopenDirectory('/out', new Map([['said.wav', said]]));
  const wasi = new WASI(args, [], [nothing(), nothing(), nothing(), out], { debug: false });
  try {
    const instance = new WebAssembly.Instance(flite, { wasi_snapshot_preview1: wasi.wasiImport });
    const code = wasi.start(instance as Parameters<WASI['start']>[0]);
    return code === 0 ? samplesOf(said.data) : new Float32Array(0);
  } catch {
    return new Float32Array(0);
  }
}

/** Of the WAVE file that flite writes: 16 kHz, mono, 16-bit, sound from the 44th byte on. */
function samplesOf(wav: Uint8Array): Float32Array<ArrayBuffer> {
  const view = new DataView(wav.buffer, wav.byteOffset, wav.byteLength);
  const count = Math.max(0, Math.floor((wav.byteLength - HEADER) / 2));
  return Float32Array.from({ length: count }, (_, index) => view.getInt16(HEADER + 2 * index, true) / 32_768);
}

function tell(news: VoiceNews): void {
  self.postMessage(news);
}

void open();
