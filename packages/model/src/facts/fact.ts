import { z } from 'zod'

/**
 * The envelope of everything that is ever recorded. Facts are appended, never edited.
 * `at` is a hybrid logical clock as text that sorts: `2026-05-04T09:12:31.250Z/0003/<device>`.
 * `subject` names what the fact is about (a field, a sheet, another fact), for look-ups; null where there is none.
 */
export interface Fact {
  readonly id: string
  readonly kind: string
  /** Version of the body's shape; belongs to the kind. */
  readonly v: number
  readonly subject: string | null
  readonly at: string
  readonly by: string
  readonly device: string
  readonly body: FactBody
  readonly data: Uint8Array | null
}

export type Json = string | number | boolean | null | readonly Json[] | { readonly [key: string]: Json }
export type FactBody = { readonly [key: string]: Json }

/** The envelope as it is checked at every door; the body is checked by the shape of its kind. */
export const factEnvelope = z.object({
  id: z.string().min(8).max(128),
  kind: z.string().min(1).max(64),
  v: z.int().min(1),
  subject: z.string().max(512).nullable(),
  at: z.string().regex(/^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d\.\d{3}Z\/[0-9a-f]{4}\/.+$/u),
  by: z.string().max(256),
  device: z.string().min(1).max(128),
})

/** Order of the log: by `at`, ties by id. Both are plain text, compared by code unit. */
export function compareFacts(a: Pick<Fact, 'at' | 'id'>, b: Pick<Fact, 'at' | 'id'>): number {
  if (a.at !== b.at) return a.at < b.at ? -1 : 1
  return a.id < b.id ? -1 : a.id > b.id ? 1 : 0
}

/**
 * Which of two copies of one id a merge keeps: the smaller (`at`, `device`), so that both sides end alike
 * whichever is merged into which.
 */
export function keptCopy<F extends Pick<Fact, 'at' | 'device'>>(a: F, b: F): F {
  if (a.at !== b.at) return a.at < b.at ? a : b
  return a.device <= b.device ? a : b
}

/** Where a row stands: a fact, or a row inside a batch fact. */
export type RowAddress = string

export function addressOf(factId: string, row: number): RowAddress {
  return row < 0 ? factId : `${factId}#${row}`
}

/** The fact id and row (-1: the fact itself) of an address. */
export function parseAddress(address: RowAddress): { readonly fact: string; readonly row: number } {
  const hash = address.lastIndexOf('#')
  if (hash < 0) return { fact: address, row: -1 }
  return { fact: address.slice(0, hash), row: Number(address.slice(hash + 1)) }
}
