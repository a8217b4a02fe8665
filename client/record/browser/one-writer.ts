/** A tab's part in a visit that several tabs show. */
export interface WriterClaim {
  /** Lets another tab write. */
  release(): void;
}

const WRITER = 'readback-writer-';

/** The visits that some tab is writing now. */
export async function visitsBeingWritten(locks: LockManager = navigator.locks): Promise<ReadonlySet<string>> {
  const { held = [] } = await locks.query();
  const names = held.map(({ name = '' }) => name).filter((name) => name.startsWith(WRITER));
  return new Set(names.map((name) => name.slice(WRITER.length)));
}

/**
 * Of all tabs that claim the visit, one at a time is its writer; `writing` is called when it is this tab's turn, at
 * once or when the tab before has closed, crashed or let go. `waiting` is called first where another tab writes.
 */
export function claimWriter(
  visit: string,
  callbacks: { readonly writing: () => void; readonly waiting: () => void },
  locks: LockManager = navigator.locks,
): WriterClaim {
  const name = `${WRITER}${visit}`;
  const given = new AbortController();
  let release: () => void = () => given.abort();
  const hold = () => {
    callbacks.writing();
    return new Promise<void>((resolve) => {
      release = resolve;
    });
  };
  const waitForTurn = () =>
    locks.request(name, { signal: given.signal }, hold).catch((error) => {
      if (!given.signal.aborted) throw error;
    });
  void locks.request(name, { ifAvailable: true }, async (lock) => {
    if (given.signal.aborted) return;
    if (lock !== null) return hold();
    callbacks.waiting();
    // Not awaited: this request holds nothing and must end for the next to be served.
    void waitForTurn();
  });
  return { release: () => release() };
}
