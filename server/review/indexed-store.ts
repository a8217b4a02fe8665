import type { EventStore } from '../store/event-store.ts';
import type { IndexKeeper } from './index-keeper.ts';

/** The store, whose keeper of the index hears of every visit that grew or of which more was said. */
export function indexedStore(store: EventStore, keeper: Pick<IndexKeeper, 'touched'>): EventStore {
  const heeded: Pick<EventStore, 'note' | 'commit'> = {
    note: async (said) => {
      await store.note(said);
      keeper.touched(said.map(({ stream }) => stream));
    },
    commit: async (batch) => {
      const outcomes = await store.commit(batch);
      keeper.touched(batch.filter((_, at) => outcomes[at]?.kind === 'stored').map(({ stream }) => stream));
      return outcomes;
    },
  };
  return new Proxy(store, {
    get: (target, name) => {
      if (Object.hasOwn(heeded, name)) return heeded[name as keyof typeof heeded];
      const value: unknown = Reflect.get(target, name, target);
      return typeof value === 'function' ? value.bind(target) : value;
    },
  });
}
