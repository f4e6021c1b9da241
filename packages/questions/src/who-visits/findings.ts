import { saying } from '@thrum/model/ground'
import { dispersionWarned, type Finding } from '@thrum/survey'
import { leftOutOfWindow } from '../contrast/outside-window.ts'
import type { VisitCase } from './groups.ts'

/** Watches that clump make exact intervals too narrow; only where those stand in a headline it is a warning. */
export function clumped(asked: VisitCase): readonly Finding[] {
  const found = asked.groups.flatMap(({ rates }) =>
    rates.flatMap((own) =>
      (own.rate?.dispersion ?? 0) > dispersionWarned ? [{ own, dispersion: own.rate?.dispersion ?? 0 }] : [],
    ),
  )
  const told = found.filter(({ own }) => own.rate?.fields.kind === 'too-few-units')
  return told.map(({ own, dispersion }) => ({
    code: 'counts-clump',
    severity: 'warn' as const,
    text: saying('questions/caution/counts-clump', { kind: own.kind.label, dispersion }),
    rows: own.rows,
    cure: saying('questions/caution/counts-clump/cure'),
  }))
}

/** Counts made when the insects could not fly. */
export function outside(asked: VisitCase): readonly Finding[] {
  return leftOutOfWindow([...new Set(asked.groups.flatMap(({ rates }) => rates.flatMap((own) => own.outside)))])
}
