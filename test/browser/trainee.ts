import type { Page } from 'playwright-core';

/** What a person does at the page of the practice, in whichever way. */
export class Trainee {
  readonly page: Page;

  constructor(page: Page) {
    this.page = page;
  }

  async stage(name: string): Promise<void> {
    await this.page.locator(`main.practice[data-stage="${name}"]`).waitFor({ timeout: 60_000 });
  }

  /** Opens an exercise by its link, and begins it by a click. */
  async begin(server: string, exercise: string): Promise<void> {
    await this.page.goto(`${server}/practice?exercise=${exercise}`);
    await this.page.getByRole('button', { name: 'Begin' }).click();
    await this.stage('running');
  }

  /** Says it by typing and waits until all of it has come about. */
  async type(...lines: readonly string[]): Promise<void> {
    for (const line of lines) {
      await this.page.getByLabel('Say what you do').fill(line);
      await this.done(() => this.page.keyboard.press('Enter'));
    }
  }

  /** Presses keys by their whole names, by click or tap. */
  async press(...names: readonly string[]): Promise<void> {
    for (const name of names) await this.done(() => this.key(name).click());
  }

  async tap(...names: readonly string[]): Promise<void> {
    for (const name of names) await this.done(() => this.key(name).tap());
  }

  key(name: string) {
    return this.page.getByRole('button', { name, exact: true }).first();
  }

  /** Waits until all that follows from an act has come about. */
  async done(act: () => Promise<void>): Promise<void> {
    await act();
    await this.page.waitForFunction(() => {
      const main = document.querySelector<HTMLElement>('main.practice');
      return main?.dataset['stage'] !== 'running' || main.dataset['waiting'] === '0';
    });
  }

  /** What was told last by somebody. */
  async told(by: string): Promise<string> {
    return (await this.page.locator(`.practice-talk [data-by="${by}"]`).last().textContent()) ?? '';
  }

  async count(name: string): Promise<readonly string[]> {
    return this.page.locator(`[data-count="${name}"] td`).allTextContents();
  }
}

/** Words that lead through cooling-36, a dirty filter, from the door to its close; each is what the step asks, or a test. */
export const FILTER_WORDS: readonly string[] = [
  'customer agrees',
  'pass',
  'meter is category three',
  'outdoor air',
  'return air',
  'thermostat is calling',
  'look at the fan',
  'look at the blower',
  'none yet',
  'look at the filter',
  'three',
  'supply air',
  'one',
  'hint',
  'look at the filter',
  'one',
  'replaced the air filter',
  'look at the fan',
  'compressor amps',
  'live',
  'outdoor fan amps',
  'finish the visit',
];
