import { type Saying, saying } from '@thrum/model/ground'
import type { Check, CheckMade, CheckSubject, LeftOut, ModelChecks, ModelSuspect, Shown } from '@thrum/stats'
import { lineLabel } from './line-label.ts'

const own = (id: string, values: Saying['values'] = {}): Saying => saying(`questions/model-checks/${id}`, values)

/** Name of a check. */
export function checkName(check: CheckSubject): Saying {
  return own(`check/${check.kind}`, check.kind === 'covariate' ? { name: check.name } : {})
}

/** One line for a check, whatever came of it. */
export function checkSaying(check: Check): Saying {
  if (check.kind === 'not-checked')
    return own('not-checked', { name: checkName(check.check), because: own(`because/${check.because}`) })
  const { p, holm, verdict } = check
  return own('checked', { verdict: own(`verdict/${verdict}`), found: foundSaying(check), p, holm })
}

/** How many checks were made, and what that is worth. */
export function checksSaying({ checks, looked, refits, kind }: ModelChecks): Saying {
  const struck = checks.filter((check) => check.kind === 'checked' && check.verdict !== 'fine').length
  return own('summary', {
    looked,
    struck,
    fitted: refits.fitted,
    failed: refits.failed,
    stopped: kind === 'stopped' ? 'yes' : 'no',
  })
}

/** What a suspect is, in one sentence that can stand above its figure. */
export function suspectSaying(suspect: ModelSuspect): Saying {
  return suspect.kind === 'check' ? foundSaying(suspect.check) : withoutSaying(suspect.leftOut, suspect.sum?.name ?? null)
}

/** What a check found beside what is expected of the model. */
function foundSaying({ check, statistic, expected, side, verdict, lines }: CheckMade): Saying {
  const numbers = { statistic, low: expected.low, high: expected.high }
  switch (check.kind) {
    case 'covariate':
    case 'time': {
      const worst = worstLine(lines)
      if (worst === null) return own('found/along', { name: checkName(check), ...numbers })
      const { found, expected: mean, least, most } = worst
      return own('found/along-at', {
        name: checkName(check),
        where: lineLabel(check, worst.label),
        found,
        mean,
        least,
        most,
        ...numbers,
      })
    }
    case 'zeros':
      return own('found/zeros', { ...numbers, named: verdict === 'suspect' && side === 'above' ? 'yes' : 'no' })
    case 'dispersion':
    case 'autocorrelation':
      return own(`found/${check.kind}`, { ...numbers, side: verdict === 'fine' ? 'none' : side })
    case 'uniformity':
    case 'outliers':
      return own(`found/${check.kind}`, numbers)
  }
}

/** The line furthest from what is expected, in widths of what drawn sets show. */
function worstLine(lines: readonly Shown[]): Shown | null {
  const away = ({ found, expected, least, most }: Shown): number => Math.abs(found - expected) / Math.max(most - least, 1e-9)
  return lines.reduce<Shown | null>((worst, line) => (worst === null || away(line) > away(worst) ? line : worst), null)
}

function withoutSaying(part: LeftOut, name: string | null): Saying {
  const values = { by: part.by, level: part.level, rows: part.rows }
  if (part.kind === 'separated') return own('without/separated', values)
  if (part.kind === 'not-fitted') return own('without/not-fitted', values)
  const sum = part.sums.find((one) => one.sum === name)
  if (sum === undefined || sum.kind === 'aliased') return own('without/aliased', { ...values, sum: name ?? '' })
  const { ratio, change, turns, lower, upper } = sum
  const holds = lower <= 0 && upper >= 0 ? 'gains' : 'loses'
  return own('without/refitted', { ...values, sum: sum.sum, ratio, change: Math.abs(change), turns: turns ? holds : 'no' })
}
