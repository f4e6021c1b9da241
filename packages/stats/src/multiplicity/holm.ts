import { InputError, requireCount } from '@thrum/model/ground'

/**
 * Holm's step-down adjustment of p values that answer one declared question.
 *
 * @param p each from 0 to 1, any order; an empty list gives an empty one
 * @returns adjusted p values in the order given
 * @throws InputError ground/input/out-of-range
 * @source Holm S. (1979) Scand. J. Stat. 6, 65-70.
 * @check 0.01, 0.04, 0.03, 0.005 gives 0.03, 0.06, 0.06, 0.02 (R 4.2.2 p.adjust)
 */
export function holm(p: readonly number[]): readonly number[] {
  for (const value of p) {
    if (!(value >= 0 && value <= 1))
      throw new InputError('ground/input/out-of-range', `p holds ${value}; expected numbers from 0 to 1`)
  }
  const ascending = [...p.keys()].sort((a, b) => (p[a] ?? 0) - (p[b] ?? 0))
  const adjusted = new Array<number>(p.length).fill(0)
  let running = 0
  ascending.forEach((place, rank) => {
    running = Math.max(running, Math.min(1, (p.length - rank) * (p[place] ?? 0)))
    adjusted[place] = running
  })
  return adjusted
}

/** Two-sided levels of the intervals that verdicts hang on when m contrasts answer one question. */
export interface VerdictLevels {
  /** 1 - 0.05 / m: decides `shown` and `alike`. */
  readonly deciding: number
  /** 1 - 0.10 / m: decides `leaning`. */
  readonly leaning: number
  /** 1 - 0.001 / m: an early look, before the plan's last visit. */
  readonly early: number
}

/**
 * Interval levels after Bonferroni for m contrasts.
 *
 * @param m number of contrasts asked, at least 1
 * @throws InputError ground/input/out-of-range
 * @source Dunn O.J. (1961) J. Am. Stat. Assoc. 56, 52-64; which level decides what is ours (methods 2.13).
 * @check m = 1 gives 0.95, 0.90, 0.999; m = 2 gives 0.975, 0.95, 0.9995
 */
export function verdictLevels(m: number): VerdictLevels {
  requireCount('m', m, { min: 1 })
  return { deciding: 1 - 0.05 / m, leaning: 1 - 0.1 / m, early: 1 - 0.001 / m }
}
