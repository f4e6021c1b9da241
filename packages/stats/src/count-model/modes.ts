import type { Curvature } from './effects/curvature.ts'
import type { Effects, Loads, Slot } from './effects/effects.ts'
import type { RowModel } from './row-model.ts'

/** A Newton step of the modes is held to this much of the linear predictor. */
const longestStep = 3
/** The modes are found when a step was below this: what is left is of the order of its square. */
const smallestStep = 3e-6
/** Where weights are held up the way to them is slower, and goes on until a step is below this. */
const smallestHeldStep = 1e-9
const mostSteps = 100
const mostHalvings = 30
/** Part of the expected weight that a row without curvature of its own keeps while the modes are searched. */
const leastWeight = 1e-6
/** A step that overshoots by more than this part of what it promised is halved. */
const overshoot = 0.9

export interface ModeProblem {
  readonly effects: Effects
  readonly curvature: Curvature
  /** Parameters are taken in by the caller before each search. */
  readonly rowModel: RowModel
}

export interface ModeFinder {
  /** The modes; the next search begins here. */
  readonly mode: Float64Array
  readonly eta: Float64Array
  /** Newton's way to the modes. @returns f = sum of log p - v'v / 2 there, rows filled as a whole; -Infinity where there is none */
  find(): number
}

export function modeFinder({ effects, curvature, rowModel }: ModeProblem): ModeFinder {
  const { slots, total: q } = effects
  const { rows, fixed, loads, isConcave } = rowModel
  const n = fixed.length
  const R = slots.length
  const eta = new Float64Array(n)
  const mode = new Float64Array(q)
  const score = new Float64Array(q)
  const step = new Float64Array(q)
  const trial = new Float64Array(q)
  const held = new Float64Array(isConcave ? 0 : n)

  /** eta = fixed + L v. */
  function predict(v: Float64Array): void {
    eta.set(fixed)
    for (let s = 0; s < R; s++) {
      const { of, start } = slots[s] as Slot
      const load = loads[s] as Loads[number]
      if (typeof load === 'number') {
        for (let i = 0; i < n; i++) eta[i] = (eta[i] as number) + load * (v[start + (of[i] as number)] as number)
        continue
      }
      for (let i = 0; i < n; i++) eta[i] = (eta[i] as number) + (load[i] as number) * (v[start + (of[i] as number)] as number)
    }
  }

  /** L'd - v. */
  function fillScore(v: Float64Array): void {
    for (let j = 0; j < q; j++) score[j] = -(v[j] as number)
    for (let s = 0; s < R; s++) {
      const { of, start } = slots[s] as Slot
      const load = loads[s] as Loads[number]
      for (let i = 0; i < n; i++) {
        const at = start + (of[i] as number)
        score[at] = (score[at] as number) + (typeof load === 'number' ? load : (load[i] as number)) * (rows.slope[i] as number)
      }
    }
  }

  function height(v: Float64Array): number {
    let sum = 0
    for (let i = 0; i < n; i++) sum += rows.logDensity[i] as number
    let square = 0
    for (let j = 0; j < q; j++) square += (v[j] as number) * (v[j] as number)
    return sum - square / 2
  }

  function dot(a: Float64Array, b: Float64Array): number {
    let sum = 0
    for (let j = 0; j < q; j++) sum += (a[j] as number) * (b[j] as number)
    return sum
  }

  /** Largest change that a step makes to a linear predictor, and largest entry of the step. */
  function partOfStep(): number {
    let longest = 0
    for (let s = 0; s < R; s++) {
      const { start, levels } = slots[s] as Slot
      const load = loads[s] as Loads[number]
      let size = 1
      if (typeof load === 'number') size = Math.abs(load)
      else for (let i = 0; i < n; i++) size = Math.max(size, Math.abs(load[i] as number))
      size = Math.max(size, 1e-3)
      for (let j = 0; j < levels; j++) longest = Math.max(longest, Math.abs(step[start + j] as number) * size)
    }
    return longest > longestStep ? longestStep / longest : 1
  }

  function largestOf(values: Float64Array): number {
    let largest = 0
    for (let j = 0; j < q; j++) largest = Math.max(largest, Math.abs(values[j] as number))
    return largest
  }

  function moveTo(part: number): void {
    for (let j = 0; j < q; j++) trial[j] = (mode[j] as number) + part * (step[j] as number)
    predict(trial)
  }

  /**
   * Where log p is concave a step is good unless it overshoots: the slope along it, at its end, is not far below zero. No log density
   * is needed on the way.
   */
  function findConcave(): number {
    predict(mode)
    rowModel.evaluate(eta, 'step')
    fillScore(mode)
    for (let round = 0; round < mostSteps; round++) {
      if (!curvature.assemble(loads, rows.weight)) return Number.NEGATIVE_INFINITY
      step.set(score)
      curvature.solve(step)
      const promised = dot(step, score)
      if (!Number.isFinite(promised)) return Number.NEGATIVE_INFINITY
      let part = partOfStep()
      if (part === 1 && largestOf(step) < smallestStep) {
        moveTo(1)
        mode.set(trial)
        rowModel.evaluate(eta, 'whole')
        return height(mode)
      }
      for (let halving = 0; halving < mostHalvings; halving++, part /= 2) {
        moveTo(part)
        rowModel.evaluate(eta, 'step')
        fillScore(trial)
        if (dot(step, score) >= -overshoot * promised) break
      }
      mode.set(trial)
    }
    return Number.NEGATIVE_INFINITY
  }

  /** Weights for a step: a row whose own curvature is lost keeps a little, so that the step leads upwards. */
  function heldWeights(): Float64Array {
    for (let i = 0; i < n; i++) held[i] = Math.max(rows.weight[i] as number, leastWeight)
    return held
  }

  /** Where log p need not be concave every step must lead upwards. */
  function findUpwards(): number {
    predict(mode)
    rowModel.evaluate(eta, 'whole')
    let value = height(mode)
    for (let round = 0; round < mostSteps; round++) {
      if (!Number.isFinite(value)) return Number.NEGATIVE_INFINITY
      if (!curvature.assemble(loads, heldWeights())) return Number.NEGATIVE_INFINITY
      fillScore(mode)
      step.set(score)
      curvature.solve(step)
      let part = partOfStep()
      let next = Number.NEGATIVE_INFINITY
      for (let halving = 0; halving < mostHalvings; halving++, part /= 2) {
        moveTo(part)
        rowModel.evaluate(eta, 'whole')
        next = height(trial)
        if (next >= value - 1e-12 * Math.abs(value)) break
      }
      mode.set(trial)
      value = next
      if (part * largestOf(step) < smallestHeldStep) return value
    }
    return Number.NEGATIVE_INFINITY
  }

  function find(): number {
    if (q > 0) return isConcave ? findConcave() : findUpwards()
    eta.set(fixed)
    rowModel.evaluate(eta, 'whole')
    return height(mode)
  }

  return { mode, eta, find }
}
