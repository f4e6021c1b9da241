import { log } from '../../elementary.ts'
import type { Curvature } from './curvature.ts'
import type { Effects, Loads } from './effects.ts'

/** H of intercepts alone: a number for each level. */
function ofIntercepts({ slots: [slot], total }: Effects): Curvature {
  const h = new Float64Array(total)
  const of = slot?.of ?? new Int32Array(0)
  return {
    assemble: (loads, weight) => {
      const scale = (loads[0] as number) ** 2
      h.fill(0)
      for (let i = 0; i < of.length; i++) h[of[i] as number] = (h[of[i] as number] as number) + (weight[i] as number)
      let isPositive = true
      for (let j = 0; j < total; j++) {
        h[j] = 1 + scale * (h[j] as number)
        if (!((h[j] as number) > 0)) isPositive = false
      }
      return isPositive
    },
    solve: (b) => {
      for (let j = 0; j < total; j++) b[j] = (b[j] as number) / (h[j] as number)
    },
    logDeterminant: () => {
      let sum = 0
      for (let j = 0; j < total; j++) sum += log(h[j] as number)
      return sum
    },
    fillAlong: (loads, [into]) => {
      if (into === undefined) return
      const load = loads[0] as number
      for (let i = 0; i < of.length; i++) into[i] = load / (h[of[i] as number] as number)
    },
  }
}

const entry = (load: number | Float64Array, i: number): number => (typeof load === 'number' ? load : (load[i] as number))

/** H of intercepts and slopes: a symmetric 2 by 2 block for each level, kept as three numbers. */
function ofSlopes({ slots }: Effects): Curvature {
  const of = slots[0]?.of ?? new Int32Array(0)
  const levels = slots[0]?.levels ?? 0
  const first = new Float64Array(levels)
  const cross = new Float64Array(levels)
  const second = new Float64Array(levels)
  const determinant = (j: number): number =>
    (first[j] as number) * (second[j] as number) - (cross[j] as number) * (cross[j] as number)
  return {
    assemble: (loads, weight) => {
      const [one, two] = loads as [Loads[number], Loads[number]]
      first.fill(1)
      second.fill(1)
      cross.fill(0)
      for (let i = 0; i < of.length; i++) {
        const j = of[i] as number
        const w = weight[i] as number
        const a = entry(one, i)
        const b = entry(two, i)
        first[j] = (first[j] as number) + w * a * a
        cross[j] = (cross[j] as number) + w * a * b
        second[j] = (second[j] as number) + w * b * b
      }
      for (let j = 0; j < levels; j++) if (!((first[j] as number) > 0 && determinant(j) > 0)) return false
      return true
    },
    solve: (b) => {
      for (let j = 0; j < levels; j++) {
        const d = determinant(j)
        const u = b[j] as number
        const v = b[levels + j] as number
        b[j] = ((second[j] as number) * u - (cross[j] as number) * v) / d
        b[levels + j] = ((first[j] as number) * v - (cross[j] as number) * u) / d
      }
    },
    logDeterminant: () => {
      let sum = 0
      for (let j = 0; j < levels; j++) sum += log(determinant(j))
      return sum
    },
    fillAlong: (loads, [intoOne, intoTwo]) => {
      if (intoOne === undefined || intoTwo === undefined) return
      const [one, two] = loads as [Loads[number], Loads[number]]
      for (let i = 0; i < of.length; i++) {
        const j = of[i] as number
        const d = determinant(j)
        const a = entry(one, i)
        const b = entry(two, i)
        intoOne[i] = ((second[j] as number) * a - (cross[j] as number) * b) / d
        intoTwo[i] = ((first[j] as number) * b - (cross[j] as number) * a) / d
      }
    },
  }
}

export const oneGroupingCurvature = (effects: Effects): Curvature =>
  effects.slots.length <= 1 ? ofIntercepts(effects) : ofSlopes(effects)
