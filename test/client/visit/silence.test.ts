import { describe, expect, it } from 'vitest';
import type { Mouth, Prompt } from '../../../client/speaking/mouth.ts';
import { VisitRun } from '../../../client/visit/run/visit-run.ts';
import { LIBRARY_UNIT, TO_LIVE_STEP, TypedVisit } from './typed-visit.ts';

/** A mouth that takes its time: a prompt is over when the test says so, or when it is hushed. */
class SlowMouth implements Mouth {
  readonly begun: Prompt[] = [];
  #speaking: { readonly prompt: Prompt; readonly end: (how: 'spoken' | 'cut') => void } | undefined;

  speak(prompt: Prompt): Promise<'spoken' | 'cut'> {
    this.begun.push(prompt);
    return new Promise((resolve) => {
      this.#speaking = { prompt, end: resolve };
    });
  }

  hush(evenCaution: boolean): void {
    if (this.#speaking?.prompt.kind === 'caution' && !evenCaution) return;
    this.#end('cut');
  }

  get isSpeaking(): boolean {
    return this.#speaking !== undefined;
  }

  finish(): void {
    this.#end('spoken');
  }

  #end(how: 'spoken' | 'cut'): void {
    const { end } = this.#speaking ?? {};
    this.#speaking = undefined;
    end?.(how);
  }
}

class SlowVisit {
  readonly mouth = new SlowMouth();
  readonly typed = new TypedVisit();
  readonly run: VisitRun;
  #count = 0;

  constructor() {
    this.run = VisitRun.open(
      { ...this.typed.edges(), mouth: this.mouth },
      {
        type: 'opened.visit',
        visit: 'slow',
        site: 'reading room',
        complaint: 'does not cool',
        role: 'technician',
        unit: LIBRARY_UNIT,
        software: 'test',
      },
    );
  }

  async turn(): Promise<void> {
    for (let tick = 0; tick < 30; tick += 1) await new Promise((resolve) => setImmediate(resolve));
  }

  async type(text: string): Promise<void> {
    this.#count += 1;
    const id = `s${this.#count}`;
    this.run.hear({ id, ear: 'typed', text, alternatives: [], confidence: 1, accepted: true });
    await this.turn();
  }

  /** Speaks all that waits, and what that brings about. */
  async speakAll(): Promise<void> {
    await this.turn();
    while (this.mouth.isSpeaking) {
      this.mouth.finish();
      await this.turn();
    }
  }

  begunSince(count: number): readonly string[] {
    return this.mouth.begun.slice(count).map(({ text }) => text);
  }
}

describe('"stop"', () => {
  it('drops what waits behind the prompt that it cuts, and "say again" brings all of it back', async () => {
    const visit = new SlowVisit();
    await visit.speakAll();
    const before = visit.mouth.begun.length;
    await visit.type('outdoor air ninety four degrees');
    expect(visit.mouth.isSpeaking).toBe(true);
    const [readback] = visit.begunSince(before);
    await visit.type('stop');
    expect(visit.mouth.isSpeaking).toBe(false);
    expect(visit.begunSince(before)).toEqual([readback]);

    const again = visit.mouth.begun.length;
    await visit.type('say again');
    await visit.speakAll();
    const said = visit.begunSince(again);
    expect(said[0]).toBe(readback);
    expect(said).toHaveLength(2);
    expect(said[1]).toBe(visit.typed.of('step.asked').at(-1)?.words);
    visit.run.touch('say-again');
    await visit.speakAll();
    expect(visit.begunSince(again).slice(2)).toEqual([said[1]]);
  });

  it('silences a caution that only waits its turn, which then counts as unsaid until it is spoken whole', async () => {
    const visit = new SlowVisit();
    await visit.speakAll();
    for (const line of TO_LIVE_STEP.slice(0, -1)) {
      await visit.type(line);
      await visit.speakAll();
    }
    const before = visit.mouth.begun.length;
    await visit.type(TO_LIVE_STEP.at(-1)!);
    // The diagnosis answers while the readback is still being spoken.
    await new Promise((resolve) => setTimeout(resolve, 300));
    await visit.turn();
    expect(visit.begunSince(before)).toHaveLength(1);
    await visit.type('stop');
    expect(visit.begunSince(before)).toHaveLength(1);
    expect(visit.run.value).toEqual({ open: { cautioning: 'silenced' } });
    expect(visit.typed.of('caution.spoken')).toEqual([]);
    await visit.type('say again');
    await visit.speakAll();
    expect(visit.run.value).toEqual({ open: { cautioning: 'awaiting' } });
    expect(visit.typed.of('caution.spoken').length).toBeGreaterThan(0);
    expect(visit.begunSince(before).slice(1)[0]).toBe(visit.begunSince(before)[0]);
  });

  it('lets what is said after it be spoken', async () => {
    const visit = new SlowVisit();
    await visit.speakAll();
    await visit.type('outdoor air ninety four degrees');
    await visit.type('stop');
    const before = visit.mouth.begun.length;
    await visit.type('return air eighty degrees');
    await visit.speakAll();
    expect(visit.begunSince(before)).toHaveLength(2);
    const latest = visit.mouth.begun.length;
    await visit.type('say again');
    await visit.speakAll();
    expect(visit.begunSince(latest)).toEqual([visit.begunSince(before)[1]]);
  });
});

describe('speaking over the prompts', () => {
  it('drops all but cautions', async () => {
    const visit = new SlowVisit();
    await visit.speakAll();
    await visit.type('outdoor air ninety four degrees');
    const before = visit.mouth.begun.length;
    visit.run.hush(false);
    await visit.turn();
    expect(visit.mouth.isSpeaking).toBe(false);
    expect(visit.begunSince(before)).toEqual([]);
  });
});
