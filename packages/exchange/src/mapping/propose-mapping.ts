import { saying } from '@thrum/model/ground'
import { foldedName } from '../cell/plain-name.ts'
import type { Sheet } from '../read/sheet.ts'
import type { Proposal, ProposalReason } from './proposal.ts'
import type { Role } from './roles.ts'
import type { MappedColumn } from './shape.ts'

const simple: { readonly [header: string]: Role } = {
  field: 'field',
  plot: 'plot',
  date: 'date',
  minutes: 'minutes',
  observer: 'observer',
  note: 'note',
  notes: 'note',
}

/** Proposes how a sheet becomes counts, from its headers and its values, with the reason for each column. */
export function proposeMapping(sheet: Sheet): Proposal {
  const reasons: ProposalReason[] = []
  const columns = sheet.headers.map((header, k): MappedColumn => {
    const role = simple[foldedName(header)]
    const counts = (sheet.columns[k]?.dictionary ?? []).every((cell) => /^\s*\d+\s*$/u.test(cell))
    const as = role ?? (counts ? 'tally' : 'ignore')
    reasons.push({ header, as, because: saying('exchange/propose/header', { header, as }) })
    return as === 'tally' ? { header, as, kind: header } : { header, as }
  })
  return { mapping: { version: 1, shape: 'wide', columns }, reasons, questions: [] }
}
