import { useEffect, useState } from 'react';
import { readPairing } from '../../record/browser/device-key.ts';
import { PAIR } from '../../words/pages/people-words.ts';
import { askWho } from '../session/who.ts';

/** Says that visits stay on this device, where the server takes those of paired devices alone and this is none. */
export function DeviceState() {
  const [unpaired, setUnpaired] = useState(false);
  useEffect(() => {
    let gone = false;
    const look = async () => {
      if ((await readPairing()) !== undefined) return;
      const who = await askWho();
      if (!gone) setUnpaired(who?.open === false);
    };
    look().catch(() => undefined);
    return () => {
      gone = true;
    };
  }, []);
  if (!unpaired) return null;
  return (
    <p className="notice" data-unpaired>
      {PAIR.notPaired} <a href="/pair">{PAIR.pair}</a>
    </p>
  );
}
