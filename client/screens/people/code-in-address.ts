import { useEffect } from 'react';

/** The code behind `#` of a link, taken out of the address: it is to stand in no list of addresses. Empty: there is none. */
export function takeCodeFromAddress(): string {
  const code = location.hash.slice(1);
  if (code !== '') history.replaceState(null, '', location.pathname + location.search);
  return code;
}

/** A link that is opened where its page is open already changes the address alone: the page begins anew with it. */
export function useLaterCode(): void {
  useEffect(() => {
    const begin = () => location.reload();
    addEventListener('hashchange', begin);
    return () => removeEventListener('hashchange', begin);
  }, []);
}
