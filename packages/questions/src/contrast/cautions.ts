import { type Caution, evidenceShown, rowAddress, type Snapshot } from '@thrum/model'
import { saying } from '@thrum/model/ground'
import { byGravity, type Finding, nuisanceSaying } from '@thrum/survey'
import type { ContrastCase } from './contrast-case.ts'
import type { PairVerdict } from './pair-verdict.ts'

/** A finding as it stands in an answer: with the addresses of the first rows that show it. */
export function cautionOf(snapshot: Snapshot, { code, severity, text, rows, cure }: Finding): Caution {
  return {
    code,
    severity,
    text,
    evidence: rows.slice(0, evidenceShown).map((row) => rowAddress(snapshot.tables.count, row)),
    evidenceRows: rows.length,
    cure,
  }
}

/** What the analysis itself has to warn of: refusals, nuisances that could not enter, adjustments that matter. */
function ofAnalysis(
  asked: ContrastCase,
  found: readonly PairVerdict[],
  refusal: (own: PairVerdict) => Finding['text'] | null,
): readonly Finding[] {
  const rows = Array.from(asked.design.rows)
  const findings: Finding[] = []
  const replicationTold = asked.findings.some(({ code, severity }) => code === 'not-replicated' && severity === 'block')
  for (const own of found) {
    const kind = own.kind.kind.label
    if (own.pair.kind === 'refused') {
      const text = refusal(own)
      const told = replicationTold && (own.pair.refusal.because === 'few-fields' || own.pair.refusal.because === 'few-pairs')
      if (text !== null && !told)
        findings.push({
          code: 'refused',
          severity: 'block',
          text: saying('questions/caution/refused', { kind, why: text }),
          rows,
          cure: null,
        })
      continue
    }
    const { contrast, unadjusted, adjusted, notAdjusted } = own.pair
    if (notAdjusted.length > 0 && own.verdict !== 'design-blocks') {
      findings.push({
        code: 'not-adjusted',
        severity: 'warn',
        text: saying('questions/caution/not-adjusted', { kind, nuisances: notAdjusted.map(({ name }) => nuisanceSaying(name)) }),
        rows,
        cure: saying('questions/caution/not-adjusted/cure'),
      })
    }
    if (
      adjusted.length > 0 &&
      own.verdict !== 'design-blocks' &&
      Math.abs(contrast.estimate - unadjusted.estimate) > Math.log(asked.worth)
    ) {
      findings.push({
        code: 'tangled',
        severity: 'warn',
        text: saying('questions/caution/adjustment-matters', {
          kind,
          adjusted: Math.exp(contrast.estimate),
          unadjusted: Math.exp(unadjusted.estimate),
          nuisances: adjusted.map(nuisanceSaying),
        }),
        rows,
        cure: null,
      })
    }
  }
  return findings
}

/** All cautions of a contrast, the gravest first. */
export function contrastCautions(
  asked: ContrastCase,
  found: readonly PairVerdict[],
  refusal: (own: PairVerdict) => Finding['text'] | null,
  extra: readonly Finding[] = [],
): readonly Caution[] {
  return byGravity([...asked.findings, ...ofAnalysis(asked, found, refusal), ...extra]).map((finding) =>
    cautionOf(asked.snapshot, finding),
  )
}
