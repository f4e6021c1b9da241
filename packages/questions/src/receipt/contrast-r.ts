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
      unit(z_of(x), x, lapply(setNames(nuisances, nuisances), function(n) mean_of(x, n)))
    }))
  } else {
    side <- if (structure == "within-fields") k$level else k$period
    first <- if (structure == "within-fields") reference else "before"
    second <- if (structure == "within-fields") level else "after"
    u <- do.call(rbind, lapply(fields, function(f) {
      a <- k[k$field == f & side == first, ]; b <- k[k$field == f & side == second, ]
      if (!nrow(a) || !nrow(b)) return(NULL)
      unit(z_of(b) - z_of(a), b, lapply(setNames(nuisances, nuisances), function(n) mean_of(b, n) - mean_of(a, n)))
    }))
  }
  u[!is.na(u$z), ]
}
blocked <- structure %in% c("between-fields", "before-after-control")
contrast <- function(kind, reference, level, nuisances, confidence, data = d) {
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
  c(exp(coef(fit)[[term]]), exp(confint(fit, term, level = confidence)))
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
