import type { CheckMade, CheckVerdict } from './check.ts'
import type { ModelChecks } from './check-count-model.ts'
import { type Influence, type LeftOut, lookBeyond, suspectBeyond, turnsFar } from './influence.ts'

/** Something of a fit that wants looking at, with all that one small figure of it needs. */
export type ModelSuspect =
  | { readonly kind: 'check'; readonly verdict: SuspectVerdict; readonly check: CheckMade }
  /** One field, or one visit, on which an asked sum hangs; `beside` are the others, the most influential first. */
  | {
      readonly kind: 'influence'
      readonly verdict: SuspectVerdict
      /** The sum that it changes most; the first where nothing could be fitted without it, null where none was asked. */
      readonly sum: Influence['sums'][number] | null
      /** Rows of the model. */
      readonly rows: number
      readonly leftOut: LeftOut
      readonly beside: readonly LeftOut[]
    }

export type SuspectVerdict = Exclude<CheckVerdict, 'fine'>

/** Lines of a figure of influence. */
const mostBeside = 7

/**
 * What to look at, worst first: suspects before looks, checks by their p before influence by its size.
 *
 * Of what is left out by turns only the most influential of each sort is told, with the others beside it.
 *
 * @param influence null where none was asked for
 */
export function suspectsOf({ checks }: Pick<ModelChecks, 'checks'>, influence: Influence | null): readonly ModelSuspect[] {
  const ofChecks = checks
    .filter((check): check is CheckMade => check.kind === 'checked' && check.verdict !== 'fine')
    .sort((a, b) => a.p - b.p)
    .map((check): ModelSuspect => ({ kind: 'check', verdict: check.verdict === 'suspect' ? 'suspect' : 'look', check }))
  const all = [...ofChecks, ...(influence === null ? [] : influenceSuspects(influence))]
  return [...all.filter(({ verdict }) => verdict === 'suspect'), ...all.filter(({ verdict }) => verdict === 'look')]
}

function influenceSuspects({ leftOut, sums, rows }: Influence): readonly ModelSuspect[] {
  const sorts = [...new Set(leftOut.map(({ by }) => by))]
  return sorts.flatMap((sort): ModelSuspect[] => {
    const [worst, ...others] = leftOut.filter(({ by }) => by === sort)
    if (worst === undefined) return []
    const verdict = verdictOf(worst)
    if (verdict === null) return []
    const name = mostChanged(worst)
    const sum = sums.find((own) => own.name === name) ?? sums[0] ?? null
    return [{ kind: 'influence', verdict, sum, rows, leftOut: worst, beside: others.slice(0, mostBeside) }]
  })
}

function verdictOf(part: LeftOut): SuspectVerdict | null {
  if (part.kind !== 'refitted') return 'suspect'
  const verdicts = part.sums.map((sum) => {
    if (sum.kind === 'aliased' || turnsFar(sum) || Math.abs(sum.change) >= suspectBeyond) return 'suspect'
    return sum.turns || Math.abs(sum.change) >= lookBeyond ? 'look' : null
  })
  if (verdicts.includes('suspect')) return 'suspect'
  return verdicts.includes('look') ? 'look' : null
}

/** Name of the sum that is lost, or changes most. */
function mostChanged(part: LeftOut): string | null {
  if (part.kind !== 'refitted') return null
  const weigh = (sum: (typeof part.sums)[number]): number =>
    sum.kind === 'aliased' ? Number.POSITIVE_INFINITY : Math.abs(sum.change)
  return (
    part.sums.reduce<(typeof part.sums)[number] | null>(
      (most, sum) => (most === null || weigh(sum) > weigh(most) ? sum : most),
      null,
    )?.sum ?? null
  )
}
