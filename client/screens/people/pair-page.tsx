import './people.css';
import { type FormEvent, useEffect, useState } from 'react';
import { type Pairing, pairDevice, readPairing } from '../../record/browser/device-key.ts';
import { PEOPLE, SIGN_IN, PAIR as WORDS } from '../../words/pages/people-words.ts';
import { deviceName, newDeviceName } from '../session/device.ts';
import { AboutLine } from '../show/about-line.tsx';
import { takeCodeFromAddress, useLaterCode } from './code-in-address.ts';

/** Pairs the device that the page is on, by the code of a keeper (`/pair#CODE`, or typed). */
export function PairPage() {
  const [paired, setPaired] = useState<Pairing | 'not-yet' | 'looking'>('looking');
  const [isNew, setNew] = useState(false);
  const [told, setTold] = useState<string>();
  const [code, setCode] = useState('');
  useLaterCode();
  useEffect(() => {
    const given = takeCodeFromAddress();
    if (given !== '') setCode(given);
    readPairing().then(
      (pairing) => setPaired(pairing ?? 'not-yet'),
      () => setPaired('not-yet'),
    );
  }, []);
  const pair = async (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const given = code.trim().toLowerCase();
    // Under the name that its visits have so far; one that was revoked has lost that for good.
    const name = typeof paired === 'string' ? deviceName() : newDeviceName();
    const answer = await pairDevice(given, name).catch(() => ({ sentence: SIGN_IN.noServer }));
    setTold('sentence' in answer ? answer.sentence : undefined);
    if ('paired' in answer) {
      setPaired(answer.paired);
      setNew(true);
    }
  };
  const isPaired = typeof paired !== 'string';
  return (
    <main className="start people">
      <h1>{WORDS.title}</h1>
      {told === undefined ? null : (
        <p className="notice" role="alert">
          {told}
        </p>
      )}
      {paired === 'looking' ? <p role="status">{PEOPLE.loading}</p> : null}
      {isPaired ? (
        <p role="status" data-paired={paired.device}>
          {isNew ? WORDS.done(paired.device, paired.company) : WORDS.already(paired.device, paired.company)}
        </p>
      ) : (
        <p>{WORDS.why}</p>
      )}
      {isNew ? null : (
        <form className="open-visit" onSubmit={(event) => void pair(event)} aria-label={WORDS.title}>
          <label>
            {WORDS.code}
            <input
              className="control"
              name="code"
              required
              maxLength={64}
              value={code}
              onChange={({ target }) => setCode(target.value)}
              autoComplete="one-time-code"
              autoCapitalize="none"
              spellCheck={false}
            />
          </label>
          <button type="submit" className="key first">
            {WORDS.pair}
          </button>
        </form>
      )}
      <p>
        <a href="/">{WORDS.toStart}</a>
      </p>
      <footer className="caution-note">
        <AboutLine />
      </footer>
    </main>
  );
}
