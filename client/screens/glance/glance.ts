import type { ReadingLine, VisitFacts } from '../../../grammar/visit/facts.ts';
import type { FoldedVisit } from '../../../grammar/visit/fold-visit.ts';
import { keepsSound, repairsMade, wireMoves } from '../../../grammar/visit/standing.ts';
import type { Reading } from '../../../grammar/vocabulary/measurement.ts';
import type { PlateField } from '../../../grammar/vocabulary/nameplate.ts';
import type { EnergyState, ZoneId } from '../../../grammar/vocabulary/zones.ts';
import type { VisitContext } from '../../visit/chart/context.ts';
import { TO_BE_PROVED } from '../../visit/rules/isolation.ts';
import { type LandingRow, landingRows } from '../../visit/rules/landings.ts';
import { openPlate } from '../../visit/steps/plate-steps.ts';
import { showTouched } from '../../words/shown/show-understanding.ts';
import { showUnderstood } from '../../words/shown/transcript-words.ts';
import { faultWords } from '../../words/things/fault-words.ts';
import { type Asked, askedNow, cautionGiven, warnedNow } from './asked-now.ts';
import { type LiveValues, liveValues } from './live-values.ts';
import { type PadRequest, proofPad, type TouchKey } from './touch-key.ts';
import { keysFor, readingToSetRight } from './touch-keys.ts';
import { type WhyPart, whyLines } from './why-lines.ts';

/**
 * All that the technician's page shows of a running visit, as plain data: made where the visit runs, so that the page
 * carries none of its rules.
 */
export interface Glance {
  readonly visit: string;
  readonly site: string;
  readonly phase: VisitContext['phase'];
  readonly closed: boolean;
  readonly held: boolean;
  readonly pace: VisitContext['pace'];
  readonly units: VisitContext['units'];
  readonly energy: Readonly<Record<ZoneId, EnergyState>>;
  /** What was heard last, and how it was understood; and how often anything was. */
  readonly heard: { readonly times: number; readonly text: string; readonly understood: string } | undefined;
  readonly said: { readonly kind: string; readonly text: string } | undefined;
  readonly asked: Asked;
  /** Warned of since then, and not in the words of what is asked; empty where nothing was. */
  readonly warned: string;
  readonly live: LiveValues;
  readonly keys: readonly TouchKey[];
  /** A caution is due and was not given whole: until then no key is. */
  readonly cautionToCome: boolean;
  /** Something was mended: what is left of the suspects is what else it could be. */
  readonly repaired: boolean;
  readonly suspects: readonly { readonly name: string; readonly probability: number }[];
  readonly why: readonly WhyPart[];
  readonly readings: readonly ReadingLine[];
  readonly wires: readonly LandingRow[];
  /** Whether sound may be kept of what is heard now: `dictated` also where it is taken for nobody's words. */
  readonly keeping: 'none' | 'accepted' | 'dictated';
  readonly sheets: SheetFacts;
}

/** What the sheets over the page want to know. */
export interface SheetFacts {
  /** There is something that "take that back" takes back. */
  readonly undoable: boolean;
  /** The reading that a correction sets right now. */
  readonly toSetRight: Reading | undefined;
  /** The numbers of the proof that is likeliest meant. */
  readonly proof: PadRequest;
  /** Lines of the nameplate that are asked and not read yet. */
  readonly plate: readonly PlateField[];
  readonly dictated: Pick<VisitFacts, 'visit' | 'notes' | 'recommendations' | 'signatures'>;
  readonly photos: number;
}

/** Suspects that the page lists. */
const MOST_SUSPECTS = 6;

/** @param folded the record of the visit, as far as the talk has come */
export function glanceOf(folded: FoldedVisit, context: VisitContext): Glance {
  const asked = askedNow(folded, context);
  const said = folded.said.at(-1);
  const { visit, notes, recommendations, signatures } = context;
  return {
    visit: folded.visit,
    site: folded.site,
    phase: context.phase,
    closed: folded.summary !== undefined,
    held: context.held,
    pace: context.pace,
    units: context.units,
    energy: folded.energy,
    heard: heardLast(folded, context),
    said: said && { kind: said.kind, text: said.text },
    asked,
    warned: warnedNow(folded, asked.words),
    live: liveValues(folded, context),
    keys: keysFor(context),
    cautionToCome: !cautionGiven(folded, context),
    repaired: repairsMade(context).length > 0,
    suspects: (context.assessment?.suspects ?? [])
      .slice(0, MOST_SUSPECTS)
      .map(({ fault, probability }) => ({ name: faultWords(fault), probability })),
    why: whyLines(folded, context.assessment),
    readings: folded.readings,
    wires: landingRows(wireMoves(context)),
    keeping: !keepsSound(context) ? 'none' : context.dictating === undefined ? 'accepted' : 'dictated',
    sheets: {
      undoable: context.undoable.length > 0,
      toSetRight: readingToSetRight(context),
      proof: proofPad(zoneToProve(context)),
      plate: context.step === undefined ? [] : openPlate(context.step, context),
      dictated: { visit, notes, recommendations, signatures },
      photos: folded.photos.length,
    },
  };
}

/** What was said or touched last. */
function heardLast(folded: FoldedVisit, context: VisitContext): Glance['heard'] {
  const heard = folded.heard.at(-1);
  const { touched } = folded;
  const times = folded.heard.length;
  if (touched !== undefined && touched.seq > (heard?.seq ?? 0)) return { times, ...showTouched(touched.command) };
  if (heard === undefined) return undefined;
  const { text, understanding, accepted, became } = heard;
  const early = became === 'nothing' && !cautionGiven(folded, context) ? 'early' : became;
  return { times, text, understood: showUnderstood(understanding, accepted, early) };
}

/** The zone whose switch was reported open or whose proof was begun, the outdoor unit first where several were. */
function zoneToProve({ energy }: VisitContext): ZoneId {
  const zones: readonly ZoneId[] = ['outdoor-load', 'disconnect-line', 'air-handler', 'control'];
  return zones.find((zone) => TO_BE_PROVED.includes(energy[zone])) ?? 'outdoor-load';
}
