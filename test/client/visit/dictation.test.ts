import { describe, expect, it } from 'vitest';
import type { EarUtterance } from '../../../client/visit/run/visit-run.ts';
import { printedSheet } from '../../../client/words/printed/printed-sheet.ts';
import { toVisitRecord } from '../../../grammar/export/visit-record.ts';
import { foldVisit } from '../../../grammar/visit/fold-visit.ts';
import { LIBRARY_VISIT, TypedVisit } from './typed-visit.ts';

const SOUND = { sha256: 'a'.repeat(64), ms: 4200 };
const SHORT = { sha256: 'b'.repeat(64), ms: 600 };

let heard = 0;
/** What the microphone heard: by an ear that knows orders alone. */
async function speak(visit: TypedVisit, text: string, more: Partial<EarUtterance> = {}): Promise<void> {
  heard += 1;
  visit.run.hear({ id: `m${heard}`, ear: 'offline', text, alternatives: [], confidence: 0.9, accepted: true, ...more });
  await visit.run.settled();
}

const folded = (visit: TypedVisit) => foldVisit(visit.events());

/** A visit by microphone, in which the sound may be kept or not. */
async function spoken(answer: 'yes' | 'no'): Promise<TypedVisit> {
  const visit = await TypedVisit.open();
  await speak(visit, 'customer agrees');
  await speak(visit, answer);
  return visit;
}

describe('whether sound may be kept', () => {
  it('is asked once, only where there is a microphone, and answered by a yes or a no', async () => {
    const typed = await TypedVisit.open();
    await typed.type('customer agrees');
    expect(typed.run.context.step?.id).not.toBe('arrive.sound');
    const visit = await TypedVisit.open();
    await speak(visit, 'yes');
    expect(folded(visit).items.map(({ item }) => item)).toEqual(['consent-given']);
    expect(visit.run.context.step?.id).toBe('arrive.sound');
    await speak(visit, 'no');
    expect(folded(visit).items.map(({ item }) => item)).toEqual(['consent-given', 'sound-not-kept']);
    await speak(visit, 'customer agrees');
    expect(visit.of('step.asked').filter(({ step }) => step === 'arrive.sound')).toHaveLength(1);
  });

  it('no sound stands in the record without a yes, whatever the ear delivers', async () => {
    const refused = await spoken('no');
    await speak(refused, 'note', { sound: SOUND });
    await speak(refused, 'hum of words', { sound: SOUND });
    const silent = await TypedVisit.open();
    await speak(silent, 'technician signs', { sound: SOUND });
    for (const visit of [refused, silent])
      expect(visit.events().filter((event) => event.type !== 'input.taken' && 'sound' in event)).toEqual([]);
  });
});

describe('a note by voice', () => {
  it('said in one breath with its heading is kept as sound, and no words are made up', async () => {
    const visit = await spoken('yes');
    await speak(visit, 'note', { sound: SOUND });
    expect(folded(visit).notes).toMatchObject([{ text: 'kept as sound', sound: SOUND, guessed: true }]);
  });

  it('behind its heading is kept with the words that were heard, as a guess', async () => {
    const visit = await spoken('yes');
    await speak(visit, 'make a note', { sound: SHORT });
    expect(folded(visit).notes).toEqual([]);
    await speak(visit, 'the cover over the', { accepted: false, sound: SOUND });
    expect(folded(visit).notes).toMatchObject([{ text: 'the cover over the', sound: SOUND, guessed: true }]);
    await speak(visit, 'the cover over the', { accepted: false, sound: SOUND });
    expect(folded(visit).notes).toHaveLength(1);
  });

  it('without the sound keeps the words that were heard, marked as a guess; noise is no note', async () => {
    const visit = await spoken('no');
    await speak(visit, 'note');
    await speak(visit, 'hum of words');
    expect(folded(visit).notes).toMatchObject([{ text: 'hum of words', guessed: true }]);
    expect(folded(visit).notes[0]).not.toHaveProperty('sound');
    await speak(visit, 'note');
    await speak(visit, 'leg', { accepted: false });
    expect(folded(visit).notes).toHaveLength(1);
  });

  it('gives way to a measurement, an order and a call for help', async () => {
    const visit = await spoken('yes');
    for (const words of ['leg one to ground one eighteen', 'what next', 'i got shocked']) {
      await speak(visit, 'note', { sound: SHORT });
      await speak(visit, words, { sound: SOUND });
    }
    expect(folded(visit).notes).toEqual([]);
    expect(folded(visit).readings).toHaveLength(1);
    expect(folded(visit).injuries).toHaveLength(1);
  });

  it('is not waited for for ever', async () => {
    const visit = await spoken('yes');
    await speak(visit, 'note', { sound: SHORT });
    await visit.later(2);
    await speak(visit, 'hum of words', { accepted: false, sound: SOUND });
    expect(folded(visit).notes).toEqual([]);
  });

  it('that is typed is no guess, also behind its heading, and keeps its capitals', async () => {
    const visit = await TypedVisit.open();
    await visit.type('note', 'Panel label says Unit 7', 'customer says It hums at night');
    expect(folded(visit).notes).toMatchObject([
      { text: 'Panel label says Unit 7' },
      { text: 'It hums at night', from: 'customer' },
    ]);
    expect(folded(visit).notes.every(({ guessed }) => guessed === undefined)).toBe(true);
  });
});

describe('a name by voice', () => {
  it('is never what a recogniser of orders made of it', async () => {
    const visit = await spoken('yes');
    await speak(visit, 'customer signs', { sound: SHORT });
    await speak(visit, 'leg wide coil', { accepted: false, sound: SOUND });
    await speak(visit, 'technician signs', { sound: SOUND });
    expect(folded(visit).signatures).toMatchObject([
      { who: 'customer', name: 'by voice', sound: SOUND },
      { who: 'technician', name: 'by voice', sound: SOUND },
    ]);
    expect(JSON.stringify(folded(visit).signatures)).not.toContain('coil');
  });

  it('of a customer is asked for in writing where no sound is kept', async () => {
    const visit = await spoken('no');
    await speak(visit, 'customer signs');
    await speak(visit, 'leg wide coil');
    expect(folded(visit).signatures).toEqual([]);
    expect(visit.mouth.last()).toMatch(/write/i);
  });
});

describe('what is typed where the close asks for free words', () => {
  /** Up to what is recommended. */
  async function toRecommend(visit: TypedVisit): Promise<void> {
    await visit.type(...LIBRARY_VISIT);
    await visit.later(16);
    await visit.type('seventy nine', 'sixty', 'same as before');
  }

  it('is a name as it is written, with its capitals', async () => {
    const visit = await TypedVisit.open();
    await toRecommend(visit);
    await visit.type('nothing');
    expect(visit.run.context.step?.id).toBe('close.customer');
    await visit.type("Robin de la Vale-O'Hara", 'my name is Lee Ann McArdle');
    expect(folded(visit).signatures.map(({ who, name }) => [who, name])).toEqual([
      ['customer', "Robin de la Vale-O'Hara"],
      ['technician', 'Lee Ann McArdle'],
    ]);
  });

  it('is asked about where it may be something else, and nothing is made of what else was said', async () => {
    const visit = await TypedVisit.open();
    await toRecommend(visit);
    await visit.type('Trim the Oak by the pad');
    expect(folded(visit).recommendations).toEqual([]);
    await visit.type('yes', 'robin vale');
    expect(folded(visit).recommendations).toMatchObject([{ text: 'Trim the Oak by the pad' }]);
    expect(folded(visit).signatures).toEqual([]);
    await visit.type('no', 'what about the cat on the roof', 'she went to 12 Elm');
    expect(folded(visit).signatures).toEqual([]);
  });

  it('is no name where it was heard, by whatever ear', async () => {
    for (const ear of ['offline', 'wav', 'browser'] as const) {
      const visit = await spoken('yes');
      await toRecommend(visit);
      await visit.type('nothing');
      expect(visit.run.context.step?.id).toBe('close.customer');
      await speak(visit, 'Robin Vale', { ear });
      await speak(visit, 'customer signs Robin Vale', { ear });
      expect(JSON.stringify(folded(visit).signatures), ear).not.toContain('Robin');
      await speak(visit, 'note the pad is cracked', { ear });
      expect(folded(visit).notes, ear).toMatchObject([{ text: 'the pad is cracked', guessed: true }]);
    }
  });
});

describe('words that are written over a dictation', () => {
  it('stand in its place, beside what was heard; its sound stays, also in a closed visit', async () => {
    const visit = await spoken('yes');
    await speak(visit, 'note', { sound: SOUND });
    await speak(visit, 'customer signs', { sound: SOUND });
    const [note] = folded(visit).notes;
    const [signature] = folded(visit).signatures;
    visit.run.take({ type: 'wrote.words', of: note?.seq ?? -1, text: ' The cover is missing. ' });
    visit.run.take({ type: 'wrote.words', of: signature?.seq ?? -1, text: 'Robin Vale' });
    await visit.run.settled();
    const view = folded(visit);
    expect(view.notes).toMatchObject([{ text: 'The cover is missing.', heard: 'kept as sound', sound: SOUND }]);
    expect(view.notes[0]).not.toHaveProperty('guessed');
    expect(view.signatures).toMatchObject([{ who: 'customer', name: 'Robin Vale', heard: 'by voice', sound: SOUND }]);
  });

  it('belong to a dictation that is there, and are words', async () => {
    const visit = await spoken('yes');
    await speak(visit, 'note', { sound: SOUND });
    const [note] = folded(visit).notes;
    for (const [of, text] of [
      [999, 'words'],
      [note?.seq ?? -1, '  '],
    ] as const)
      visit.run.take({ type: 'wrote.words', of, text });
    await visit.run.settled();
    expect(visit.of('dictation.written')).toEqual([]);
  });

  it('are told to the customer; a guess is not', async () => {
    const visit = await spoken('yes');
    await speak(visit, 'recommend', { sound: SHORT });
    await speak(visit, 'a filter on leg', { accepted: false, sound: SOUND });
    const [recommendation] = folded(visit).recommendations;
    const plain = async () => {
      await visit.type('finish the visit', 'note the customer sent us away for today');
      return folded(visit).summary;
    };
    expect(recommendation).toMatchObject({ text: 'a filter on leg', guessed: true });
    const summary = await plain();
    expect(summary?.plain).not.toContain('a filter on leg');
    visit.run.take({ type: 'wrote.words', of: recommendation?.seq ?? -1, text: 'a filter each month' });
    await visit.run.settled();
    expect(folded(visit).recommendations).toMatchObject([{ text: 'a filter each month', heard: 'a filter on leg' }]);
  });
});

/** What 40 CFR part 82, subpart F (82.156 to 82.166) wants written down beside the weights, in the technician's words. */
describe('certificate and cylinder', () => {
  const notesOf = (visit: TypedVisit) => visit.of('note.taken').map(({ text, about }) => ({ text, about }));

  it.each([
    ['my certificate is four four one two', 'certificate four four one two', 'certificate'],
    ['EPA certification number X nine', 'certificate X nine', 'certificate'],
    ['the certificate is universal', 'certificate universal', 'certificate'],
    ['cylinder fourteen A', 'cylinder fourteen A', 'cylinder'],
    ['recovered into cylinder 14A', 'cylinder 14A', 'cylinder'],
    ['it went into the recovery cylinder number seven', 'cylinder seven', 'cylinder'],
  ])('"%s" is kept as "%s"', async (said, text, about) => {
    const visit = await TypedVisit.open();
    await visit.type(said);
    expect(notesOf(visit)).toEqual([{ text, about }]);
  });

  it('are taken beside the weight, in one breath, with the letter of the mark as it was said', async () => {
    const visit = await TypedVisit.open();
    await visit.type('I opened the system');
    await visit.type('recovered four pounds two ounces into cylinder fourteen A');
    expect(visit.of('reading.logged').map(({ reading }) => reading.value)).toEqual([-66]);
    expect(notesOf(visit)).toEqual([{ text: 'cylinder fourteen A', about: 'cylinder' }]);
  });

  it('are waited for behind the heading alone', async () => {
    const visit = await TypedVisit.open();
    await visit.type('cylinder');
    await visit.type('seven B');
    expect(notesOf(visit)).toEqual([{ text: 'cylinder seven B', about: 'cylinder' }]);
  });

  it('stay in a note what they are in a note', async () => {
    const visit = await TypedVisit.open();
    await visit.type('note my certificate is in the van');
    expect(notesOf(visit)).toEqual([{ text: 'my certificate is in the van', about: undefined }]);
  });

  it('are printed with type, weights, and where the leak was, in the words that were said', async () => {
    const visit = await TypedVisit.open();
    for (const said of [
      'I opened the system',
      'my certificate is four four one two',
      'recovered four pounds two ounces into cylinder fourteen A',
      'recovered into cylinder nine',
      'found the leak at the flare nut',
    ]) {
      await visit.type(said);
    }
    const { sections } = printedSheet(toVisitRecord(visit.events()));
    const lines = sections.find(({ title }) => title === 'Refrigerant')?.lines ?? [];
    expect(lines[0]).toMatch(/^Type: R-410A\. Recovered: four pounds two ounces\. Added: not weighed\.$/);
    expect(lines.some((line) => line.endsWith('leak found: “found the leak at the flare nut”.'))).toBe(true);
    expect(lines).toContain('Certificate: four four one two.');
    expect(lines).toContain('Cylinder: fourteen A; nine.');
    expect(sections.find(({ title }) => title === 'Notes')?.lines ?? []).toEqual([]);
  });

  it('are a note to readers that know nothing of their subject', async () => {
    const visit = await TypedVisit.open();
    await visit.type('cylinder fourteen A');
    const older = visit.events().map((event) => {
      if (event.type !== 'note.taken') return event;
      const { about: _about, ...rest } = event;
      return rest;
    });
    expect(foldVisit(older).notes.map(({ text }) => text)).toEqual(['cylinder fourteen A']);
  });
});
