import { sha256Hex } from '../ground/index.ts'

/** A hash of a set of fact ids, whatever their order: SHA-256 of the ids in code-unit order, a line each. */
export function digestOfIds(ids: Iterable<string>): string {
  return sha256Hex([...new Set(ids)].sort().join('\n'))
}
