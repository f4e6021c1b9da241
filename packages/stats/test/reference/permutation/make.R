# Permutation p values by full enumeration with lm's t, R 4.2.2. Run inside this folder.
digits <- function(x) paste(formatC(x, digits = 15, format = "g"), collapse = " ")
say <- function(name, x) cat(name, digits(x), "\n", sep = " ", file = "values.txt", append = TRUE)
unlink("values.txt")
t.of <- function(z, x, base) { s <- summary(lm.fit <- lm(z ~ 0 + base + x)); k <- match("x", rownames(coef(s))); if (is.na(k)) 0 else abs(coef(s)[k, 3]) }
by.all <- function(z, arrangements, base) {
  t0 <- t.of(z, arrangements[1, ], base)
  t <- apply(arrangements, 1, function(x) t.of(z, x, base))
  c(sum(t >= t0 - 1e-9 * t0), nrow(arrangements))
}
free <- function(n, k) t(combn(n, k, function(i) replace(numeric(n), i, 1)))
put.first <- function(A, x) { i <- which(apply(A, 1, function(r) all(r == x)))[1]; rbind(x, A[-i, ]) }
# Unequal groups: 2 of 12.
z <- c(3.1, 2.2, 0.4, 1.9, 2.5, 0.7, 1.1, 2.0, 1.4, 0.9, 2.8, 1.6)
x <- c(1, 1, rep(0, 10))
say("two-of-twelve", by.all(z, put.first(free(12, 2), x), matrix(1, 12, 1)))
# Blocks of unequal make-up: 1 of 4 and 2 of 5.
A <- free(4, 1); B <- free(5, 2)
both <- do.call(rbind, lapply(seq_len(nrow(A)), function(i) cbind(A[rep(i, nrow(B)), ], B)))
z <- c(2.5, 1.0, 1.4, 0.8, 3.0, 3.9, 2.1, 2.6, 1.9); x <- c(1, 0, 0, 0, 1, 1, 0, 0, 0)
base <- cbind(1, rep(0:1, c(4, 5)))
say("blocks", by.all(z, put.first(both, x), base))
# The same with a nuisance that stays with its unit.
say("blocks-nuisance", by.all(z, put.first(both, x), cbind(base, c(4, 2, 5, 1, 3, 6, 2, 2, 4))))
# Ties in the outcome.
z <- c(1, 1, 2, 2, 2, 3); x <- c(0, 0, 0, 1, 1, 1)
say("ties", by.all(z, put.first(free(6, 3), x), matrix(1, 6, 1)))
# Pairs: every sign.
d <- c(0.5, 0.1, 0.7, -0.2, 0.9, 0.3, 0.4)
S <- as.matrix(expand.grid(rep(list(c(1, -1)), 7)))
t0 <- abs(sum(d)); say("signs", c(sum(abs(S %*% d) >= t0 - 1e-9 * t0), 2^7))
nd <- c(1, -1, 2, 0, 3, 1, -2)
ts <- apply(S, 1, function(s) t.of(d, s, matrix(nd, ncol = 1))); say("signs-nuisance", c(sum(ts >= ts[1] - 1e-9 * ts[1]), 2^7))
