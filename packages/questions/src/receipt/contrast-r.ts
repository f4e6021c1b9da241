/** The rows of a contrast, and how many fields stand in each level. */
export const countsRead = `
d <- read("counts.csv")
fields_with <- function(level) length(unique(d$field[d$level == level]))
`

/** R functions for the field-level t (methods.md 2.8): cells, units, nuisance means, then lm(). */
export const contrastFunctions = `
# log rate of a cell, or log odds where another kind stands against it; the half is always added
z_of <- function(x) {
  seen <- x[!is.na(x$count), ]
  if (!nrow(seen)) return(NA)
  if (relative) log((sum(seen$count) + 0.5) / (sum(seen$other) + 0.5)) else log((sum(seen$count) + 0.5) / sum(seen$effort))
}
mean_of <- function(x, column) {
  known <- !is.na(x[[column]])
  mean <- sum(x[[column]][known] * x$effort[known]) / sum(x$effort[known])
  if (column == "flowers.1") -log(mean) else mean # log of open flowers: flower-minutes over minutes
}
unit <- function(z, x, nuisances) as.data.frame(c(list(z = z, level = x$level[1], block = x$block[1]), nuisances), check.names = FALSE)
# total and effort of a cell, for thinning
cell <- function(x, name) { seen <- x[!is.na(x$count), ]; setNames(data.frame(sum(seen$count), sum(seen$effort)), paste0(name, c(".total", ".effort"))) }
# one slope per step of a measured level: between fields by lm(), within them a t on each field's own slope
slope <- function(kind, nuisances, length, confidence, data = d) {
  k <- data[data$kind == kind, ]
  if (structure == "within-fields") {
    seen <- k[!is.na(k$count), ]
    slopes <- sapply(split(seen, seen$field), function(x) {
      g <- split(x, x$measured)
      v <- sapply(g, function(y) y$measured[1]); z <- sapply(g, function(y) log((sum(y$count) + 0.5) / sum(y$effort)))
      if (length(v) < 2) NA else coef(lm(z ~ v))[[2]]
    })
    t <- t.test(slopes[!is.na(slopes)], conf.level = confidence)
    return(exp(length * c(t$estimate, t$conf.int)))
  }
  u <- do.call(rbind, lapply(unique(k$field), function(f) {
    x <- k[k$field == f, ]
    unit(z_of(x), x, c(list(measured = mean_of(x, "measured")), lapply(setNames(nuisances, nuisances), function(n) mean_of(x, n))))
  }))
  u <- u[!is.na(u$z), ]
  terms <- c(if (length(unique(u$block)) > 1) "factor(block)", nuisances, "measured")
  fit <- lm(reformulate(terms, "z"), data = u)
  exp(length * c(coef(fit)[["measured"]], confint(fit, "measured", level = confidence)))
}
units_of <- function(kind, reference, level, nuisances, data) {
  k <- data[data$kind == kind, ]
  fields <- unique(k$field)
  if (structure == "between-fields") {
    u <- do.call(rbind, lapply(fields, function(f) {
      x <- k[k$field == f, ]
      cbind(unit(z_of(x), x, lapply(setNames(nuisances, nuisances), function(n) mean_of(x, n))), cell(x, "second"))
    }))
  } else {
    side <- if (structure == "within-fields") k$level else k$period
    first <- if (structure == "within-fields") reference else "before"
    second <- if (structure == "within-fields") level else "after"
    u <- do.call(rbind, lapply(fields, function(f) {
      a <- k[k$field == f & side == first, ]; b <- k[k$field == f & side == second, ]
      if (!nrow(a) || !nrow(b)) return(NULL)
      cbind(unit(z_of(b) - z_of(a), b, lapply(setNames(nuisances, nuisances), function(n) mean_of(b, n) - mean_of(a, n))), cell(a, "first"), cell(b, "second"))
    }))
  }
  u[!is.na(u$z), ]
}
blocked <- structure %in% c("between-fields", "before-after-control")
# mean and variance of ln(B + 1), B binomial: a total watched for a part q of its exposure
thinned_log <- function(y, q) {
  if (q >= 1 || y == 0) return(c(log(y + 1), 0))
  k <- 0:y; p <- dbinom(k, y, q); m <- sum(p * log(k + 1)); c(m, sum(p * (log(k + 1) - m)^2))
}
# variance of ln(Y + 1) of a Poisson count: scatter of few insects is not believed below it
least_scatter <- function(mean) if (mean >= 3) 0 else { k <- 0:39; p <- dpois(k, mean); sum(p * log(k + 1)^2) - sum(p * log(k + 1))^2 }
# the contrast of totals thinned to equal exposure, at a trial log ratio r: estimate, its error, degrees of freedom
look <- function(r, cells, X) {
  exposure <- cells$effort * ifelse(cells$asked, exp(r), 1)
  q <- ave(exposure, cells$company, FUN = min) / exposure
  h <- mapply(thinned_log, cells$total, q)
  n <- nrow(X); z <- numeric(n); lost <- numeric(n)
  for (i in seq_len(nrow(cells))) { u <- cells$unit[i]; z[u] <- z[u] + cells$sign[i] * h[1, i]; lost[u] <- lost[u] + h[2, i] }
  A <- solve(crossprod(X), t(X)); w <- A[ncol(X), ]; M <- diag(n) - X %*% A; df <- n - ncol(X)
  squares <- sum((M %*% z)^2); floor <- least_scatter(sum(cells$total * q) / nrow(cells)) * nrow(cells) / n
  if (!blocked) return(c(sum(w * z), sqrt(max(squares / df, floor - mean(lost)) * sum(w^2)), df))
  v <- pmax(max((squares + sum(diag(M) * lost)) / df, floor) - lost, 0)
  own <- df^2 * sum(w^2 * v)^2 / (sum(w^2)^2 * sum(M^2 * outer(v, v)))
  c(sum(w * z), sqrt(sum(w^2 * v)), min(max(if (is.finite(own)) own else df, 1), df))
}
# where a falling function crosses zero, outwards from a place; Inf where it does not within 12
crossing <- function(f, from) {
  side <- if (f(from) > 0) 1 else -1; near <- from; width <- 0.25
  while (abs(near - from) < 12) {
    far <- near + side * width
    if ((f(far) > 0) != (side > 0)) return(uniroot(f, sort(c(near, far)), tol = 1e-11)$root)
    near <- far; width <- 2 * width
  }
  side * Inf
}
thinned <- function(u, terms, reference, level) {
  n <- nrow(u)
  part <- if (blocked) u$level %in% c(reference, level) else rep(TRUE, n)
  company <- if (blocked) ifelse(part, as.character(u$block), paste(u$block, "beside", u$level)) else as.character(seq_len(n))
  asked <- if (blocked) u$level == level else rep(TRUE, n)
  cells <- data.frame(unit = seq_len(n), total = u$second.total, effort = u$second.effort, sign = 1, asked = asked, company = company)
  if ("first.total" %in% names(u)) cells <- rbind(cells, data.frame(unit = seq_len(n), total = u$first.total, effort = u$first.effort, sign = -1, asked = FALSE, company = company))
  others <- setdiff(unique(as.character(u$level)), c(reference, level))
  X <- do.call(cbind, c(
    if (blocked) list(rep(1, n)), if (blocked && length(unique(u$block)) > 1) list(model.matrix(~ factor(u$block))[, -1]),
    if (blocked) lapply(others, function(l) as.numeric(u$level == l)), lapply(u[terms], as.numeric), list(as.numeric(asked))))
  X <- X[, sort(qr(X, tol = 1e-7)$pivot[seq_len(qr(X, tol = 1e-7)$rank)]), drop = FALSE]
  start <- log((sum(cells$total[cells$asked]) + 0.5) / sum(cells$effort[cells$asked])) - log((sum(cells$total[!cells$asked]) + 0.5) / sum(cells$effort[!cells$asked]))
  estimate <- crossing(function(r) look(r, cells, X)[1], start)
  if (!is.finite(estimate)) return(NULL)
  df <- look(estimate, cells, X)[3]
  limit <- function(t) crossing(function(r) { l <- look(r, cells, X); l[1] - t * l[2] }, estimate)
  list(estimate = estimate, df = df, limits = function(confidence) { t <- qt(0.5 + confidence / 2, df); c(limit(t), limit(-t)) })
}
contrast <- function(kind, reference, level, nuisances, confidence, data = d, t_alone = relative) {
  u <- units_of(kind, reference, level, nuisances, data)
  terms <- nuisances
  if (blocked) {
    u$level <- relevel(factor(u$level), ref = reference)
    if (length(unique(u$block)) > 1) terms <- c("factor(block)", terms)
    fit <- lm(reformulate(c(terms, "level"), "z"), data = u)
    term <- paste0("level", level)
  } else {
    fit <- lm(if (length(terms)) reformulate(terms, "z") else z ~ 1, data = u)
    term <- "(Intercept)"
  }
  of_t <- c(exp(coef(fit)[[term]]), exp(confint(fit, term, level = confidence)))
  if (t_alone) return(of_t)
  # few insects, or unequal exposures, bend the t: then the thinned contrast stands
  own <- thinned(u, nuisances, reference, level)
  se <- coef(summary(fit))[term, 2]
  if (is.null(own) || (abs(own$estimate - coef(fit)[[term]]) <= 0.05 * se && own$df >= 0.65 * fit$df.residual)) return(of_t)
  limits <- exp(c(own$estimate, own$limits(confidence))); limits[!is.finite(limits)] <- NA; limits
}
`

/** R functions for the same comparison by other analyses: without a visit, by permutation, by a model of counts. */
export const analysisFunctions = `
# a visit is left out of the counts; what the fields are adjusted for stays as it was
without <- function(addresses) { x <- d; x$count[x$address %in% addresses] <- NA; x }
# all ways to deal the levels anew within blocks, or to exchange the two sides of a field; how many reach the effect that was seen
permuted <- function(kind, reference, level, nuisances) {
  u <- units_of(kind, reference, level, nuisances, d)
  if (blocked) {
    u <- u[u$level %in% c(reference, level), ]
    seen <- as.numeric(u$level == level)
    base <- if (length(unique(u$block)) > 1) model.matrix(~ factor(u$block)) else matrix(1, nrow(u), 1)
    places <- lapply(split(seq_len(nrow(u)), u$block), function(i) combn(length(i), sum(seen[i]), function(k) i[k], simplify = FALSE))
    picks <- as.matrix(expand.grid(lapply(places, seq_along)))
    ways <- lapply(seq_len(nrow(picks)), function(w) {
      x <- numeric(nrow(u)); for (b in seq_along(places)) x[places[[b]][[picks[w, b]]]] <- 1; x
    })
  } else {
    seen <- rep(1, nrow(u))
    base <- matrix(0, nrow(u), 0)
    signs <- as.matrix(expand.grid(rep(list(c(1, -1)), nrow(u))))
    ways <- lapply(seq_len(nrow(signs)), function(w) signs[w, ])
  }
  base <- cbind(base, as.matrix(u[nuisances]))
  left <- function(y) if (ncol(base)) qr.resid(qr(base), y) else y
  z <- left(u$z)
  effect <- function(x) { x <- left(x); if (sum(x^2) < 1e-14 * length(x)) 0 else sum(x * z)^2 / sum(x^2) }
  mean(sapply(ways, effect) >= effect(seen) * (1 - 2e-9))
}
# a model of counts by the package glmmTMB: X are the columns of the table, the contrast the last; t with the freedom of fields
model <- function(what, file, family, random, length, df, said) {
  if (!requireNamespace("glmmTMB", quietly = TRUE)) {
    cat(sprintf("%-8s %s: needs the R package glmmTMB\\n", "skipped", what))
    return(invisible())
  }
  m <- read.csv(file, check.names = FALSE)
  X <- as.matrix(m[startsWith(names(m), "x ")])
  kept <- qr(X, tol = 1e-7)
  X <- X[, sort(kept$pivot[seq_len(kept$rank)]), drop = FALSE]
  response <- if ("trials" %in% names(m)) "cbind(count, trials - count)" else "count"
  formula <- as.formula(paste(response, "~ 0 + X + offset(offset)", paste0("+ (1 | ", random, ")", recycle0 = TRUE, collapse = " ")))
  family <- switch(family, nbinom2 = glmmTMB::nbinom2(), betabinomial = glmmTMB::betabinomial(), poisson = poisson(), binomial = binomial())
  fit <- glmmTMB::glmmTMB(formula, data = m, family = family)
  last <- ncol(X)
  estimate <- glmmTMB::fixef(fit)$cond[[last]]; se <- sqrt(vcov(fit)$cond[last, last])
  got <- exp(length * estimate + c(0, -1, 1) * qt(0.975, df) * se * abs(length))
  # log ratio within 1e-4, its limits within 1e-3
  check(what, got, said, c(1e-4, 1e-3, 1e-3))
}
`

/** R functions for what was counted in these watches: exact Poisson limits, ratio and odds. */
export const watchFunctions = `
watches <- function(kind, group) { k <- d[d$kind == kind & d$group == group & !is.na(d$count), ]; c(sum(k$count), sum(k$effort)) }
garwood <- function(x, e, scale) scale / e * c(x, if (x == 0) 0 else qchisq(0.025, 2 * x) / 2, qchisq(0.975, 2 * x + 2) / 2)
`

/** R functions for the inflation of the asked contrast (methods.md 2.11), on units told from the mean of their group. */
export const inflationFunctions = `
g <- read.csv("design.csv", check.names = FALSE)
told <- function(x) { r <- x - ave(x, g$group); r - ave(r, g$group) }
length_left <- function(y, X) { if (!ncol(X)) return(sqrt(sum(y^2))); q <- qr(sweep(X, 2, pmax(apply(abs(X), 2, max), 1e-300), "/"), tol = 1e-7); sqrt(sum(qr.resid(q, y)^2)) }
inflation <- function(level, nuisances) {
  levels <- setdiff(sort(unique(g$level)), 0)
  of <- function(l) if ("measured" %in% names(g)) told(g$measured) else told(as.numeric(g$level == l & (!controlled | g$period == 1)))
  kept <- do.call(cbind, c(lapply(setdiff(levels, level), of), if (controlled) lapply(unique(g$block), function(b) told(g$period * (g$block == b))), list(matrix(0, nrow(g), 0))))
  y <- of(level)
  before <- length_left(y, kept)
  after <- length_left(y, cbind(kept, do.call(cbind, lapply(nuisances, function(n) told(g[[n]])))))
  if (after <= 1e-7 * before) Inf else max(1, (before / after)^2)
}
`
