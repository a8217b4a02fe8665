import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { PROJECT_ROOT } from './project-root.ts';

/** What a person does at the technician's page, by keyboard. */
export class Technician {
  readonly page: Page;

  constructor(page: Page) {
    this.page = page;
  }

  /** Fills the form and opens a visit with the keyboard alone. */
  async openVisit(site: string, complaint: string): Promise<void> {
    const { page } = this;
    await page.getByLabel('Site').focus();
    await page.keyboard.type(site);
    await page.keyboard.press('Tab');
    await page.keyboard.type(complaint);
    await this.chooseUnit();
    await page.getByLabel('Complaint').focus();
    await page.keyboard.press('Enter');
    await page.locator('main.visit').waitFor();
    await this.settled();
  }

  /** Opens a visit by touch with no unit chosen. */
  async openUnknown(): Promise<void> {
    await this.#open('technician', false);
  }

  /** Opens a visit by touch, as a technician or a trainee. */
  async openAs(role: 'technician' | 'trainee'): Promise<void> {
    await this.#open(role, true);
  }

  async #open(role: 'technician' | 'trainee', withUnit: boolean): Promise<void> {
    const { page } = this;
    await page.getByLabel('Site').fill('Reading room');
    await page.getByLabel('Complaint').fill('does not cool');
    await page.getByLabel(role).check();
    if (withUnit) await this.chooseUnit();
    await page.getByRole('button', { name: 'Open the visit' }).click();
    await page.locator('main.visit').waitFor();
    await this.settled();
  }

  /** The first of the units to begin from: of one that is not chosen the plate would be asked. */
  async chooseUnit(): Promise<void> {
    await this.page.getByLabel('Unit').selectOption({ index: 1 });
  }

  /** Presses keys one after another, by their whole names, and waits until all that follows has come about. */
  async press(...keys: readonly string[]): Promise<void> {
    for (const name of keys) await this.page.getByRole('button', { name, exact: true }).click();
    await this.settled();
  }

  /** The words of the step or question on the screen. */
  async asked(): Promise<string> {
    return (await this.page.locator('.asked-words').textContent()) ?? '';
  }

  /** Types a sentence and waits until all that follows from it has come about. */
  async type(sentence: string): Promise<void> {
    await this.send(sentence);
    await this.settled();
  }

  /** Types a sentence and waits for nothing. */
  async send(sentence: string): Promise<void> {
    await this.page.locator('#type-line').focus();
    await this.page.keyboard.type(sentence);
    await this.page.keyboard.press('Enter');
  }

  /** How many sentences the record holds. */
  async heardCount(): Promise<number> {
    return Number(await this.page.locator('main.visit').getAttribute('data-heard-count'));
  }

  async settled(): Promise<void> {
    await this.page.locator('main.visit[aria-busy="false"]').waitFor({ timeout: 30_000 });
  }

  /** Everything written here is at the server. */
  async sent(): Promise<void> {
    await this.page.locator('[data-link="open"][data-unsent="0"]').waitFor({ timeout: 30_000 });
  }

  /** Acknowledges by touch every caution that stands open, once each was given. */
  async acknowledgeCautions(): Promise<void> {
    const live = this.page.getByRole('button', { name: /I have it$/ });
    while ((await live.count()) > 0) {
      await live.click();
      await this.settled();
    }
  }

  async said(): Promise<string> {
    return (await this.page.locator('[data-said]').textContent()) ?? '';
  }

  async energy(zone: string): Promise<string | null> {
    return this.page.locator(`[data-zone="${zone}"]`).getAttribute('data-energy');
  }
}

export type Line = { readonly id: string; readonly words: string } | { readonly later: number };

/** The library visit as it is spoken in the demo: lines in order, and the minutes that pass between. */
export function libraryLines(): readonly Line[] {
  const text = readFileSync(join(PROJECT_ROOT, 'fixtures/visits/library/spoken.txt'), 'utf8');
  return text
    .split('\n')
    .filter((line) => line.trim() !== '' && !line.startsWith('#'))
    .map((line) => {
      const later = /^@later (\d+)/.exec(line);
      if (later !== null) return { later: Number(later[1]) };
      const [id = '', , words = ''] = line.split('|').map((part) => part.trim());
      return { id, words };
    });
}

/** The readings that stand at the end of the library visit, in order. */
export const LIBRARY_READINGS: readonly string[] = [
  'outdoor-air 94 [degF]',
  'return-air 80 [degF]',
  'L1–ground 118 V',
  'L2–ground 119 V',
  'L1–L2 241 V',
  'cap-C–cap-HERM 0 V',
  'cap-C–cap-FAN 0 V',
  'cap-C–cap-FAN 1.1 uF',
  'cap-C–cap-FAN 1.1 uF',
  'cap-C–cap-HERM 44.1 uF',
  'compressor 14 A',
  'fan-motor 0.9 A',
  'return-air 76 [degF]',
  'supply-air 58 [degF]',
];
