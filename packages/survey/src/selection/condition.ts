import { dayNumber, type Snapshot } from '@thrum/model'
import { ThrumError } from '@thrum/model/ground'
import { resolveFactor } from '../factor/resolve-factor.ts'

/** One condition on counts: `crop=cherry`, `season!=2031`, `date>=2031-07-20`, `stage<=67`; `a|b` for either of two. */
export interface Condition {
  readonly name: string
  readonly sign: '=' | '!=' | '>=' | '<='
  readonly values: readonly string[]
}

/** @throws ThrumError survey/condition/unreadable */
export function parseCondition(text: string): Condition {
  const found = /^(?<name>[^=!<>]+?)\s*(?<sign>=|!=|>=|<=)\s*(?<rest>.+)$/u.exec(text.trim())?.groups
  if (found === undefined) throw new ThrumError('survey/condition/unreadable', { found: text })
  const { name, sign, rest } = found as { name: string; sign: Condition['sign']; rest: string }
  return { name: name.trim(), sign, values: rest.split('|').map((value) => value.trim()) }
}

const calendarWord = /^\d{4}-\d\d(?:-\d\d)?$/u
const calendarLimit = /^\d{4}(?:-\d\d){0,2}$/u

/** A word as a number; dates and months as days, cut to the limit's own precision: `date<=2031-07` holds all of July. */
function asNumber(word: string, limit: string): number {
  if (!calendarWord.test(word)) return Number.parseFloat(word)
  const cut = calendarLimit.test(limit) ? word.slice(0, limit.length) : word
  if (cut.length === 4) return Number(cut)
  return dayNumber(cut.length === 7 ? `${cut}-01` : cut)
}

/**
 * For each level of the factor whether the condition holds; -1 (not recorded) never fulfils one.
 *
 * @throws ThrumError survey/condition/no-such-level for `=` and `!=` with a level that is not there, so that a typing slip
 *   does not silently select nothing
 */
export function rowsWhere(snapshot: Snapshot, condition: Condition): (row: number) => boolean {
  const factor = resolveFactor(snapshot, condition.name)
  const holds = factor.levels.map((level) => {
    if (condition.sign === '=') return condition.values.includes(level)
    if (condition.sign === '!=') return !condition.values.includes(level)
    const word = condition.values[0] ?? ''
    const limit = asNumber(word, word)
    return condition.sign === '>=' ? asNumber(level, word) >= limit : asNumber(level, word) <= limit
  })
  if (condition.sign === '=' || condition.sign === '!=') {
    const missing = condition.values.find((value) => !factor.levels.includes(value))
    if (missing !== undefined) {
      throw new ThrumError('survey/condition/no-such-level', {
        name: condition.name,
        level: missing,
        known: factor.levels.slice(0, 30).join(', '),
      })
    }
  } else if (Number.isNaN(asNumber(condition.values[0] ?? '', ''))) {
    throw new ThrumError('survey/condition/not-ordered', { name: condition.name, found: condition.values[0] ?? '' })
  }
  return (row) => holds[factor.levelOf[row] ?? -1] ?? false
}
