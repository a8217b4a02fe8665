import type { FoldedVisit } from '../../../grammar/visit/fold-visit.ts';
import { openQuestion, repairsMade } from '../../../grammar/visit/standing.ts';
import type { VisitContext } from '../../visit/chart/context.ts';
import { askWords } from '../../visit/steps/ask-step.ts';
import { NOW } from '../../words/pages/visit-words.ts';
import { showPercent } from '../../words/shown/show-likely.ts';
import { faultWords } from '../../words/things/fault-words.ts';
import { LiveValue } from './live-value.tsx';
import { needsSupervisor } from './supervisor-sheet.tsx';
import { isPut } from './touch-keys.ts';

/** Words that would push the value and what was heard off a phone's screen are set smaller. */
const LONG_WORDS = 90;

interface NowPanelProps {
  readonly folded: FoldedVisit;
  readonly context: VisitContext;
  /** Share of the unit's table that is built, while it is. */
  readonly building: number | undefined;
}

/** One thing at a time: the open caution, else the open question, else the step; the latest value large beside it. */
export function NowPanel({ folded, context, building }: NowPanelProps) {
  const { kind, title, words } = nowAsked(folded, context);
  const warned = warnedNow(folded, words);
  const leading = context.assessment?.suspects[0];
  return (
    <section className="now" aria-label={NOW.panel}>
      {warned === '' ? null : (
        <p className="warned" data-warned>
          {warned}
        </p>
      )}
      <div className={`asked asked-${kind}`} data-asked={kind}>
        <h2>
          {title}{' '}
          <span className="busy-sign">
            {building === undefined ? NOW.workingItOut : NOW.building(showPercent(building))}
          </span>
        </h2>
        <p className={words.length > LONG_WORDS ? 'asked-words long' : 'asked-words'}>{words}</p>
      </div>
      <LiveValue folded={folded} context={context} />
      {leading === undefined || kind === 'caution' || kind === 'closed' ? null : (
        <p className="leading">
          {isRepaired(context) ? NOW.elseSuspect : NOW.leadingSuspect} <strong>{faultWords(leading.fault)}</strong>{' '}
          {showPercent(leading.probability)}
        </p>
      )}
    </section>
  );
}

/** What was warned of since the latest words were heard, while something else is asked: a question does not push it off. */
function warnedNow(folded: FoldedVisit, shown: string): string {
  const since = folded.heard.at(-1)?.seq ?? 0;
  const warnings = folded.said.filter(
    ({ kind, seq, text }) => kind === 'warning' && seq > since && !shown.includes(text),
  );
  return folded.summary === undefined ? [...new Set(warnings.map(({ text }) => text))].join(' ') : '';
}

/** All words that the panel shows. */
export function shownLarge(folded: FoldedVisit, context: VisitContext): string {
  const { words } = nowAsked(folded, context);
  return `${warnedNow(folded, words)} ${words}`;
}

interface Asked {
  readonly kind: 'caution' | 'question' | 'step' | 'held' | 'closed' | 'waiting';
  readonly title: string;
  readonly words: string;
}

/** All that is cautioned of, however many breaths it was said in, and the step that was asked with it. */
function cautionWords({ spoken, withStep }: NonNullable<VisitContext['caution']>, context: VisitContext): string {
  const words = spoken.map((caution) => caution.words);
  const { step } = context;
  return [...words, ...(withStep && step !== undefined ? [askWords(step, context)] : [])].join(' ');
}

/** Something was mended: what is left of the suspects is what else it could be. */
export function isRepaired(context: VisitContext): boolean {
  return repairsMade(context).length > 0;
}

function nowAsked(folded: FoldedVisit, context: VisitContext): Asked {
  const lastSaid = (kind: string) => folded.said.findLast((line) => line.kind === kind)?.text;
  if (folded.summary !== undefined) return { kind: 'closed', title: NOW.titles.closed, words: folded.summary.plain };
  if (isPut(context)) return { kind: 'question', title: NOW.titles.check, words: NOW.check };
  if (context.held) return { kind: 'held', title: NOW.titles.held, words: context.lastPrompt?.text ?? '' };
  if (context.caution !== undefined)
    return { kind: 'caution', title: NOW.titles.caution, words: cautionWords(context.caution, context) };
  const question = openQuestion(context);
  if (question !== undefined)
    return { kind: 'question', title: NOW.titles.question, words: context.questions[0]?.words ?? '' };
  if (needsSupervisor(context))
    return { kind: 'question', title: NOW.titles.supervisor, words: lastSaid('warning') ?? '' };
  if (context.step !== undefined)
    return { kind: 'step', title: NOW.titles.step, words: folded.steps.at(-1)?.words ?? lastSaid('step') ?? '' };
  return { kind: 'waiting', title: NOW.titles.waiting, words: context.lastPrompt?.text ?? '' };
}
