import { type Answer, rowAddress, type Snapshot } from '@thrum/model'
import { talliesOf } from '@thrum/survey'
import { kindsCase } from '../what-differs/kind-pairs.ts'
import type { WhatDiffersOptions } from '../what-differs/run.ts'

import { type CsvCell, csv, rNumber, rString, rVector } from './csv.ts'
import { rScript } from './r-script.ts'
import type { Receipt } from './receipt.ts'

const functions = `
d <- read("counts.csv")
# share of one kind in both, limits from the scatter between fields on the logit scale; then odds
odds_of_fields <- function(kind, confidence) {
  k <- d[d$pair == kind, ]
  A <- tapply(k$count, k$field, sum); N <- A + tapply(k$reference, k$field, sum)
  A <- A[N > 0]; N <- N[N > 0]
  F <- length(N); p <- sum(A) / sum(N); se <- sqrt(F / (F - 1) * sum((A - p * N)^2)) / sum(N)
  l <- plogis(qlogis(p) + c(-1, 1) * qt(1 - (1 - confidence) / 2, F - 1) * se / (p * (1 - p)))
  c(p, l) / (1 - c(p, l))
}
odds_of_watches <- function(kind) {
  k <- d[d$pair == kind, ]
  x <- sum(k$count); n <- x + sum(k$reference); l <- binom.test(x, n)$conf.int
  c(x / (n - x), l / (1 - l))
}
`

/** Receipt of kind against kind in the same watches. */
export function kindsReceipt(snapshot: Snapshot, answer: Answer, options: WhatDiffersOptions): Receipt {
  const { reference, pairs } = kindsCase(snapshot, options)
  const referenceTallies = talliesOf(snapshot, reference)
  const rows = pairs.flatMap((pair) => {
    const tallies = talliesOf(snapshot, pair.other)
    return pair.fields.flatMap(({ name, rows: own }) =>
      own.map((row): readonly CsvCell[] => [
        rowAddress(snapshot.tables.count, row),
        name,
        pair.other.label,
        tallies[row] as number,
        referenceTallies[row] as number,
      ]),
    )
  })
  const checks = pairs.flatMap((pair) => {
    const told = answer.estimates.find(({ id }) => id === `relative/${pair.other.label}/${reference.label}`)
    if (told === undefined || pair.count === null) return []
    const said = rVector([rNumber(told.value), rNumber(told.interval.low), rNumber(told.interval.high)])
    const kind = rString(pair.other.label)
    return [
      `check(${rString(told.id)}, ${pair.count.fields === null ? `odds_of_watches(${kind})` : `odds_of_fields(${kind}, 0.95)`}, ${said})`,
    ]
  })
  return {
    files: [
      { name: 'counts.csv', text: csv(['address', 'field', 'pair', 'count', 'reference'], rows) },
      { name: 'receipt.R', text: rScript(answer, [functions, ...checks]) },
    ],
  }
}
