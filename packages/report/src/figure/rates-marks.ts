import { threeDigits } from '../print/numbers.ts'
import { type Axis, layAxis, scaleOfRates, upright } from './axis.ts'
import type { RatePoint } from './rates-data.ts'
import { stepAside } from './spread.ts'

/** One kind: a column for each level, the rate upwards. */
export interface Panel {
  readonly kind: string
  readonly points: readonly RatePoint[]
  readonly levels: readonly string[]
  readonly unit: string
  /** Most room of the name of a field beside its mark [px]; 0: fields are not named. */
  readonly names: number
  /** From the lowest to the highest tick [px]. */
  readonly plotHeight: number
  /** In which its numbers are written. */
  readonly language: string
}

export const radius = 4
/** Room above the plot, for the kind and the unit [px]. */
export const headRoom = 48
/** Room that a mark takes, its edge with it [px]: the widest shape is a diamond. */
const markRoom = radius * 2.5
/** Marks may step so far aside of their column [px]; beyond it they cover each other. */
const furthest = 40

/** A mark: how high it stands, and how far aside of its column, so that none hides another [px]. */
export interface Mark {
  readonly point: RatePoint
  readonly y: number
  readonly aside: number
}

export interface Marks {
  readonly axis: Axis
  readonly marks: readonly Mark[]
  /** How far the marks of each level reach left and right of its column [px]. */
  readonly reach: readonly { readonly left: number; readonly right: number }[]
}

/** Marks of a panel on its axis. The same panel gives the same marks. */
export function placeMarks({ points, levels, plotHeight, language }: Panel): Marks {
  const { finest, ...ends } = scaleOfRates(points.map(({ rate }) => rate))
  const axis = layAxis(
    { ...ends, from: headRoom + plotHeight, to: headRoom },
    { room: upright, finest, say: (value) => threeDigits(value, language) },
  )
  const columns = levels.map((_, level) => {
    const own = points.filter((point) => point.level === level)
    const ys = own.map(({ rate }) => axis.at(rate))
    const aside = stepAside(ys, markRoom, furthest)
    return own.map((point, k): Mark => ({ point, y: ys[k] ?? 0, aside: aside[k] ?? 0 }))
  })
  const reach = columns.map((own) => ({
    left: own.reduce((most, { aside }) => Math.max(most, -aside), 0) + markRoom / 2,
    right: own.reduce((most, { aside }) => Math.max(most, aside), 0) + markRoom / 2,
  }))
  return { axis, marks: columns.flat(), reach }
}

/** Marks of one field in the order of their levels. */
export function byField(marks: readonly Mark[]): readonly (readonly Mark[])[] {
  return [...Map.groupBy(marks, ({ point }) => point.field).values()].map((own) =>
    own.toSorted((a, b) => a.point.level - b.point.level),
  )
}
