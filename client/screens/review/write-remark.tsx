import { type FormEvent, useEffect, useState } from 'react';
import { REMARK } from '../../words/pages/review-words.ts';
import { askServer } from '../session/server-answer.ts';
import { askWho, type Who } from '../session/who.ts';

const MAY_WRITE: ReadonlySet<string> = new Set(['technician', 'supervisor', 'keeper']);
const LONGEST = 5_000;

/** A remark on a visit: it becomes an event beside the visit, by name, and moves nothing in it. */
export function WriteRemark({ visit }: { readonly visit: string }) {
  const [who, setWho] = useState<Who>();
  const [text, setText] = useState('');
  const [author, setAuthor] = useState('');
  const [told, setTold] = useState('');
  useEffect(() => {
    void askWho().then(setWho);
  }, []);
  const person = who?.person;
  if (who === undefined || (person !== undefined && !MAY_WRITE.has(person.role))) return null;
  const send = (event: FormEvent) => {
    event.preventDefault();
    setTold('');
    const said = { text: text.trim(), ...(author.trim() === '' ? {} : { author: author.trim() }) };
    void askServer('POST', `/api/visits/${encodeURIComponent(visit)}/remarks`, said).then((answer) => {
      if (answer.ok) setText('');
      setTold(answer.ok ? REMARK.written : answer.sentence);
    });
  };
  return (
    <form className="write-remark" onSubmit={send}>
      <label>
        {REMARK.label}
        <textarea
          className="control"
          rows={2}
          maxLength={LONGEST}
          dir="auto"
          value={text}
          onChange={(event) => setText(event.target.value)}
        />
      </label>
      <div className="write-remark-by">
        {person !== undefined ? (
          <span>{REMARK.as(person.name)}</span>
        ) : (
          <label>
            {REMARK.author}
            <input
              className="control"
              autoComplete="name"
              maxLength={100}
              value={author}
              onChange={(event) => setAuthor(event.target.value)}
            />
          </label>
        )}
        <button type="submit" className="control" disabled={text.trim() === ''}>
          {REMARK.write}
        </button>
      </div>
      <p role="status">{told}</p>
    </form>
  );
}
