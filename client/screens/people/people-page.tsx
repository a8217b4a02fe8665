import './people.css';
import { type FormEvent, useEffect, useState } from 'react';
import { ROLES, type Role } from '../../../grammar/visit/roles.ts';
import { PEOPLE, ROLE_NAMES, SIGN_IN } from '../../words/pages/people-words.ts';
import { askServer, type ServerAnswer } from '../session/server-answer.ts';
import { askWho, type Who } from '../session/who.ts';
import { AboutLine } from '../show/about-line.tsx';
import { DeviceTable, type PairedDevice } from './device-table.tsx';
import { GivenCode, type GivenSecret } from './given-code.tsx';
import { SignInFirst } from './sign-in-page.tsx';
import { Trail, type TrailLine } from './trail.tsx';

export interface PersonRow {
  readonly person: string;
  readonly login: string;
  readonly name: string;
  readonly role: Role;
  readonly comesIn: boolean;
}

interface Held {
  readonly people: readonly PersonRow[];
  readonly devices: readonly PairedDevice[];
  readonly lines: readonly TrailLine[];
}

/** How many lines of the trail are shown. */
const LINES = 50;

/** What a keeper manages: people, devices, and what was done and refused. */
export function PeoplePage() {
  const [who, setWho] = useState<Who>();
  const [held, setHeld] = useState<Held>();
  const [told, setTold] = useState<string>();
  const [turnedAway, setTurnedAway] = useState(false);
  const [secret, setSecret] = useState<GivenSecret>();
  const look = async () => {
    setWho(await askWho());
    const people = await askServer<{ people: readonly PersonRow[] }>('GET', '/api/people');
    const devices = await askServer<{ devices: readonly PairedDevice[] }>('GET', '/api/devices');
    const trail = await askServer<{ lines: readonly TrailLine[] }>('GET', `/api/audit?limit=${LINES}`);
    if (people.ok && devices.ok && trail.ok) {
      setHeld({ people: people.body.people, devices: devices.body.devices, lines: trail.body.lines });
      setTurnedAway(false);
    } else if (!people.ok) {
      setHeld(undefined);
      setTold(people.sentence);
      setTurnedAway(people.status === 401 || people.status === 403);
    }
  };
  // biome-ignore lint/correctness/useExhaustiveDependencies: once, when the page is loaded
  useEffect(() => {
    void look();
  }, []);
  const take = async <Body,>(answer: ServerAnswer<Body>, done?: (body: Body) => void) => {
    setTold(answer.ok ? undefined : answer.sentence);
    if (answer.ok) done?.(answer.body);
    await look();
  };
  const change: Change = (method, path, body, done) =>
    void askServer<GivenBody>(method, path, body).then((answer) => take(answer, done));
  return (
    <main className="start people">
      <h1>{PEOPLE.title}</h1>
      {who?.company === undefined ? null : <p className="quiet">{PEOPLE.of(who.company)}</p>}
      {told === undefined ? null : (
        <p className="notice" role="alert">
          {told}
        </p>
      )}
      {turnedAway ? <SignInFirst next="/people" /> : null}
      {who?.open === true ? <p className="notice">{PEOPLE.firstKeeper}</p> : null}
      {secret === undefined ? null : <GivenCode secret={secret} onClose={() => setSecret(undefined)} />}
      {held === undefined ? null : (
        <>
          <PeopleTable people={held.people} change={change} give={setSecret} />
          <AddPerson change={change} give={setSecret} />
          <DeviceTable
            devices={held.devices}
            nameOf={(person) => held.people.find((one) => one.person === person)?.name ?? person}
            onRevoke={(device) => change('DELETE', `/api/devices/${device}`)}
            onFile={(device, file) =>
              void askServer<HandedOver>('POST', `/api/devices/${device}/hand-over`, file).then(async (answer) => {
                await take(answer);
                if (answer.ok) setTold(handedOverWords(answer.body));
              })
            }
          />
          <Trail lines={held.lines} nameOf={(person) => held.people.find((one) => one.person === person)?.name} />
        </>
      )}
      <p>
        <a href="/sign-in">{SIGN_IN.title}</a> · <a href="/review">{SIGN_IN.toReview}</a>
      </p>
      <footer className="caution-note">
        <AboutLine />
      </footer>
    </main>
  );
}

interface HandedOver {
  readonly visit: string;
  readonly stored: number;
  readonly held: number;
  readonly refused: number;
}

function handedOverWords({ visit, stored, held, refused }: HandedOver): string {
  return PEOPLE.handedOver(visit, stored, held, refused);
}

interface GivenBody {
  readonly code: string;
  readonly expiresAt?: number;
}

type Change = (
  method: 'POST' | 'PATCH' | 'DELETE',
  path: string,
  body?: object,
  done?: (body: GivenBody) => void,
) => void;

interface TableProps {
  readonly people: readonly PersonRow[];
  readonly change: Change;
  readonly give: (secret: GivenSecret) => void;
}

function PeopleTable({ people, change, give }: TableProps) {
  if (people.length === 0) return null;
  return (
    <section>
      <h2>{PEOPLE.people}</h2>
      <ul className="people-list">
        {people.map((row) => (
          <PersonLine key={row.person} row={row} change={change} give={give} />
        ))}
      </ul>
    </section>
  );
}

function PersonLine({ row, change, give }: { readonly row: PersonRow } & Omit<TableProps, 'people'>) {
  const { person, name, login, role, comesIn } = row;
  const path = `/api/people/${person}`;
  return (
    <li data-login={login}>
      <span>
        <strong>{name}</strong> <span className="quiet">{comesIn ? login : `${login}, ${PEOPLE.notYetIn}`}</span>
      </span>
      <select
        className="control"
        aria-label={PEOPLE.roleOf(name)}
        value={role}
        onChange={(event) => change('PATCH', path, { role: event.target.value })}
      >
        {ROLES.map((one) => (
          <option key={one} value={one}>
            {ROLE_NAMES[one]}
          </option>
        ))}
      </select>
      <button
        type="button"
        className="control"
        aria-label={PEOPLE.pairFor(name)}
        onClick={() =>
          change('POST', `${path}/pairing`, undefined, ({ code, expiresAt }) =>
            give({ kind: 'pairing', name, code, ...(expiresAt === undefined ? {} : { expiresAt }) }),
          )
        }
      >
        {PEOPLE.pair}
      </button>
      <button
        type="button"
        className="control"
        aria-label={PEOPLE.newLinkFor(name)}
        onClick={() => change('POST', `${path}/link`, undefined, ({ code }) => give({ kind: 'link', name, code }))}
      >
        {PEOPLE.newLink}
      </button>
      <button
        type="button"
        className="control"
        aria-label={PEOPLE.removeOne(name)}
        onClick={() => {
          if (confirm(PEOPLE.sureRemove(name))) change('DELETE', path);
        }}
      >
        {PEOPLE.remove}
      </button>
    </li>
  );
}

function AddPerson({ change, give }: Omit<TableProps, 'people'>) {
  const add = (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const form = event.currentTarget;
    const given = new FormData(form);
    const name = String(given.get('name'));
    const body = { name, login: String(given.get('login')).toLowerCase(), role: given.get('role') };
    change('POST', '/api/people', body, ({ code }) => {
      give({ kind: 'link', name, code });
      form.reset();
    });
  };
  return (
    <form className="open-visit" onSubmit={add} aria-label={PEOPLE.add}>
      <h2>{PEOPLE.add}</h2>
      <label>
        {PEOPLE.name}
        <input className="control" name="name" required maxLength={100} autoComplete="off" />
      </label>
      <label>
        {PEOPLE.login}
        <input className="control" name="login" required maxLength={64} autoComplete="off" autoCapitalize="none" />
      </label>
      <label>
        {PEOPLE.role}
        <select className="control" name="role" defaultValue="technician">
          {ROLES.map((role) => (
            <option key={role} value={role}>
              {ROLE_NAMES[role]}
            </option>
          ))}
        </select>
      </label>
      <button type="submit" className="key">
        {PEOPLE.addNow}
      </button>
    </form>
  );
}
