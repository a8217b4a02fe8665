import type { FoldedVisit, ReadingLine } from '../../../grammar/visit/fold-visit.ts';
import type { VisitContext } from '../../visit/chart/context.ts';
import { showPlace, showUnit } from '../show/show-reading.ts';
import { faultName, percent } from '../show/suspect-list.tsx';
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
    <section className="now" aria-label="Now">
      <div className={`asked asked-${kind}`} data-asked={kind}>
        <h2>
          {title}{' '}
          <span className="busy-sign">
            {building === undefined ? 'working it out' : `getting to know this unit, ${percent(building)}`}
          </span>
        </h2>
        <p className={words.length > LONG_WORDS ? 'asked-words long' : 'asked-words'}>{words}</p>
      </div>
      <LiveValue context={context} latest={latest} />
      {leading === undefined || kind === 'caution' || kind === 'closed' ? null : (
        <p className="leading">
          Leading suspect: <strong>{faultName(leading.fault)}</strong> {percent(leading.probability)}
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
  const { question } = context;
  const asked = question !== undefined && 'reading' in question ? question.reading : undefined;
  const reading = asked ?? latest?.reading;
  if (reading === undefined) return null;
  const word = asked === undefined ? latest?.judged?.word : 'asked';
  return (
    <p className="live-value" data-live-value={String(reading.value)}>
      <span className="live-place">
        {showPlace(reading.at)}
        {word === undefined ? null : <em> {word}</em>}
      </span>
      <span className="live-number">
        {question?.kind === 'teen-or-ty' ? (
          <>
            {question.options[0]} <span className="live-or">or</span> {question.options[1]}
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
  if (folded.summary !== undefined) return { kind: 'closed', title: 'Visit closed', words: folded.summary.plain };
  if (isPut(context)) return { kind: 'question', title: 'Check on you', words: 'Say or touch: I am fine.' };
  if (context.held) return { kind: 'held', title: 'Visit held', words: context.lastPrompt?.text ?? '' };
  if (context.caution !== undefined) return { kind: 'caution', title: 'Caution', words: lastSaid('caution') ?? '' };
  if (context.question !== undefined) return { kind: 'question', title: 'Question', words: lastSaid('question') ?? '' };
  if (needsSupervisor(context))
    return { kind: 'question', title: 'Supervisor first', words: lastSaid('warning') ?? '' };
  if (context.step !== undefined)
    return { kind: 'step', title: 'Next', words: folded.steps.at(-1)?.words ?? lastSaid('step') ?? '' };
  return { kind: 'waiting', title: 'Readback', words: context.lastPrompt?.text ?? '' };
}
