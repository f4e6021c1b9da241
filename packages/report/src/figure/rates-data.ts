import type { RatesFigure } from '@thrum/model'
import { saying } from '@thrum/model/ground'
import { threeDigits } from '../print/numbers.ts'
import { type Frame, marksDrawn } from './plate.ts'
import { lineText } from './svg.ts'

/** A point with its names as text, and its level as a number. */
export interface RatePoint {
  readonly field: string
  readonly level: number
  readonly kind: string
  readonly rate: number
  /** What the mark stands for, in words. */
  readonly told: string
}

/** Points by kind, in the order they came. */
export interface RateGroups {
  readonly kinds: readonly { readonly kind: string; readonly points: readonly RatePoint[] }[]
  /** Names of the levels; one empty name where nothing is compared. */
  readonly levels: readonly string[]
  readonly fields: number
  /** True if some field has marks at two levels. */
  readonly isPaired: boolean
}

export function groupRates({ points, unit }: RatesFigure, { say }: Frame): RateGroups {
  const known = points.filter(({ rate }) => Number.isFinite(rate)).slice(0, marksDrawn)
  const levels = [...new Set(known.map(({ level }) => lineText(level)))]
  const unitWords = say(unit)
  const marks = known.map(({ field, level, kind, rate, count }): RatePoint => {
    const names = { field: lineText(field), level: lineText(level), kind: lineText(say.nameOf(kind)) }
    const told = say(
      saying('report/figure/rates/mark', {
        field: names.field,
        level: names.level === '' || names.level === names.field ? 'none' : names.level,
        rate: threeDigits(rate, say.language),
        unit: unitWords,
        count: threeDigits(count, say.language),
      }),
    )
    return { field: names.field, kind: names.kind, rate, told, level: levels.indexOf(names.level) }
  })
  const placed = Map.groupBy(marks, ({ field, kind }) => JSON.stringify([field, kind]))
  return {
    kinds: [...Map.groupBy(marks, ({ kind }) => kind)].map(([kind, own]) => ({ kind, points: own })),
    levels,
    fields: new Set(marks.map(({ field }) => field)).size,
    isPaired: [...placed.values()].some((own) => new Set(own.map(({ level }) => level)).size > 1),
  }
}
