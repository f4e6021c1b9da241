// The log likelihood of a count model by the Laplace approximation, worked out apart from the package: densities from their
// definitions, modes by Newton's method on numeric derivatives of nothing but those densities' closed forms, dense matrices, sums that
// carry their rounding with them. Slow, and held to more digits than the search needs.
import type { CountModel, FittedCountModel } from '@thrum/stats'

/** A sum that carries what was rounded away (Neumaier A., 1974, Z. Angew. Math. Mech. 54, 39-51; from memory). */
class CarefulSum {
  private sum = 0
  private rest = 0
  add(value: number): void {
    const next = this.sum + value
    this.rest += Math.abs(this.sum) >= Math.abs(value) ? this.sum - next + value : value - next + this.sum
    this.sum = next
  }
  get value(): number {
    return this.sum + this.rest
  }
}

/** log p, its slope and minus its curvature in eta, of one row. */
type Row = (eta: number) => { readonly log: number; readonly slope: number; readonly weight: number }

function logFactorial(y: number): number {
  const sum = new CarefulSum()
  for (let k = 2; k <= y; k++) sum.add(Math.log(k))
  return sum.value
}

/** sum over k < y of log(x + k a), and its first two derivatives in x. */
function rising(x: number, a: number, y: number): { readonly log: number; readonly one: number; readonly two: number } {
  const log = new CarefulSum()
  let one = 0
  let two = 0
  for (let k = 0; k < y; k++) {
    log.add(Math.log(x + k * a))
    one += 1 / (x + k * a)
    two -= 1 / (x + k * a) ** 2
  }
  return { log: log.value, one, two }
}

/** alpha = 1 / theta of NB2, phi of NB1, 1 / (a + b) of the beta-binomial. */
function rowOf(family: CountModel['family'], y: number, n: number, dispersion: number): Row {
  const a = dispersion
  if (family === 'poisson' || ((family === 'nb1' || family === 'nb2') && a === 0)) {
    return (eta) => {
      const mu = Math.exp(eta)
      return { log: y * eta - mu - logFactorial(y), slope: y - mu, weight: mu }
    }
  }
  if (family === 'nb2') {
    const upto = rising(1, a, y).log
    return (eta) => {
      const mu = Math.exp(eta)
      const log = upto + y * eta - (y + 1 / a) * Math.log1p(a * mu) - logFactorial(y)
      return { log, slope: (y - mu) / (1 + a * mu), weight: (mu * (1 + a * y)) / (1 + a * mu) ** 2 }
    }
  }
  if (family === 'nb1') {
    return (eta) => {
      const mu = Math.exp(eta)
      const { log, one, two } = rising(mu, a, y)
      const rate = Math.log1p(a) / a
      const first = one - rate
      return {
        log: log - y * Math.log1p(a) - mu * rate - logFactorial(y),
        slope: mu * first,
        weight: -mu * first - mu * mu * two,
      }
    }
  }
  const ways = logFactorial(n) - logFactorial(y) - logFactorial(n - y)
  return (eta) => {
    const p = 1 / (1 + Math.exp(-eta))
    const q = 1 / (1 + Math.exp(eta))
    const seen = rising(p, a, y)
    const missed = rising(q, a, n - y)
    const first = seen.one - missed.one
    const second = seen.two + missed.two
    const turn = p * q
    return {
      log: ways + seen.log + missed.log - rising(1, a, n).log,
      slope: first * turn,
      weight: -(second * turn * turn + first * turn * (q - p)),
    }
  }
}

/** The row beside a chance pi of a zero of another origin. */
function inflated(row: Row, y: number, pi: number): Row {
  return (eta) => {
    const { log, slope, weight } = row(eta)
    if (y > 0) return { log: log + Math.log1p(-pi), slope, weight }
    const own = (1 - pi) * Math.exp(log)
    const r = own / (pi + own)
    return { log: Math.log(pi + own), slope: r * slope, weight: r * weight - r * (1 - r) * slope * slope }
  }
}

/** Solves A x = b by elimination with pivots, and gives log |det A|; A and b are written over. */
function eliminate(a: number[][], b: number[]): number {
  const q = b.length
  let logDeterminant = 0
  for (let k = 0; k < q; k++) {
    let pivot = k
    for (let i = k + 1; i < q; i++) if (Math.abs(a[i]?.[k] ?? 0) > Math.abs(a[pivot]?.[k] ?? 0)) pivot = i
    const row = a[pivot] as number[]
    a[pivot] = a[k] as number[]
    a[k] = row
    const right = b[pivot] as number
    b[pivot] = b[k] as number
    b[k] = right
    logDeterminant += Math.log(Math.abs(row[k] as number))
    for (let i = k + 1; i < q; i++) {
      const own = a[i] as number[]
      const part = (own[k] as number) / (row[k] as number)
      if (part === 0) continue
      for (let j = k; j < q; j++) own[j] = (own[j] as number) - part * (row[j] as number)
      b[i] = (b[i] as number) - part * right
    }
  }
  for (let k = q - 1; k >= 0; k--) {
    let sum = b[k] as number
    for (let j = k + 1; j < q; j++) sum -= (a[k]?.[j] as number) * (b[j] as number)
    b[k] = sum / (a[k]?.[k] as number)
  }
  return logDeterminant
}

/** Loads of each row on standard normal effects: place and load. */
function loadsOf(
  model: CountModel,
  fit: FittedCountModel,
): { readonly rows: readonly (readonly [number, number])[][]; readonly total: number } {
  const n = model.counts.length
  const rows: [number, number][][] = Array.from({ length: n }, () => [])
  let total = 0
  for (const [k, { of, levels, slope }] of (model.groupings ?? []).entries()) {
    const group = fit.groups[k]
    const one = group?.deviation ?? 0
    const correlation = group?.slope?.correlation ?? 0
    const size = group?.slope?.deviation ?? 0
    for (let i = 0; i < n; i++) {
      const j = of[i] as number
      const x = slope?.values[i] ?? 0
      rows[i]?.push([total + j, one + x * size * correlation])
      if (slope !== undefined)
        rows[i]?.push([total + levels + j, x * size * Math.sqrt(Math.max(0, 1 - correlation * correlation))])
    }
    total += slope === undefined ? levels : 2 * levels
  }
  return { rows, total }
}

const dispersionOf = ({ family }: CountModel, { dispersion }: FittedCountModel): number => {
  if (dispersion === null) return 0
  if (family === 'nb1') return dispersion
  return dispersion === Number.POSITIVE_INFINITY ? 0 : 1 / dispersion
}

/** log of the marginal likelihood by Laplace, at the parameters of a fit as it tells them. */
export function carefulLogLikelihood(model: CountModel, fit: FittedCountModel): number {
  const { design, counts } = model
  const n = counts.length
  const dispersion = dispersionOf(model, fit)
  const { rows: loads, total } = loadsOf(model, fit)
  const rows = Array.from({ length: n }, (_, i): Row => {
    const row = rowOf(model.family, counts[i] as number, model.trials?.[i] ?? 1, dispersion)
    if (model.zeros === undefined || fit.zeros === null) return row
    let zeta = 0
    for (let j = 0; j < model.zeros.columns; j++)
      zeta += (model.zeros.values[i * model.zeros.columns + j] as number) * (fit.zeros.coefficients[j] as number)
    return inflated(row, counts[i] as number, 1 / (1 + Math.exp(-zeta)))
  })
  const fixed = Array.from({ length: n }, (_, i) => {
    const sum = new CarefulSum()
    sum.add(model.offset?.[i] ?? 0)
    for (let j = 0; j < design.columns; j++)
      sum.add((design.values[i * design.columns + j] as number) * (fit.coefficients[j] as number))
    return sum.value
  })
  const etaAt = (v: readonly number[], i: number): number =>
    (loads[i] ?? []).reduce((sum, [at, load]) => sum + load * (v[at] as number), fixed[i] as number)
  const heightAt = (v: readonly number[]): number => {
    const sum = new CarefulSum()
    for (let i = 0; i < n; i++) sum.add((rows[i] as Row)(etaAt(v, i)).log)
    for (const own of v) sum.add((-own * own) / 2)
    return sum.value
  }
  let v: number[] = Array.from({ length: total }, () => 0)
  let logDeterminant = 0
  for (let round = 0; round < 200; round++) {
    const h = v.map((_, a) => v.map((__, b) => Number(a === b)))
    const score = v.map((own) => -own)
    for (let i = 0; i < n; i++) {
      const { slope, weight } = (rows[i] as Row)(etaAt(v, i))
      for (const [a, one] of loads[i] ?? []) {
        score[a] = (score[a] as number) + one * slope
        for (const [b, other] of loads[i] ?? []) {
          const row = h[a] as number[]
          row[b] = (row[b] as number) + weight * one * other
        }
      }
    }
    logDeterminant = eliminate(h, score)
    const before = heightAt(v)
    let part = 1
    let next = v
    for (; part > 1e-6; part /= 2) {
      next = v.map((own, a) => own + part * (score[a] as number))
      if (heightAt(next) >= before - 1e-12 * Math.abs(before)) break
    }
    v = next
    if (part * Math.max(0, ...score.map(Math.abs)) < 1e-10) break
  }
  return heightAt(v) - logDeterminant / 2
}
