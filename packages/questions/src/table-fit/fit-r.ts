import type { ColumnPart } from '@thrum/stats'
import { rNumber, rString, rVector } from '../receipt/csv.ts'
import type { FitCase, NamedGrouping } from './fit-case.ts'

/** R that the receipt of a fit begins with: how it reads, and how it compares. */
export const fitOpening = (text: readonly string[]): string => `disagreed <- 0
checked <- 0
text <- ${rVector(text.map(rString))}
d <- read.csv("rows.csv", check.names = FALSE, na.strings = character(0), colClasses = setNames(rep("character", length(text)), text))
# within: what a difference may be, as it stands and as a part of the number
check <- function(what, got, said, within, part = 0) {
  ok <- length(got) == length(said) && all(abs(got - said) <= within + part * abs(said))
  cat(sprintf("%-8s %s: %s, Thrum says %s\\n", if (isTRUE(ok)) "agrees" else "DIFFERS", what,
    paste(signif(got, 8), collapse = " "), paste(signif(said, 8), collapse = " ")))
  checked <<- checked + 1
  if (!isTRUE(ok)) disagreed <<- disagreed + 1
}
`

export const fitClosing = `
if (checked == 0) cat("R has nothing at hand that fits this model in the same way: the rows stand beside this file.\\n")
cat(if (disagreed == 0) "The receipt agrees.\\n" else "The receipt DIFFERS.\\n")
quit(status = if (disagreed == 0) 0 else 1)
`

/** What a column of the design is the product of. */
function productOf(parts: readonly ColumnPart[]): string {
  const factors = parts.map(({ column, level }) => {
    const own = `d[[${rString(column)}]]`
    return level === null ? own : `(${own} == ${rString(level)})`
  })
  return factors.length === 0 ? 'rep(1, nrow(d))' : factors.join(' * ')
}

/** Columns that the fit kept, as an R function of a table. */
export function columnsFunction(
  name: string,
  letter: string,
  parts: readonly (readonly ColumnPart[])[],
  kept: readonly number[],
): string {
  const lines = kept.map((j, k) => `  ${letter}${k + 1} = ${productOf(parts[j] ?? [])}`)
  return `${name} <- function(d) cbind(\n${lines.join(',\n')}\n)\n`
}

const groupOf = ({ columns }: NamedGrouping): string => {
  const own = columns.map(({ name }) => `d[[${rString(name)}]]`)
  return own.length === 1 ? `factor(${own[0]})` : `interaction(${own.join(', ')}, drop = TRUE)`
}

/** The table that R fits: response, columns, groupings and offset under short names. */
export function modelTable({ asked, groupings, zeros }: FitCase): string {
  const { response, trials, effort, offset } = asked
  const shifts = [
    ...(effort === null ? [] : [`log(d[[${rString(effort.name)}]])`]),
    ...(offset === null ? [] : [`d[[${rString(offset.name)}]]`]),
  ]
  return [
    `m <- data.frame(y = d[[${rString(response.name)}]], columns(d)${zeros === null ? '' : ', zero_columns(d)'})`,
    `m$shift <- ${shifts.length === 0 ? '0' : shifts.join(' + ')}`,
    ...(trials === null ? [] : [`m$trials <- d[[${rString(trials.name)}]]`]),
    ...groupings.flatMap((own, k) => [
      `m$g${k + 1} <- ${groupOf(own)}`,
      ...(own.slope === undefined ? [] : [`m$s${k + 1} <- d[[${rString(own.slope.name)}]]`]),
    ]),
  ].join('\n')
}

/** What is drawn at random, in R's words. */
export const randomInR = (groupings: readonly NamedGrouping[]): readonly string[] =>
  groupings.map(({ slope }, k) => {
    const [g, s] = [`g${k + 1}`, `s${k + 1}`]
    if (slope === undefined) return `(1 | ${g})`
    return slope.isCorrelated === false ? `(1 | ${g}) + (0 + ${s} | ${g})` : `(1 + ${s} | ${g})`
  })

const families = {
  poisson: 'poisson()',
  nb1: 'nbinom1()',
  nb2: 'nbinom2()',
  binomial: 'binomial()',
  'beta-binomial': 'betabinomial()',
} as const

/** R code that leaves off, saying so, where a package is not there. */
const needs = (name: string): string => `if (!requireNamespace("${name}", quietly = TRUE)) {
  cat("skipped  R has no package ${name}: nothing was compared\\n")
  quit(status = 0)
}
suppressMessages(suppressWarnings(library(${name})))`

/** The fit in R: coefficients `b`, their covariance `V`, log likelihood `ll` (NULL where R tells it from another origin). */
export function fitInR({ asked, groupings, zeros }: FitCase, columns: number, zeroColumns: number): string | null {
  const { family, trials, nodes, reml } = asked
  const x = Array.from({ length: columns }, (_, k) => `x${k + 1}`)
  const z = Array.from({ length: zeroColumns }, (_, k) => `z${k + 1}`)
  const response = trials === null ? 'y' : 'cbind(y, trials - y)'
  const sides = (parts: readonly string[]): string => `${response} ~ ${['0', ...x, ...parts].join(' + ')}`
  if (family === 'gaussian' && groupings.length === 0)
    return `fit <- lm(${sides([])}, data = m, offset = shift)
b <- coef(fit); V <- vcov(fit); ll <- as.numeric(logLik(fit, REML = ${reml ? 'TRUE' : 'FALSE'}))`
  if (family === 'gaussian')
    return `${needs('lme4')}
fit <- suppressWarnings(lmer(${sides(randomInR(groupings))}, data = m, offset = shift, REML = ${reml ? 'TRUE' : 'FALSE'},
  control = lmerControl(check.rankX = "ignore", optimizer = "bobyqa", optCtrl = list(rhoend = 1e-9, maxfun = 1e6))))
b <- fixef(fit); V <- as.matrix(vcov(fit)); ll <- as.numeric(logLik(fit))`
  if (nodes !== null) {
    if (family !== 'poisson' && family !== 'binomial') return null
    // Its log likelihood by quadrature leaves out what hangs on the counts alone.
    return `${needs('lme4')}
fit <- glmer(${sides(randomInR(groupings))}, data = m, offset = shift, family = ${families[family]}, nAGQ = ${nodes},
  control = glmerControl(optimizer = "bobyqa", optCtrl = list(rhoend = 1e-9, maxfun = 1e6)))
b <- fixef(fit); V <- as.matrix(vcov(fit)); ll <- NULL`
  }
  if ((family === 'poisson' || family === 'binomial') && groupings.length === 0 && zeros === null)
    return `fit <- glm(${sides([])}, data = m, offset = shift, family = ${families[family]}, control = glm.control(epsilon = 1e-14, maxit = 200))
b <- coef(fit); V <- vcov(fit); ll <- as.numeric(logLik(fit))`
  const inflated = zeros === null ? '~ 0' : `~ 0 + ${z.join(' + ')}`
  return `${needs('glmmTMB')}
# The search goes on to the last digits, on which it remarks.
fit <- suppressWarnings(glmmTMB(${sides(['offset(shift)', ...randomInR(groupings)])}, ziformula = ${inflated}, family = ${families[family]}, data = m,
  control = glmmTMBControl(optCtrl = list(iter.max = 1e4, eval.max = 1e4, rel.tol = 1e-13))))
b <- fixef(fit)$cond; V <- vcov(fit)$cond; ll <- as.numeric(logLik(fit))${zeros === null ? '' : '\nzb <- fixef(fit)$zi; zV <- vcov(fit)$zi'}`
}

/** Means of the model, worked out anew: every combination of levels, numbers at their mean, averaged at each level of `of`. */
export const meansFunction = `means <- function(of, held, levels, per, back) {
  g <- expand.grid(levels, stringsAsFactors = FALSE)
  for (n in held) g[[n]] <- mean(d[[n]])
  x <- columns(g)
  at <- do.call(paste, c(g[of], sep = "\\r"))
  told <- do.call(paste, c(expand.grid(levels[of], stringsAsFactors = FALSE), sep = "\\r"))
  sapply(told, function(own) back(sum(colMeans(x[at == own, , drop = FALSE]) * b) + log(per)))
}
`

export const rNumbers = (values: readonly number[]): string => rVector(values.map(rNumber))
