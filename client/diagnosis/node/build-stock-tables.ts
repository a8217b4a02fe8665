import { fileURLToPath } from 'node:url';
import { writeStockTables } from './stock-tables.ts';

/** `npm run build:tables`: the tables of the stock profiles, into .build/stock-tables. */
const folder = fileURLToPath(new URL('../../../stock-tables', import.meta.url));
writeStockTables(folder, (id, share) => {
  if (share === 1) process.stdout.write(`${id}\n`);
});
