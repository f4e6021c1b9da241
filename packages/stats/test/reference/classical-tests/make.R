# Exact tests and intervals by R 4.2.2. Run inside this folder.
# fisher.test solves with uniroot's default tolerance of about 1e-4; here its equations are solved to 1e-13 instead,
# with fisher.test's own answer kept beside to show that they agree to what it promises.
digits <- function(x) formatC(x, digits = 17, format = "g")
save <- function(name, d) write.table(as.data.frame(lapply(d, digits)), paste0(name, ".csv"), sep = ",", quote = FALSE, row.names = FALSE)

two <- data.frame(
  x1 = c(41, 34, 0, 5, 1, 200, 7, 3, 12), e1 = c(28010, 120, 60, 60, 10, 333.5, 10, 100, 240),
  x2 = c(15, 15, 4, 0, 1, 180, 7, 30, 2), e2 = c(19017, 120, 60, 45, 90, 250.25, 10, 100, 30))
rows <- do.call(rbind, lapply(c(0.8, 0.95, 0.999), function(level) do.call(rbind, lapply(seq_len(nrow(two)), function(i) {
  w <- two[i, ]
  test <- poisson.test(c(w$x1, w$x2), c(w$e1, w$e2), conf.level = level)
  n <- w$x1 + w$x2
  # Clopper-Pearson limits once more, by qbeta: poisson.test prints the same, but turns odds of 1 into NaN.
  lo <- if (w$x1 == 0) 0 else { p <- qbeta((1 - level) / 2, w$x1, w$x2 + 1); p / (1 - p) * w$e2 / w$e1 }
  up <- if (w$x2 == 0) Inf else { p <- qbeta((1 + level) / 2, w$x1 + 1, w$x2); p / (1 - p) * w$e2 / w$e1 }
  stopifnot(all.equal(lo, test$conf.int[1]), is.infinite(up) || all.equal(up, test$conf.int[2]))
  mid <- function(p, upper) (if (upper) pbinom(w$x1, n, p, lower.tail = FALSE) else pbinom(w$x1 - 1, n, p)) + dbinom(w$x1, n, p) / 2
  solve <- function(upper) { p <- uniroot(function(p) mid(p, upper) - (1 - level) / 2, c(1e-12, 1 - 1e-12), tol = 1e-15)$root; p / (1 - p) * w$e2 / w$e1 }
  p0 <- w$e1 / (w$e1 + w$e2)
  data.frame(w, level = level, lower = lo, upper = up, p = test$p.value, midLower = if (w$x1 == 0) 0 else solve(TRUE),
    midUpper = if (w$x2 == 0) Inf else solve(FALSE), midP = min(1, 2 * min(mid(p0, TRUE), mid(p0, FALSE))))
}))))
save("rate-ratio", rows)

tables <- rbind(c(34, 12, 15, 9), c(3, 1, 1, 3), c(10, 2, 3, 15), c(0, 5, 6, 2), c(7, 0, 3, 4), c(120, 80, 95, 130), c(2, 40, 1, 300), c(5, 5, 5, 5), c(9, 4, 1, 1))
rows <- do.call(rbind, lapply(c(0.9, 0.95), function(level) do.call(rbind, lapply(seq_len(nrow(tables)), function(i) {
  x <- tables[i, ]
  test <- fisher.test(matrix(x, 2, byrow = TRUE), conf.level = level)
  m <- x[1] + x[2]; n <- x[3] + x[4]; k <- x[1] + x[3]
  support <- max(0, k - n):min(k, m)
  logw <- dhyper(support, m, n, k, log = TRUE)
  d <- function(l) { v <- logw + l * support; v <- exp(v - max(v)); v / sum(v) }
  root <- function(f) exp(uniroot(f, c(-30, 30), tol = 1e-14)$root)
  a <- (1 - level) / 2
  low <- x[1] == min(support); high <- x[1] == max(support)
  out <- data.frame(a = x[1], b = x[2], c = x[3], d = x[4], level = level,
    ratio = if (low) 0 else if (high) Inf else root(function(l) sum(support * d(l)) - x[1]),
    lower = if (low) 0 else root(function(l) sum(d(l)[support >= x[1]]) - a),
    upper = if (high) Inf else root(function(l) sum(d(l)[support <= x[1]]) - a),
    p = test$p.value)
  stopifnot(all.equal(c(out$lower, out$upper), as.numeric(test$conf.int), tolerance = 1e-2), all.equal(out$ratio, as.numeric(test$estimate), tolerance = 1e-2))
  out
}))))
save("odds-ratio", rows)

shares <- data.frame(x = c(0, 0, 1, 7, 34, 81, 20, 500), n = c(1, 20, 29, 10, 46, 263, 20, 1234))
rows <- do.call(rbind, lapply(c(0.5, 0.95, 0.9995), function(level) do.call(rbind, lapply(seq_len(nrow(shares)), function(i) {
  w <- shares[i, ]
  exact <- binom.test(w$x, w$n, conf.level = level)$conf.int
  score <- suppressWarnings(prop.test(w$x, w$n, conf.level = level, correct = FALSE)$conf.int)
  data.frame(w, level = level, exactLower = exact[1], exactUpper = exact[2], scoreLower = score[1], scoreUpper = score[2])
}))))
save("proportion", rows)

g <- merge(shares, data.frame(chance = c(0.02, 0.3, 0.5, 0.9)))
g$p <- mapply(function(x, n, chance) binom.test(x, n, chance)$p.value, g$x, g$n, g$chance)
save("binomial-test", g)

g <- expand.grid(count = c(0, 1, 2, 5, 10, 37, 490, 28010), level = c(0.5, 0.9, 0.95, 0.9995))
ci <- t(mapply(function(x, l) poisson.test(x, conf.level = l)$conf.int, g$count, g$level))
save("poisson-interval", data.frame(g, lower = ci[, 1], upper = ci[, 2]))
