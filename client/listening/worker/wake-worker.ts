import { Porcupine } from '@picovoice/porcupine-web';
import type { WakeNews, WakeOrder, WakeParts } from './wake-messages.ts';

declare const self: DedicatedWorkerGlobalScope;

/**
 * The wake word's own thread. It is the only part of the program that may speak to another host (its maker's, which
 * checks the user's key), and only while the server gives this file a policy that admits it.
 */
async function listen({ parts, port }: WakeOrder): Promise<void> {
  try {
    const engine = await openEngine(parts);
    const frame = new Int16Array(engine.frameLength);
    let filled = 0;
    port.onmessage = ({ data }: MessageEvent<Float32Array>) => {
      for (const sample of data) {
        frame[filled] = Math.max(-32_768, Math.min(32_767, Math.round(sample * 32_768)));
        filled += 1;
        if (filled < frame.length) continue;
        filled = 0;
        void engine.process(frame.slice());
      }
    };
    tell({ news: 'ready' });
  } catch (error) {
    tellFailed(error);
  }
}

function openEngine({ key, model, keyword }: WakeParts): Promise<Porcupine> {
  return Porcupine.create(
    key,
    { label: 'wake', base64: keyword, customWritePath: 'readback_keyword', forceWrite: true },
    () => tell({ news: 'woken' }),
    { base64: model, customWritePath: 'readback_wake_model', forceWrite: true },
    // One thread: more need a page that is cut off from all others.
    { device: 'cpu:1', processErrorCallback: tellFailed },
  );
}

function tellFailed(error: unknown): void {
  tell({ news: 'failed', detail: error instanceof Error ? `${error.name}: ${error.message}` : String(error) });
}

function tell(news: WakeNews): void {
  self.postMessage(news);
}

self.onmessage = ({ data }: MessageEvent<WakeOrder>) => void listen(data);
