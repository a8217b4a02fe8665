/** The databases that a server can keep its tables in. */
export type Engine = 'sqlite' | 'postgres';

/** The type of a whole number that grows by itself and is the table's key. */
export function growingNumber(engine: Engine): 'integer' | 'bigserial' {
  return engine === 'sqlite' ? 'integer' : 'bigserial';
}
