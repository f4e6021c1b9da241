# Fits one table with glmmTMB and, for Poisson, lme4 too: Rscript reference.R TABLE FAMILY CROSSED REPEATS
# Prints one JSON line: log likelihood, coefficients, errors, deviations, and the seconds of each fit after a first untimed one.
suppressPackageStartupMessages({library(glmmTMB); library(lme4); library(jsonlite)})
given <- commandArgs(TRUE)
d <- read.csv(given[1]); d$field <- factor(d$field); d$date <- factor(d$date)
isCrossed <- given[3] == "crossed"; repeats <- as.integer(given[4])
f <- if (isCrossed) count ~ treated + day + offset(log(effort)) + (1 | field) + (1 | date) else
  count ~ treated + day + offset(log(effort)) + (1 | field)
family <- if (given[2] == "nb2") nbinom2 else poisson
tmb <- function() glmmTMB(f, d, family = family)
m <- tmb()
seconds <- sapply(seq_len(repeats), function(i) system.time(tmb())[["elapsed"]])
out <- list(logLikelihood = as.numeric(logLik(m)), coefficients = unname(fixef(m)$cond),
  standardErrors = unname(sqrt(diag(vcov(m)$cond))), deviations = unname(sapply(VarCorr(m)$cond, function(v) attr(v, "stddev"))), glmmTMB = seconds)
if (given[2] == "poisson") {
  lme <- function() suppressMessages(suppressWarnings(glmer(f, d, family = poisson)))
  lme()
  out$lme4 <- sapply(seq_len(repeats), function(i) system.time(lme())[["elapsed"]])
}
cat(toJSON(out, digits = 14, auto_unbox = FALSE))
