import type { DatabaseSync } from 'node:sqlite'

/** Marks a file as a Thrum project: `Thrm` in bytes 68 to 71 of the file. */
export const applicationId = 0x5468726d

/** One step from an older layout to the next. Pure SQL, run inside a transaction that the caller holds. */
export interface LayoutStep {
  readonly from: number
  run(db: DatabaseSync): void
}

/** The layout this version writes, and how older ones are lifted to it. `user_version` numbers the layout of the file only. */
export interface Layouts {
  readonly newest: number
  readonly steps: readonly LayoutStep[]
}

/** Layout 1 is the first that was ever written, so there is nothing to lift yet. */
export const layouts: Layouts = { newest: 1, steps: [] }

/** The tables of layout 1. `fact_forgotten` answers, for every fact that arrives, whether it is to be forgotten. */
export const schema = `
create table fact (
  seq integer primary key,
  id text not null unique,
  kind text not null,
  v integer not null,
  subject text,
  at text not null,
  "by" text not null,
  device text not null,
  body text not null,
  data blob
) strict;
create index fact_subject on fact (subject) where subject is not null;
create index fact_forgotten on fact (body ->> 'of') where kind = 'redacted';
create table attachment (hash text primary key, media text not null, size integer not null) strict, without rowid;
create table attachment_part (
  hash text not null references attachment (hash),
  part integer not null,
  bytes blob not null,
  primary key (hash, part)
) strict;
create table peer (
  id text primary key,
  name text not null,
  key text not null,
  sent integer not null,
  received integer not null
) strict, without rowid;
create table derived (key text primary key, digest text not null, bytes blob not null) strict;
`
