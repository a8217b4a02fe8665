import { ONLY_GROWS, onlyGrows } from '../database/only-grows.ts';

/** The record's tables: as in SQLite, where they are documented, with the types of PostgreSQL. Bodies are bytes. */
export const RECORD_TABLES = `${ONLY_GROWS}
CREATE TABLE stream (
  id bigserial PRIMARY KEY,
  company text NOT NULL,
  visit text NOT NULL,
  device text NOT NULL,
  epoch bigint NOT NULL,
  follows_epoch bigint,
  follows_seq bigint,
  follows_hash text,
  UNIQUE (company, visit, device, epoch)
);
CREATE TABLE event (
  arrival bigserial PRIMARY KEY,
  stream bigint NOT NULL REFERENCES stream (id),
  seq bigint NOT NULL CHECK (seq >= 1),
  hash text NOT NULL,
  body bytea NOT NULL,
  received_at bigint NOT NULL,
  clock_offset bigint,
  UNIQUE (stream, seq)
);
CREATE TABLE fork (
  id bigserial PRIMARY KEY,
  stream bigint NOT NULL REFERENCES stream (id),
  seq bigint NOT NULL,
  hash text NOT NULL,
  body bytea NOT NULL,
  received_at bigint NOT NULL,
  UNIQUE (stream, seq, hash)
);
CREATE TABLE said (
  id bigserial PRIMARY KEY,
  company text NOT NULL,
  visit text NOT NULL,
  device text NOT NULL,
  epoch bigint NOT NULL,
  seq bigint NOT NULL CHECK (seq >= 1),
  hash text NOT NULL,
  said_at bigint NOT NULL,
  UNIQUE (company, visit, device, epoch, seq)
);
${(['stream', 'event', 'fork', 'said'] as const).map(onlyGrows).join('')}`;

/** What a folder keeps in files beside the record: signed heads, what was given up, the key that signs. */
export const HEADS_TABLES = `
CREATE TABLE head (
  series bigint NOT NULL,
  number bigint NOT NULL,
  line text NOT NULL,
  PRIMARY KEY (series, number)
);
CREATE TABLE given_up (
  id bigserial PRIMARY KEY,
  line text NOT NULL
);
CREATE TABLE signing_key (
  id bigserial PRIMARY KEY,
  pem text NOT NULL,
  made_at bigint NOT NULL
);
${(['head', 'given_up', 'signing_key'] as const).map(onlyGrows).join('')}`;
