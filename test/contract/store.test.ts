import { join } from 'node:path';
import { afterAll } from 'vitest';
import { openSqliteStore } from '../../server/store/sqlite-store.ts';
import { scratchFolder } from '../server/built-server.ts';
import { storeContract } from './store-contract.ts';

const scratch = scratchFolder();
const path = join(scratch.path, 'contract.sqlite');
let store = openSqliteStore(path);
afterAll(async () => {
  await store.close();
  scratch.remove();
});

storeContract(
  'SQLite',
  () => store,
  async () => {
    await store.close();
    store = openSqliteStore(path);
  },
);
