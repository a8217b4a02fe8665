import { describe, expect, it } from 'vitest';
import { glanceOf } from '../../../client/screens/glance/glance.ts';
import type { Mouth, Prompt } from '../../../client/speaking/mouth.ts';
import { VisitRun } from '../../../client/visit/run/visit-run.ts';
import type { VisitEvent } from '../../../grammar/visit/events.ts';
import { foldVisit } from '../../../grammar/visit/fold-visit.ts';
import type { PromptOutcome } from '../../../grammar/visit/inputs.ts';
import { LIBRARY_UNIT, TO_LIVE_STEP, TypedVisit } from '../visit/typed-visit.ts';

/** A page without a voice: a caution stands until the test says that it was read, or that it was cut. */
class ScreenMouth implements Mouth {
  readonly cautions: Prompt[] = [];
  #end: ((how: PromptOutcome) => void) | undefined;

  speak(prompt: Prompt): Promise<PromptOutcome> {
    if (prompt.kind !== 'caution') return Promise.resolve('shown');
    this.cautions.push(prompt);
    return new Promise((resolve) => {
      this.#end = resolve;
    });
  }

  hush(evenCaution: boolean): void {
    if (evenCaution) this.end('cut');
  }

  end(how: PromptOutcome): void {
    this.#end?.(how);
    this.#end = undefined;
  }
}

class ScreenVisit {
  readonly mouth = new ScreenMouth();
  readonly typed = new TypedVisit();

  async open(): Promise<this> {
    this.typed.run = VisitRun.open(
      { ...this.typed.edges(), mouth: this.mouth },
      {
        type: 'opened.visit',
        visit: 'shown',
        site: 'reading room',
        complaint: 'does not cool',
        role: 'technician',
        unit: LIBRARY_UNIT,
        software: 'test',
      },
    );
    await this.turn();
    return this;
  }

  /** The same record in another page: what was being shown there was cut. */
  async reloaded(): Promise<ScreenVisit> {
    const back = new ScreenVisit();
    back.typed.bodies.push(...this.typed.bodies);
    back.typed.clock.step(this.typed.run.context.now.mono / 60_000);
    back.typed.run = await VisitRun.restore({ ...back.typed.edges(), mouth: back.mouth }, this.typed.bodies);
    await back.turn();
    return back;
  }

  async turn(): Promise<void> {
    for (let tick = 0; tick < 30; tick += 1) await new Promise((resolve) => setImmediate(resolve));
  }

  async type(...lines: readonly string[]): Promise<void> {
    for (const line of lines) {
      void this.typed.type(line);
      await this.turn();
    }
  }

  async read(how: PromptOutcome = 'shown'): Promise<void> {
    this.mouth.end(how);
    await this.turn();
  }

  async touch(command: Parameters<VisitRun['touch']>[0]): Promise<void> {
    this.typed.run.touch(command);
    await this.turn();
  }

  get glance() {
    return glanceOf(foldVisit(this.events), this.typed.run.context);
  }

  get events(): readonly VisitEvent[] {
    return this.typed.bodies.map((body) => JSON.parse(body) as VisitEvent);
  }
}

describe('a caution behind a reading that was told unasked', () => {
  it.each([
    ['control voltage twenty six point four', 'Live control, line beside.'],
    ['leg one to ground one eighteen', 'Live, line volts.'],
  ])('of “%s” stands on the page until it was read, and is recorded as shown then', async (line, words) => {
    const visit = await new ScreenVisit().open();
    await visit.type(line);
    expect(visit.glance.asked).toMatchObject({ kind: 'caution', words });
    expect(visit.typed.of('caution.spoken')).toEqual([]);
    expect(visit.glance.cautionToCome).toBe(true);
    await visit.read();
    expect(visit.typed.of('caution.spoken')).toMatchObject([{ words, shown: true, late: 'the reading came first' }]);
    expect(visit.glance.asked.kind).toBe('step');
  });

  it('is acknowledged by its key, once it was given', async () => {
    const visit = await new ScreenVisit().open();
    await visit.type('control voltage twenty six point four');
    await visit.touch('live');
    expect(visit.typed.of('caution.acknowledged')).toEqual([]);
    await visit.read();
    expect(visit.glance.keys[0]).toMatchObject({ label: 'Live – I have it', does: { command: 'live' } });
    await visit.touch('live');
    expect(visit.typed.of('caution.acknowledged')).toMatchObject([{ caution: 'live-control', zone: 'control' }]);
    expect(visit.glance.keys.map(({ label }) => label)).not.toContain('Live – I have it');
  });

  it('that was cut and is said again is shown and recorded as any', async () => {
    const visit = await new ScreenVisit().open();
    await visit.type('control voltage twenty six point four', 'stop');
    expect(visit.typed.of('caution.spoken')).toEqual([]);
    expect(visit.glance.asked.kind).toBe('step');
    await visit.type('say again');
    expect(visit.glance.asked.kind).toBe('caution');
    await visit.read('spoken');
    expect(visit.typed.of('caution.spoken')).toMatchObject([{ caution: 'live-control' }]);
    expect(visit.typed.of('caution.spoken')[0]).not.toHaveProperty('shown');
  });

  it.each([
    ['before it was given is given behind the reload', [], 1],
    ['once it was given is not given again', ['shown'], 0],
  ] as const)('that a reload cut %s', async (_, read, again) => {
    const visit = await new ScreenVisit().open();
    await visit.type('control voltage twenty six point four');
    for (const how of read) await visit.read(how);
    const back = await visit.reloaded();
    expect(back.mouth.cautions.map(({ text }) => text)).toEqual(Array(again).fill('Live control, line beside.'));
    expect(back.glance.cautionToCome).toBe(again === 1);
    if (again === 1) await back.read();
    expect(back.typed.of('caution.spoken')).toMatchObject([{ caution: 'live-control', shown: true }]);
  });

  it('is not given by a reload behind a live reading that was asked with its caution', async () => {
    const visit = await new ScreenVisit().open();
    await visit.type(...TO_LIVE_STEP);
    for (let left = 0; left < 6; left += 1) await visit.read('shown');
    await visit.type('leg one to ground one eighteen');
    for (let left = 0; left < 6; left += 1) await visit.read('shown');
    expect((await visit.reloaded()).typed.of('caution.spoken').some(({ late }) => late !== undefined)).toBe(false);
  });
});

describe('a caution before a step', () => {
  it('of which a part was only shown is recorded as shown', async () => {
    const visit = await new ScreenVisit().open();
    await visit.type(...TO_LIVE_STEP);
    for (let left = 0; left < 6; left += 1) await visit.read('shown');
    const given = visit.typed.of('caution.spoken');
    expect(given.length).toBeGreaterThan(0);
    expect(given.every(({ shown }) => shown === true)).toBe(true);
    expect(foldVisit(visit.events).cautions.every(({ shown }) => shown === true)).toBe(true);
  });

  it('that is answered too early says to wait', async () => {
    const visit = await new ScreenVisit().open();
    await visit.type(...TO_LIVE_STEP.slice(0, -1));
    const at = TO_LIVE_STEP.findIndex(() => visit.glance.cautionToCome);
    if (at < 0) await visit.type(TO_LIVE_STEP.at(-1)!);
    expect(visit.glance.cautionToCome).toBe(true);
    await visit.type('live I have it');
    expect(visit.glance.heard).toMatchObject({ understood: 'live · wait: the caution comes first' });
    expect(visit.typed.of('caution.acknowledged')).toEqual([]);
  });
});

describe('what became of what was heard or touched last', () => {
  it.each([
    ['yes', 'yes · nothing to answer'],
    ['herm to common thirty nine point two microfarads', /· refused$/],
  ])('of “%s” is told', async (line, understood) => {
    const visit = await TypedVisit.open();
    // A number is asked for then, and nothing that a yes answers.
    await visit.type('outdoor disconnect is pulled and locked', line);
    const folded = foldVisit(visit.bodies.map((body) => JSON.parse(body) as VisitEvent));
    const told = glanceOf(folded, visit.run.context).heard?.understood;
    expect(told).toEqual(typeof understood === 'string' ? understood : expect.stringMatching(understood));
  });

  it('is the key where one was touched since', async () => {
    const visit = await TypedVisit.open();
    await visit.type('yes');
    visit.run.touch('why');
    await visit.run.settled();
    const folded = foldVisit(visit.bodies.map((body) => JSON.parse(body) as VisitEvent));
    expect(glanceOf(folded, visit.run.context).heard).toMatchObject({ text: 'touched', understood: 'tell me why' });
  });
});
