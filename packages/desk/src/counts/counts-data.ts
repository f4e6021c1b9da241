import { useQueries } from '@tanstack/react-query'
import type { CountsPage } from '@thrum/server/api'
import { get } from '../door/request.ts'
import { type Filter, filterText } from './filters.ts'

/** Rows that are fetched at once. */
export const pageRows = 200

export interface CountsAsked {
  readonly digest: string
  readonly filters: readonly Filter[]
  /** Only these rows, by their address. */
  readonly rows: readonly string[] | null
}

function pathOf({ filters, rows }: CountsAsked, offset: number): string {
  const search = new URLSearchParams({ offset: String(offset), limit: String(pageRows) })
  for (const filter of filters) search.append('filter', filterText(filter))
  for (const row of rows ?? []) search.append('addresses', row)
  return `counts?${search}`
}

/** The stretches of the grid between two rows; those that are not there yet are undefined. */
export function useCounts(asked: CountsAsked | null, from: number, to: number) {
  const first = Math.floor(from / pageRows)
  const last = Math.max(first, Math.floor(Math.max(from, to - 1) / pageRows))
  const pages = asked === null ? [] : Array.from({ length: last - first + 1 }, (_, k) => (first + k) * pageRows)
  return useQueries({
    queries: pages.map((offset) => ({
      queryKey: ['counts', asked?.digest, asked?.filters, asked?.rows, offset],
      queryFn: () => get<CountsPage>(pathOf(asked as CountsAsked, offset)),
      staleTime: Number.POSITIVE_INFINITY,
    })),
  })
}
