# Makes expected.json from the tables beside it: Rscript make.R, in this folder. R 4.2.2, glmmTMB 1.1.5, lme4 1.1-31, MASS 7.3-58.2.
suppressPackageStartupMessages({library(glmmTMB); library(lme4); library(MASS); library(numDeriv); library(jsonlite)})

# Counts drawn once, and kept: 24 fields in 6 regions, each visited on the same 10 dates, by 5 observers in turn.
if (!file.exists("field-visits.csv")) {
  set.seed(20260711)
  v <- expand.grid(visit = 1:10, field = 1:24)
  v$region <- (v$field - 1) %/% 4 + 1
  v$observer <- (v$field * 3 + v$visit * 2 + (v$field %/% 5)) %% 5 + 1
  v$treated <- v$field %% 2
  v$minutes <- c(10, 15, 20)[(v$field + v$visit) %% 3 + 1]
  v$warmth <- round(rnorm(10, 20, 3)[v$visit] + rnorm(240, 0, 1.5), 1)
  field <- 0.5 * rnorm(24); slope <- 0.5 * field * 0.12 / 0.5 + sqrt(0.75) * 0.12 * rnorm(24); date <- 0.3 * rnorm(10)
  eta <- log(v$minutes / 10) + 0.8 + 0.4 * v$treated + (0.05 + slope[v$field]) * (v$warmth - 20) + field[v$field] + date[v$visit] +
    0.3 * rnorm(6)[v$region] + 0.25 * rnorm(5)[v$observer]
  v$plain <- rpois(240, exp(eta)); v$clumped <- rnbinom(240, mu = exp(eta), size = 1.8)
  write.csv(v[c("field", "region", "visit", "observer", "treated", "minutes", "warmth", "plain", "clumped")], "field-visits.csv", row.names = FALSE, quote = FALSE)
}

read <- function(name) read.csv(paste0(name, ".csv"))
se_of <- function(est, se) Map(function(e, s) c(e, s), as.list(est), as.list(se))
small <- 1e-3 # a standard deviation below this stands for none

# A maximum of glmmTMB carried on by Newton steps on its own function and gradient, and the Hessian there. What went to the edge (a
# variance of none, whose logarithm runs off) stays where it stopped, and is left out of the Hessian.
polished <- function(m) {
  f <- m$obj$fn; g <- function(x) as.numeric(m$obj$gr(x)); par <- m$fit$par
  gone <- names(par) == "theta" & exp(par) < small & seq_along(par) %in% which(names(par) == "theta")[seq_len(n_sd(m))]
  free <- which(!gone)
  gf <- function(x) { p <- par; p[free] <- x; g(p)[free] }
  x <- par[free]
  # Central differences of an exact gradient: their error is some 1e-8 of the whole.
  curvature <- function(x) { H <- sapply(seq_along(x), function(j) { d <- replace(numeric(length(x)), j, 1e-4); (gf(x + d) - gf(x - d)) / 2e-4 }); (H + t(H)) / 2 }
  for (round in 1:6) {
    H <- curvature(x)
    step <- solve(H, gf(x)); x <- x - step
    if (max(abs(step)) < 1e-9) break
  }
  p <- par; p[free] <- x
  V <- solve(curvature(x))
  list(par = p, logLik = -as.numeric(f(p)), gradient = max(abs(gf(x))), se = replace(rep(NA_real_, length(p)), free, sqrt(diag(V))), moved = max(abs((p - par)[free])))
}
# Places in theta that are logarithms of standard deviations, where all terms are intercepts.
n_sd <- function(m) if (all(lengths(m$modelInfo$reTrms$cond$cnms) == 1)) length(m$modelInfo$reTrms$cond$cnms) else 0

tmb <- function(formula, data, family, zi = ~0, modes = FALSE) {
  m <- suppressWarnings(glmmTMB(formula, data, family = family, ziformula = zi, control = glmmTMBControl(optCtrl = list(iter.max = 1e4, eval.max = 1e4, rel.tol = 1e-12))))
  at <- polished(m); of <- function(kind) which(names(at$par) == kind)
  # VarCorr at the polished place.
  report <- m$obj$report(m$obj$env$last.par); vc <- report$sd; cr <- report$corr
  cnms <- m$modelInfo$reTrms$cond$cnms
  sd <- setNames(lapply(vc, as.numeric), names(cnms)); cor <- lapply(seq_along(cnms), function(k) if (length(cnms[[k]]) == 2 && length(cr[[k]]) > 1) cr[[k]][2, 1] else NULL)
  disp <- exp(at$par[of("betad")]); fam <- m$modelInfo$family$family
  out <- list(engine = "glmmTMB, polished", logLik = at$logLik, coef = se_of(setNames(at$par[of("beta")], colnames(model.matrix(m))), at$se[of("beta")]),
    sd = sd, theta = if (fam == "nbinom2") disp, phi = if (fam == "nbinom1") disp, sum = if (fam == "betabinomial") disp)
  names(cor) <- names(cnms); cor <- cor[!sapply(cor, is.null)]; if (length(cor)) out$correlation <- cor
  if (length(of("betazi"))) out$zeros <- se_of(setNames(at$par[of("betazi")], names(fixef(m)$zi)), at$se[of("betazi")])
  if (modes) {
    first <- cnms[[1]]; levels <- nlevels(factor(data[[names(cnms)[1]]])); b <- m$obj$env$last.par; b <- matrix(b[names(b) == "b"][seq_len(levels * length(first))], length(first))
    out$modes <- list(intercepts = b[1, ], slopes = b[2, ])
  }
  cat(sprintf("%-60s %.10f  gradient %.1e moved %.1e\n", paste(deparse(formula), collapse = ""), at$logLik, at$gradient, at$moved))
  out[!sapply(out, is.null)]
}

# The integral itself, for one grouping with intercepts: by the trapezoidal rule over -9 to 9 standard deviations, which for such an
# integrand errs by less than rounding; integrate() says the same of the maximum. Coefficients, log SD, and log theta where there is one.
integral <- function(X, offset, group, density, par, by_integrate = FALSE) {
  p <- ncol(X); eta <- as.numeric(X %*% par[1:p]) + offset; sd <- exp(par[p + 1]); more <- par[-(1:(p + 1))]
  v <- seq(-9, 9, length.out = 241); h <- v[2] - v[1]
  sum(sapply(split(seq_along(eta), group), function(i) {
    log_height <- function(v) colSums(matrix(density(rep(i, length(v)), as.numeric(outer(eta[i], sd * v, "+")), more), length(i))) + dnorm(v, log = TRUE)
    if (by_integrate) {
      top <- optimize(log_height, c(-6, 6), maximum = TRUE, tol = 1e-8)
      own <- function(lo, hi) integrate(function(v) exp(log_height(v) - top$objective), lo, hi, rel.tol = 1e-12, subdivisions = 2000)$value
      return(top$objective + log(own(-12, top$maximum) + own(top$maximum, 12)))
    }
    l <- log_height(v); max(l) + log(sum(exp(l - max(l))) * h)
  }))
}
integrated <- function(X, offset, group, density, start, again = NULL) {
  f <- function(par) -integral(X, offset, group, density, par)
  x <- optim(start, f, method = "BFGS", control = list(maxit = 1000, reltol = 1e-14))$par
  for (round in 1:3) x <- x - solve(hessian(f, x), grad(f, x))
  se <- sqrt(diag(solve(hessian(f, x)))); p <- ncol(X)
  exact <- integral(X, offset, group, density, x, by_integrate = TRUE)
  cat(sprintf("integral: %.10f by the rule, %.10f by integrate()\n", -f(x), exact))
  out <- list(engine = "R, the integral itself", logLik = exact, coef = se_of(setNames(x[1:p], colnames(X)), se[1:p]), sd = as.list(setNames(exp(x[p + 1]), attr(group, "of"))),
    theta = if (length(x) > p + 1) exp(x[p + 2]))
  if (!is.null(again)) out$lme4 <- again
  out[!sapply(out, is.null)]
}
# What lme4 says, with tolerances far below its own. By quadrature its log likelihood is that less the saturated one.
beside <- function(g, saturated = 0) list(logLik = as.numeric(logLik(g)) + saturated, coef = se_of(fixef(g), sqrt(diag(vcov(g)))), sd = lapply(VarCorr(g), function(v) as.numeric(attr(v, "stddev"))))
named <- function(group, of) { attr(group, "of") <- of; group }
tight <- glmerControl(optimizer = "bobyqa", tolPwrss = 1e-13, optCtrl = list(rhoend = 1e-9, maxfun = 1e5))

# Maximum likelihood of NB2 without random effects, errors from the observed information of coefficients and theta together.
observed <- function(m, note) {
  X <- model.matrix(m); o <- model.offset(model.frame(m)); o <- if (is.null(o)) 0 else o; p <- ncol(X); y <- m$y
  f <- function(par) -sum(dnbinom(y, mu = exp(as.numeric(X %*% par[1:p]) + o), size = exp(par[p + 1]), log = TRUE))
  x <- c(coef(m), log(m$theta))
  for (round in 1:4) x <- x - solve(hessian(f, x), grad(f, x))
  H <- optimHess(x, f, control = list(ndeps = rep(1e-4, p + 1))); H2 <- hessian(f, x); se <- sqrt(diag(solve(H2)))
  cat(sprintf("glm.nb %.10f, here %.10f; errors of glm.nb over observed: %s; optimHess over hessian %.6f\n", as.numeric(logLik(m)), -f(x),
    paste(sprintf("%s %.4f", colnames(X), coef(summary(m))[, 2] / se[1:p]), collapse = ", "), max(sqrt(diag(solve(H))) / se)))
  list(engine = "MASS, errors from the observed information", logLik = -f(x), coef = se_of(coef(m), se[1:p]), sd = setNames(list(), character()), theta = exp(x[p + 1]), note = note)
}
plain <- function(m) list(engine = "glm", logLik = as.numeric(logLik(m)), coef = se_of(coef(m), coef(summary(m))[, 2]), sd = setNames(list(), character()))

cbpp <- read("cbpp"); cbpp$period <- factor(cbpp$period); cbpp$obs <- factor(seq_len(nrow(cbpp))); cbpp$time <- as.integer(cbpp$period) - 2.5
quine <- read("quine"); for (k in c("Eth", "Sex", "Age", "Lrn")) quine[[k]] <- factor(quine[[k]])
sal <- read("salamanders"); sal$mined <- factor(sal$mined, levels = c("yes", "no")); sal$spp <- factor(sal$spp, levels = c("GP", "PR", "DM", "EC-A", "EC-L", "DES-L", "DF"))
rape <- read("oilseed-rape"); rape$location <- factor(rape$location, levels = c("Crop", "Edge")); rape$quad <- paste(rape$field, rape$round, rape$location, rape$quadrat)
rape$round <- factor(rape$round); rape$temp <- rape$temperature - mean(rape$temperature); rape$bees <- rape$honey + rape$wild
bees <- rbind(cbind(rape, group = "honey", count = rape$honey), cbind(rape, group = "wild", count = rape$wild)); bees$group <- factor(bees$group)
clover <- read("red-clover"); clover$year <- factor(clover$year); clover$minutes <- clover$seconds / 60; clover$bumble <- clover$short + clover$long
two <- function(one, other, levels) { l <- rbind(cbind(clover, group = levels[1], count = clover[[one]]), cbind(clover, group = levels[2], count = clover[[other]])); l$group <- factor(l$group, levels = levels); l$obs <- factor(seq_len(nrow(l))); l }
kinds <- two("honey", "bumble", c("honey", "bumble")); tongues <- two("short", "long", c("short", "long"))
alps <- read("alpine-visits"); alps$hours <- alps$seconds / 3600; alps$alt100 <- (alps$altitude - 1500) / 100; alps$tc <- alps$temperature - 20
made <- read("field-visits"); made$warm <- made$warmth - 20

share <- cbind(incidence, size - incidence) ~ period
X <- function(f, d) model.matrix(f, d)
fits <- list()
fits[["cbpp: binomial"]] <- c(tmb(update(share, . ~ . + (1 | herd)), cbpp, binomial), list(lme4 = beside(glmer(update(share, . ~ . + (1 | herd)), cbpp, family = binomial, control = tight))))
agq <- glmer(update(share, . ~ . + (1 | herd)), cbpp, family = binomial, nAGQ = 9, control = tight)
fits[["cbpp: binomial by quadrature"]] <- integrated(X(~period, cbpp), 0, named(cbpp$herd, "herd"), function(i, eta, more) dbinom(cbpp$incidence[i], cbpp$size[i], plogis(eta), log = TRUE),
  c(fixef(agq), log(0.64)), again = beside(agq, sum(dbinom(cbpp$incidence, cbpp$size, cbpp$incidence / cbpp$size, log = TRUE))))
fits[["cbpp: herd and observation"]] <- tmb(update(share, . ~ . + (1 | herd) + (1 | obs)), cbpp, binomial)
fits[["cbpp: beta-binomial"]] <- tmb(update(share, . ~ . + (1 | herd)), cbpp, betabinomial)
fits[["cbpp: slope on time, apart"]] <- tmb(cbind(incidence, size - incidence) ~ time + diag(1 + time | herd), cbpp, binomial)

days <- Days ~ Eth + Sex + Age + Lrn
expected_information <- "glm.nb holds theta fixed and takes the expected information for its errors; those here are of the observed information, of coefficients and theta together"
fits[["quine: poisson"]] <- plain(glm(days, quine, family = poisson))
fits[["quine: nb2"]] <- tmb(days, quine, nbinom2)
fits[["quine: nb2 by glm.nb"]] <- observed(glm.nb(days, quine), expected_information)
fits[["quine: nb2 with interaction"]] <- observed(glm.nb(Days ~ Eth * Lrn + Sex + Age, quine), expected_information)

counted <- count ~ spp + mined + (1 | site)
fits[["salamanders: poisson"]] <- tmb(counted, sal, poisson)
fits[["salamanders: nb1"]] <- tmb(counted, sal, nbinom1)
fits[["salamanders: nb2"]] <- tmb(counted, sal, nbinom2)
fits[["salamanders: poisson, zeros by mining"]] <- tmb(counted, sal, poisson, ~mined)
fits[["salamanders: nb2, zeros by mining"]] <- tmb(counted, sal, nbinom2, ~mined)
fits[["salamanders: nb2 with interaction"]] <- tmb(count ~ spp * mined + (1 | site), sal, nbinom2)

group <- count ~ group + location + offset(log(minutes)) + (1 | field)
fits[["oilseed rape: poisson"]] <- c(tmb(group, bees, poisson), list(lme4 = beside(glmer(group, bees, family = poisson, control = tight))))
agq <- glmer(group, bees, family = poisson, nAGQ = 25, control = tight)
fits[["oilseed rape: poisson by quadrature"]] <- integrated(X(~ group + location, bees), log(bees$minutes), named(bees$field, "field"), function(i, eta, more) dpois(bees$count[i], exp(eta), log = TRUE),
  c(fixef(agq), log(0.65)), again = beside(agq, sum(dpois(bees$count, bees$count, log = TRUE))))
fits[["oilseed rape: nb1"]] <- tmb(group, bees, nbinom1)
fits[["oilseed rape: nb2"]] <- tmb(group, bees, nbinom2)
fits[["oilseed rape: nb2 by quadrature"]] <- integrated(X(~ group + location, bees), log(bees$minutes), named(bees$field, "field"), function(i, eta, more) dnbinom(bees$count[i], mu = exp(eta), size = exp(more), log = TRUE),
  c(unlist(lapply(fits[["oilseed rape: nb2"]]$coef, `[`, 1)), log(0.5), log(0.22)))
fits[["oilseed rape: nb2 with interaction"]] <- tmb(count ~ group * location + offset(log(minutes)) + (1 | field), bees, nbinom2)
fits[["oilseed rape: nb2, quadrats in fields"]] <- tmb(count ~ group + location + offset(log(minutes)) + (1 | field / quad), bees, nbinom2)
fits[["oilseed rape: nb2, flowers as effort"]] <- tmb(count ~ group + location + offset(log(minutes * flowers / 6000)) + (1 | field), bees, nbinom2)
fits[["oilseed rape: nb2, temperature"]] <- tmb(bees ~ temp + location + round + offset(log(minutes)) + (1 | field), rape, nbinom2)

kind <- count ~ group + year + offset(log(minutes))
fits[["red clover: poisson by site"]] <- tmb(update(kind, . ~ . + (1 | site)), kinds, poisson)
fits[["red clover: nb2 by site"]] <- tmb(update(kind, . ~ . + (1 | site)), kinds, nbinom2)
fits[["red clover: nb2 by place"]] <- tmb(update(kind, . ~ . + (1 | place)), kinds, nbinom2)
fits[["red clover: nb2 by place, interaction"]] <- tmb(count ~ group * year + offset(log(minutes)) + (1 | place), kinds, nbinom2)
fits[["red clover: poisson, observations"]] <- tmb(update(kind, . ~ . + (1 | site) + (1 | obs)), kinds, poisson)
fits[["red clover: nb2"]] <- observed(glm.nb(kind, kinds), expected_information)
fits[["red clover: tongues"]] <- tmb(count ~ group * year + offset(log(minutes)) + (1 | place), tongues, nbinom2)

fits[["alpine: nb2"]] <- tmb(visits ~ alt100 + tc + offset(log(hours)) + (1 | plot), alps, nbinom2)

on <- function(response, random) as.formula(paste(response, "~ treated + warm + offset(log(minutes / 10)) +", random))
for (family in c("poisson", "nb2")) {
  y <- c(poisson = "plain", nb2 = "clumped")[[family]]; of <- list(poisson = poisson, nb2 = nbinom2)[[family]]; name <- function(s) paste0("field visits: ", family, ", ", s)
  fits[[name("slope")]] <- tmb(on(y, "(1 + warm | field)"), made, of, modes = TRUE)
  fits[[name("slope apart")]] <- tmb(on(y, "diag(1 + warm | field)"), made, of, modes = TRUE)
  fits[[name("slope and visits")]] <- tmb(on(y, "(1 + warm | field) + (1 | visit)"), made, of, modes = TRUE)
  fits[[name("slope apart and visits")]] <- tmb(on(y, "diag(1 + warm | field) + (1 | visit)"), made, of)
  fits[[name("fields in regions")]] <- tmb(on(y, "(1 | region / field)"), made, of)
  fits[[name("fields, visits, observers")]] <- tmb(on(y, "(1 | field) + (1 | visit) + (1 | observer)"), made, of)
}
fits[["field visits: nb1, slope"]] <- tmb(on("clumped", "(1 + warm | field)"), made, nbinom1)

version <- function(p) as.character(packageVersion(p))
write(toJSON(list(made_with = list(R = as.character(getRversion()), glmmTMB = version("glmmTMB"), lme4 = version("lme4"), MASS = version("MASS"), numDeriv = version("numDeriv")),
  fits = fits), auto_unbox = TRUE, digits = 12, pretty = TRUE), "expected.json")
