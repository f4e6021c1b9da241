import { type Saying, saying } from '@thrum/model/ground'
import type { CountsRead } from '../rows/counts-read.ts'

/** What a person sees before accepting a sheet: sentences, the most important first. */
export function describeRead(read: CountsRead): readonly Saying[] {
  const { rows, kinds, rowNotes, notes } = read
  return [
    saying('exchange/preview/rows', rows),
    ...kinds.map((kind) => saying('exchange/preview/kind', { ...kind })),
    ...rowNotes.map((note) => note.because),
    ...notes,
  ]
}
