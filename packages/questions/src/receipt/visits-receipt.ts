import { type Answer, rowAddress, type Snapshot } from '@thrum/model'
import { allKinds, effortOf, kindSet, shareTallies, talliesOf } from '@thrum/survey'
import { perUnit } from '../contrast/estimates.ts'
import { visitCase, type WhoVisitsOptions } from '../who-visits/groups.ts'
import { type CsvCell, csv, rNumber, rString, rVector } from './csv.ts'
import { rScript } from './r-script.ts'
import type { Receipt } from './receipt.ts'

const functions = `
d <- read("counts.csv")
s <- read("shares.csv")
of <- function(table, group, kind) table[table$group == group & table$kind == kind, ]
# rate over fields: ratio of sums, limits from the scatter between fields on the log scale
rate_of_fields <- function(group, kind, scale) {
  k <- of(d, group, kind)
  Y <- tapply(k$count, k$field, sum); E <- tapply(k$effort, k$field, sum); F <- length(Y)
  R <- sum(Y) / sum(E); se <- sqrt(F / (F - 1) * sum((Y - R * E)^2)) / sum(E)
  scale * c(R, R * exp(c(-1, 1) * qt(0.975, F - 1) * se / R))
}
rate_of_watches <- function(group, kind, scale) {
  k <- of(d, group, kind)
  x <- sum(k$count); scale / sum(k$effort) * c(x, if (x == 0) 0 else qchisq(0.025, 2 * x) / 2, qchisq(0.975, 2 * x + 2) / 2)
}
share_of_fields <- function(group, kind) {
  all <- s[s$group == group, ]
  N <- tapply(all$whole[!duplicated(all$address)], all$field[!duplicated(all$address)], sum)
  k <- of(s, group, kind); A <- tapply(k$count, k$field, sum)[names(N)]
  A <- A[N > 0]; N <- N[N > 0]
  F <- length(N); p <- sum(A) / sum(N); se <- sqrt(F / (F - 1) * sum((A - p * N)^2)) / sum(N)
  c(p, plogis(qlogis(p) + c(-1, 1) * qt(0.975, F - 1) * se / (p * (1 - p))))
}
share_of_watches <- function(group, kind) {
  all <- s[s$group == group, ]; x <- sum(of(s, group, kind)$count); n <- sum(all$whole[!duplicated(all$address)])
  k <- length(unique(all$kind)) + (sum(all$count) < n) # visitors of kinds not asked about are one class more
  B <- qchisq(1 - 0.05 / k, 1)
  c(x / n, (B + 2 * x + c(-1, 1) * sqrt(B * (B + 4 * x * (n - x) / n))) / (2 * (n + B)))
}
`

/** Group of counts that are told together. */
const ungrouped = 'all'

/** Receipt of rates and shares. */
export function visitsReceipt(snapshot: Snapshot, answer: Answer, options: WhoVisitsOptions): Receipt {
  const asked = visitCase(snapshot, options)
  const { scale } = perUnit(asked.measure, asked.selected.unit === 'snapshot')
  const all = shareTallies(snapshot, kindSet(snapshot, allKinds), asked.sightingsOnly)
  const fieldOf = (row: number): string | null => snapshot.fields[snapshot.countField[row] ?? -1]?.name ?? null
  const counts: (readonly CsvCell[])[] = []
  const shares: (readonly CsvCell[])[] = []
  for (const group of asked.groups) {
    for (const { kind, rows } of group.rates) {
      const tallies = talliesOf(snapshot, kind)
      const ofShare = shareTallies(snapshot, kind, asked.sightingsOnly)
      for (const row of rows) {
        const effort = effortOf(snapshot, row, asked.measure, asked.selected.unit)
        const tally = tallies[row] as number
        if (!Number.isNaN(tally) && !Number.isNaN(effort) && fieldOf(row) !== null) {
          counts.push([rowAddress(snapshot.tables.count, row), fieldOf(row), group.name ?? ungrouped, kind.label, tally, effort])
        }
      }
      for (const row of group.shared.rows) {
        shares.push([
          rowAddress(snapshot.tables.count, row),
          fieldOf(row),
          group.name ?? ungrouped,
          kind.label,
          ofShare[row] as number,
          all[row] as number,
        ])
      }
    }
  }
  const checks = asked.groups.flatMap((group) => {
    const start = group.name === null ? '' : `${group.name}/`
    return group.rates.flatMap(({ kind }) => {
      const call = (name: string, more = ''): string =>
        `${name}(${rString(group.name ?? ungrouped)}, ${rString(kind.label)}${more})`
      const said = (id: string) => answer.estimates.find((own) => own.id === id)
      const check = (id: string, fields: string, watches: string): readonly string[] => {
        const told = said(id)
        if (told === undefined) return []
        if (told.counts === 'fields' && !(told.value !== null && told.value > 0)) return []
        return [
          `check(${rString(id)}, ${told.counts === 'fields' ? fields : watches}, ${rVector([rNumber(told.value), rNumber(told.interval.low), rNumber(told.interval.high)])})`,
        ]
      }
      return [
        ...check(`${start}rate/${kind.label}`, call('rate_of_fields', `, ${scale}`), call('rate_of_watches', `, ${scale}`)),
        ...check(`${start}share/${kind.label}`, call('share_of_fields'), call('share_of_watches')),
      ]
    })
  })
  return {
    files: [
      { name: 'counts.csv', text: csv(['address', 'field', 'group', 'kind', 'count', 'effort'], counts) },
      { name: 'shares.csv', text: csv(['address', 'field', 'group', 'kind', 'count', 'whole'], shares) },
      { name: 'receipt.R', text: rScript(answer, [functions, ...checks]) },
    ],
  }
}
