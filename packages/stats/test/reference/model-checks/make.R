# Quantile residuals of a Poisson and an NB2 fit by R's exact distribution functions. Run inside this folder.
library(MASS)
set.seed(20260519)
n <- 60
x <- round(rnorm(n), 3)
counts <- rnbinom(n, mu = exp(0.9 + 0.4 * x), size = 2)
poisson.fit <- glm(counts ~ x, family = poisson, control = glm.control(epsilon = 1e-14))
mu <- fitted(poisson.fit)
nb.fit <- glm.nb(counts ~ x, control = glm.control(epsilon = 1e-14, maxit = 200))
digits <- function(v) trimws(formatC(v, digits = 15, format = "g"))
write.csv(data.frame(
  x = x, counts = counts,
  poisson_mean = digits(mu), poisson_below = digits(ppois(counts - 1, mu)), poisson_upto = digits(ppois(counts, mu)),
  nb_mean = digits(fitted(nb.fit)), nb_theta = digits(nb.fit$theta),
  nb_below = digits(pnbinom(counts - 1, mu = fitted(nb.fit), size = nb.fit$theta)),
  nb_upto = digits(pnbinom(counts, mu = fitted(nb.fit), size = nb.fit$theta))
), "residuals.csv", row.names = FALSE, quote = FALSE)
# Laws of single rows: NB1 by pnbinom, beta-binomial and inflated zeros by sums of dbeta and dpois mixtures.
bb <- function(k, m, a, b) choose(m, k) * beta(k + a, m - k + b) / beta(a, b)
laws <- rbind(
  data.frame(family = 1, count = 3, trials = 1, predictor = log(2), dispersion = 0, chance = 0, below = ppois(2, 2), at = dpois(3, 2), zero = dpois(0, 2), mean = 2, variance = 2),
  data.frame(family = 2, count = 4, trials = 1, predictor = log(3), dispersion = 1.5, chance = 0, below = pnbinom(3, mu = 3, size = 2), at = dnbinom(4, mu = 3, size = 2), zero = dnbinom(0, mu = 3, size = 2), mean = 3, variance = 7.5),
  data.frame(family = 3, count = 2, trials = 1, predictor = log(3), dispersion = 0.5, chance = 0.2, below = 0.2 + 0.8 * pnbinom(1, mu = 3, size = 2), at = 0.8 * dnbinom(2, mu = 3, size = 2), zero = 0.2 + 0.8 * dnbinom(0, mu = 3, size = 2), mean = 2.4, variance = 0.8 * (7.5 + 9) - 2.4^2),
  data.frame(family = 4, count = 3, trials = 10, predictor = qlogis(0.25), dispersion = 0, chance = 0, below = pbinom(2, 10, 0.25), at = dbinom(3, 10, 0.25), zero = dbinom(0, 10, 0.25), mean = 2.5, variance = 1.875),
  data.frame(family = 5, count = 3, trials = 10, predictor = qlogis(0.25), dispersion = 0.25, chance = 0, below = sum(bb(0:2, 10, 1, 3)), at = bb(3, 10, 1, 3), zero = bb(0, 10, 1, 3), mean = 2.5, variance = sum((0:10)^2 * bb(0:10, 10, 1, 3)) - 2.5^2)
)
laws[] <- lapply(laws, digits)
write.csv(laws, "laws.csv", row.names = FALSE, quote = FALSE)
cat("ks", digits(as.numeric(ks.test(c(0.1, 0.2, 0.9), "punif")$statistic)), "\n", file = "values.txt")
