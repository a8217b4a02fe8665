import { NOW } from '../../words/pages/visit-words.ts';
import { showPercent, showShare } from '../../words/shown/show-likely.ts';
import type { Glance } from '../glance/glance.ts';
import { LiveValue } from './live-value.tsx';

/** Words that would push the value and what was heard off a phone's screen are set smaller. */
const LONG_WORDS = 55;
/** Several rules at once, as the standing ones are. */
const SEVERAL_RULES = 240;

interface NowPanelProps {
  readonly glance: Glance;
  /** Share of the unit's table that is built, while it is. */
  readonly building: number | undefined;
}

/** One thing at a time: the open caution, else the open question, else the step; the latest value large beside it. */
export function NowPanel({ glance, building }: NowPanelProps) {
  const { asked, warned, live, suspects, repaired } = glance;
  const { kind, title, words } = asked;
  const [leading] = suspects;
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
            {building === undefined ? NOW.workingItOut : NOW.building(showShare(building))}
          </span>
        </h2>
        <p className={`asked-words ${lengthOf(words)}`}>{words}</p>
      </div>
      <LiveValue {...live} />
      {leading === undefined || kind === 'caution' || kind === 'closed' ? null : (
        <p className="leading">
          {repaired ? NOW.elseSuspect : NOW.leadingSuspect} <strong>{leading.name}</strong>{' '}
          {showPercent(leading.probability)}
        </p>
      )}
    </section>
  );
}

function lengthOf({ length }: string): string {
  if (length > SEVERAL_RULES) return 'longest';
  return length > LONG_WORDS ? 'long' : '';
}
