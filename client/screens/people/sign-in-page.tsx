import './people.css';
import { browserSupportsWebAuthn } from '@simplewebauthn/browser';
import { type FormEvent, useEffect, useState } from 'react';
import { PAGE } from '../../words/pages/page-words.ts';
import { PEOPLE, SIGN_IN } from '../../words/pages/people-words.ts';
import { askServer, type ServerAnswer } from '../session/server-answer.ts';
import { askWho, type Who } from '../session/who.ts';
import { AboutLine } from '../show/about-line.tsx';
import { takeCodeFromAddress, useLaterCode } from './code-in-address.ts';
import { makePasskey, signInByPasskey } from './passkey.ts';

type Now = Who | 'looking' | 'no-server';

/** Coming in: by a link that a keeper gave (`/sign-in#CODE`), a passkey or a password. */
export function SignInPage() {
  const [now, setNow] = useState<Now>('looking');
  const [told, setTold] = useState<string>();
  const look = async () => setNow((await askWho()) ?? 'no-server');
  const take = async (answer: ServerAnswer<unknown>, words?: string) => {
    setTold(answer.ok ? words : answer.sentence);
    await look();
    return answer.ok;
  };
  useLaterCode();
  // biome-ignore lint/correctness/useExhaustiveDependencies: once, when the page is loaded
  useEffect(() => {
    const code = takeCodeFromAddress();
    const coming = code === '' ? undefined : askServer('POST', '/api/set-up', { code });
    void (coming === undefined ? look() : coming.then((answer) => take(answer)));
  }, []);
  const comeIn = async (answer: ServerAnswer<unknown>) => {
    if (await take(answer)) goOn();
  };
  return (
    <main className="start people">
      <h1>{SIGN_IN.title}</h1>
      {told === undefined ? null : (
        <p className="notice" role="alert">
          {told}
        </p>
      )}
      {now === 'looking' ? <p role="status">{PEOPLE.loading}</p> : null}
      {now === 'no-server' ? <p role="status">{SIGN_IN.noServer}</p> : null}
      {typeof now === 'string' ? null : <Coming who={now} comeIn={comeIn} take={take} />}
      <footer className="caution-note">
        <AboutLine />
      </footer>
    </main>
  );
}

interface ComingProps {
  readonly who: Who;
  readonly comeIn: (answer: ServerAnswer<unknown>) => Promise<void>;
  readonly take: (answer: ServerAnswer<unknown>, words?: string) => Promise<boolean>;
}

function Coming({ who, comeIn, take }: ComingProps) {
  const { open, person, company, hasPassword } = who;
  if (open) {
    return (
      <>
        <p>{SIGN_IN.openHere}</p>
        <Ways keeper />
      </>
    );
  }
  if (person === undefined || company === undefined) return <SignInForms comeIn={comeIn} />;
  return (
    <>
      <p data-signed-in={person.role}>{SIGN_IN.signedInAs(person.name, person.role, company)}</p>
      <Ways keeper={person.role === 'keeper'} />
      <button
        type="button"
        className="key"
        onClick={() => void askServer('POST', '/api/sign-out').then((answer) => take(answer))}
      >
        {SIGN_IN.signOut}
      </button>
      <WayIn hasPassword={hasPassword === true} take={take} />
    </>
  );
}

function Ways({ keeper }: { readonly keeper: boolean }) {
  return (
    <ul className="ways">
      <li>
        <a href="/">{SIGN_IN.toStart}</a>
      </li>
      <li>
        <a href="/review">{SIGN_IN.toReview}</a>
      </li>
      {keeper ? (
        <li>
          <a href="/people">{SIGN_IN.toPeople}</a>
        </li>
      ) : null}
    </ul>
  );
}

/** The passkey first, where the browser has them. */
function SignInForms({ comeIn }: Pick<ComingProps, 'comeIn'>) {
  const byPassword = (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const given = new FormData(event.currentTarget);
    void askServer('POST', '/api/sign-in', { login: given.get('login'), password: given.get('password') }).then(comeIn);
  };
  return (
    <>
      {hasPasskeys() ? (
        <button type="button" className="key first" onClick={() => void signInByPasskey().then(comeIn)}>
          {SIGN_IN.byPasskey}
        </button>
      ) : null}
      <form className="open-visit" onSubmit={byPassword} aria-label={SIGN_IN.byPassword}>
        <h2>{SIGN_IN.byPassword}</h2>
        <label>
          {SIGN_IN.name}
          <input
            className="control"
            name="login"
            required
            maxLength={64}
            autoComplete="username"
            autoCapitalize="none"
          />
        </label>
        <label>
          {SIGN_IN.password}
          <input
            className="control"
            name="password"
            type="password"
            required
            maxLength={256}
            autoComplete="current-password"
          />
        </label>
        <button type="submit" className="key">
          {SIGN_IN.signIn}
        </button>
      </form>
    </>
  );
}

/** By what one comes in the next time. */
function WayIn({ hasPassword, take }: { readonly hasPassword: boolean } & Pick<ComingProps, 'take'>) {
  const setPassword = (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const form = event.currentTarget;
    const given = new FormData(form);
    const old = given.get('old');
    const body = { password: given.get('password'), ...(old === null || old === '' ? {} : { old }) };
    void askServer('POST', '/api/me/password', body).then(async (answer) => {
      if (await take(answer, SIGN_IN.passwordSet)) form.reset();
    });
  };
  return (
    <section>
      <h2>{SIGN_IN.wayIn}</h2>
      {hasPasskeys() ? (
        <button
          type="button"
          className="key first"
          onClick={() => void makePasskey().then((answer) => take(answer, SIGN_IN.passkeyMade))}
        >
          {SIGN_IN.choosePasskey}
        </button>
      ) : (
        <p className="quiet">{SIGN_IN.noPasskeyHere}</p>
      )}
      <form className="open-visit" onSubmit={setPassword} aria-label={SIGN_IN.byPassword}>
        {hasPassword ? (
          <label>
            {SIGN_IN.oldPassword}
            <input className="control" name="old" type="password" maxLength={256} autoComplete="current-password" />
          </label>
        ) : null}
        <label>
          {SIGN_IN.newPassword}
          <input
            className="control"
            name="password"
            type="password"
            required
            minLength={12}
            maxLength={256}
            autoComplete="new-password"
          />
        </label>
        <button type="submit" className="key">
          {SIGN_IN.setPassword}
        </button>
      </form>
    </section>
  );
}

/** A passkey is good for a name, not for a bare address (WebAuthn: the relying party is a domain). */
function hasPasskeys(): boolean {
  return browserSupportsWebAuthn() && !/^[\d.]+$|^\[/.test(location.hostname);
}

/** To where somebody was sent away from, within this program alone. */
function goOn(): void {
  const next = new URLSearchParams(location.search).get('next');
  if (next !== null && /^\/(review|people)/.test(next)) location.assign(next);
}

/** Shown where a page needs somebody to sign in. */
export function SignInFirst({ next }: { readonly next: string }) {
  return (
    <p>
      <a href={`/sign-in?next=${encodeURIComponent(next)}`} aria-label={`${PAGE.program}: ${SIGN_IN.first}`}>
        {SIGN_IN.first}
      </a>
    </p>
  );
}
