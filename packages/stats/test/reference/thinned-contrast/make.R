# Contrasts by thinning, by R 4.2.2: binomial sums by dbinom, roots by uniroot, designs by solve. Run in this folder: Rscript make.R
thinned_log <- function(y, q) { if (q >= 1) return(c(log(y + 1), 0)); p <- dbinom(0:y, y, q); l <- log(0:y + 1); c(sum(p * l), sum(p * l^2) - sum(p * l)^2) }
least <- function(m) if (m >= 3) 0 else { p <- dpois(0:60, m); l <- log(0:60 + 1); sum(p * l^2) - sum(p * l)^2 }
look <- function(r, cells, X, paired) {
  e <- cells$effort * exp(r * cells$asked); q <- ave(e, cells$company, FUN = min) / e
  h <- mapply(thinned_log, cells$total, q)
  S <- sapply(seq_len(nrow(X)), function(u) cells$unit == u)
  z <- as.vector(crossprod(S, cells$sign * h[1, ])); lost <- as.vector(crossprod(S, h[2, ]))
  A <- solve(crossprod(X), t(X)); w <- A[ncol(X), ]; M <- diag(nrow(X)) - X %*% A; df <- nrow(X) - ncol(X)
  rss <- sum((M %*% z)^2); floor <- least(mean(cells$total * q)) * nrow(cells) / nrow(X)
  if (paired) return(c(sum(w * z), sqrt(max(rss / df, floor - mean(lost)) * sum(w^2)), df))
  v <- pmax(max((rss + sum(diag(M) * lost)) / df, floor) - lost, 0)
  c(sum(w * z), sqrt(sum(w^2 * v)), min(max(df^2 * sum(w^2 * v)^2 / (sum(w^2)^2 * sum(M^2 * outer(v, v))), 1), df))
}
root <- function(f, low, high) if (f(low) * f(high) > 0) NA else uniroot(f, c(low, high), tol = 1e-13)$root
solved <- function(name, cells, X, paired) {
  b <- root(function(r) look(r, cells, X, paired)[1], -8, 8); df <- look(b, cells, X, paired)[3]
  limit <- function(level, side) { t <- side * qt(0.5 + level / 2, df); root(function(r) { l <- look(r, cells, X, paired); l[1] - t * l[2] }, b - 9, b + 9) }
  data.frame(case = name, estimate = b, df = df, lower95 = limit(0.95, 1), upper95 = limit(0.95, -1), lower90 = limit(0.9, 1), upper90 = limit(0.9, -1))
}
read <- function(name) read.csv(paste0(name, ".csv"))
out <- list()
d <- read("blocks"); out[[1]] <- solved("blocks", data.frame(unit = 1:8, total = d$total, effort = d$effort, sign = 1, asked = d$level, company = d$block), cbind(1, d$block, d$level), FALSE)
d <- read("few"); out[[2]] <- solved("few", data.frame(unit = seq_len(nrow(d)), total = d$total, effort = d$effort, sign = 1, asked = d$level, company = 0), cbind(1, d$level), FALSE)
pair <- function(d) rbind(data.frame(unit = seq_len(nrow(d)), total = d$total1, effort = d$effort1, sign = -1, asked = 0, company = seq_len(nrow(d))), data.frame(unit = seq_len(nrow(d)), total = d$total2, effort = d$effort2, sign = 1, asked = 1, company = seq_len(nrow(d))))
d <- read("pairs"); out[[3]] <- solved("pairs", pair(d), matrix(1, nrow(d), 1), TRUE)
d <- read("few-pairs"); out[[4]] <- solved("few-pairs", pair(d), matrix(1, nrow(d), 1), TRUE)
d <- read("before-after"); c4 <- pair(d); c4$company <- 0; c4$asked <- c4$asked * rep(d$level, 2); out[[5]] <- solved("before-after", c4, cbind(1, d$level), FALSE)
d <- read("endless"); out[[6]] <- solved("endless", data.frame(unit = seq_len(nrow(d)), total = d$total, effort = d$effort, sign = 1, asked = d$level, company = 0), cbind(1, d$level), FALSE)
write.csv(format(do.call(rbind, out), digits = 12), "values.csv", row.names = FALSE, quote = FALSE)
