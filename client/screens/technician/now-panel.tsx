import type { ReadingLine } from '../../../grammar/visit/facts.ts';
import type { FoldedVisit } from '../../../grammar/visit/fold-visit.ts';
import { openQuestion } from '../../../grammar/visit/standing.ts';
import type { VisitContext } from '../../visit/chart/context.ts';
import { NOW } from '../../words/pages/visit-words.ts';
import { showPercent } from '../../words/shown/show-likely.ts';
import { showPlace, showUnit } from '../../words/shown/show-reading.ts';
import { faultWords } from '../../words/things/fault-words.ts';
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
  const latest = folded.readings.findLast((line) => !line.withdrawn);
  const leading = context.assessment?.suspects[0];
  return (
    <section className="now" aria-label={NOW.panel}>
      <div className={`asked asked-${kind}`} data-asked={kind}>
        <h2>
          {title}{' '}
          <span className="busy-sign">
            {building === undefined ? NOW.workingItOut : NOW.building(showPercent(building))}
          </span>
        </h2>
        <p className={words.length > LONG_WORDS ? 'asked-words long' : 'asked-words'}>{words}</p>
      </div>
      <LiveValue context={context} latest={latest} />
      {leading === undefined || kind === 'caution' || kind === 'closed' ? null : (
        <p className="leading">
          {NOW.leadingSuspect} <strong>{faultWords(leading.fault)}</strong> {showPercent(leading.probability)}
        </p>
      )}
    </section>
  );
}

interface LiveValueProps {
  readonly context: VisitContext;
  readonly latest: ReadingLine | undefined;
}

/** The value in question, else the latest one logged. */
function LiveValue({ context, latest }: LiveValueProps) {
  const question = openQuestion(context);
  const asked = question !== undefined && 'reading' in question ? question.reading : undefined;
  const reading = asked ?? latest?.reading;
  if (reading === undefined) return null;
  const word = asked === undefined ? latest?.judged?.word : NOW.asked;
  return (
    <p className="live-value" data-live-value={String(reading.value)}>
      <span className="live-place">
        {showPlace(reading.at)}
        {word === undefined ? null : <em> {word}</em>}
      </span>
      <span className="live-number">
        {question?.kind === 'teen-or-ty' ? (
          <>
            {question.options[0]} <span className="live-or">{NOW.or}</span> {question.options[1]}
          </>
        ) : (
          reading.value
        )}
        {reading.value === 'open' ? null : <span className="live-unit">{showUnit(reading.unit)}</span>}
      </span>
    </p>
  );
}

interface Asked {
  readonly kind: 'caution' | 'question' | 'step' | 'held' | 'closed' | 'waiting';
  readonly title: string;
  readonly words: string;
}

export function nowAsked(folded: FoldedVisit, context: VisitContext): Asked {
  const lastSaid = (kind: string) => folded.said.findLast((line) => line.kind === kind)?.text;
  if (folded.summary !== undefined) return { kind: 'closed', title: NOW.titles.closed, words: folded.summary.plain };
  if (isPut(context)) return { kind: 'question', title: NOW.titles.check, words: NOW.check };
  if (context.held) return { kind: 'held', title: NOW.titles.held, words: context.lastPrompt?.text ?? '' };
  if (context.caution !== undefined)
    return { kind: 'caution', title: NOW.titles.caution, words: lastSaid('caution') ?? '' };
  if (context.questions.length > 0)
    return { kind: 'question', title: NOW.titles.question, words: context.questions[0]?.words ?? '' };
  if (needsSupervisor(context))
    return { kind: 'question', title: NOW.titles.supervisor, words: lastSaid('warning') ?? '' };
  if (context.step !== undefined)
    return { kind: 'step', title: NOW.titles.step, words: folded.steps.at(-1)?.words ?? lastSaid('step') ?? '' };
  return { kind: 'waiting', title: NOW.titles.waiting, words: context.lastPrompt?.text ?? '' };
}
