# Marginal means, their contrasts and simultaneous multipliers by emmeans, mvtnorm and qtukey. Run inside this folder.
suppressMessages({library(emmeans); library(mvtnorm); library(glmmTMB)})
digits <- function(x) paste(formatC(x, digits = 15, format = "g"), collapse = " ")
# What is not estimable is a line without numbers.
say <- function(name, x) cat(name, digits(x[!is.na(x)]), "\n", sep = " ", file = "values.txt", append = TRUE)
unlink("values.txt")

# The root of pmvt itself, from several starts of its random rule, averaged.
quantile.of <- function(R, df, level) {
  f <- function(q, seed) { set.seed(seed); m <- nrow(R)
    if (is.finite(df)) pmvt(rep(-q, m), rep(q, m), df = df, corr = R, algorithm = GenzBretz(maxpts = 4e5, abseps = 1e-6))[1]
    else pmvnorm(rep(-q, m), rep(q, m), corr = R, algorithm = GenzBretz(maxpts = 4e5, abseps = 1e-6))[1] }
  mean(sapply(1:3, function(seed) uniroot(function(q) f(q, seed) - level, c(1.2, 12), tol = 1e-7)$root))
}

# An invented table: three strips, three stages, unbalanced; one cell is emptied below.
n <- c(3, 2, 4, 1, 3, 2, 2, 4, 3)
cell <- expand.grid(strip = c("none", "sown", "old"), stage = c("early", "full", "late"))
d <- cell[rep(1:9, n), ]
d$day <- 20000 + c(3, 1, 4, 1, 5, 9, 2, 6, 5, 3, 5, 8, 9, 7, 9, 3, 2, 3, 8, 4, 6, 2, 6, 4)
d$minutes <- c(10, 15, 10, 5, 10, 20, 10, 10, 15, 10, 10, 5, 10, 10, 15, 10, 20, 10, 10, 5, 10, 10, 15, 10)
d$count <- c(4, 9, 2, 3, 12, 11, 6, 3, 9, 0, 14, 5, 13, 8, 7, 2, 21, 6, 3, 1, 12, 9, 17, 5)
d$weight <- c(2.1, 3.4, 2.6, 1.9, 4.1, 3.8, 3.0, 2.2, 3.9, 1.1, 4.6, 3.3, 4.4, 3.7, 3.1, 1.6, 5.2, 2.9, 2.4, 1.3, 4.0, 3.5, 4.8, 2.7)
row.names(d) <- NULL
write.csv(d, "strips.csv", row.names = FALSE, quote = FALSE)
d$strip <- factor(d$strip, c("none", "sown", "old")); d$stage <- factor(d$stage, c("early", "full", "late"))

means <- function(name, grid) {
  s <- as.data.frame(summary(grid, infer = c(TRUE, FALSE)))
  ends <- grep("CL$", names(s))
  for (k in seq_len(nrow(s))) say(paste(name, k, sep = "/"), c(s$emmean[k], s$SE[k], s[k, ends[1]], s[k, ends[2]]))
}
# Later less earlier, in the order 2-1, 3-1, 3-2, ...
pairs.all <- function(k) { L <- NULL; for (i in 2:k) for (j in 1:(i - 1)) { w <- rep(0, k); w[i] <- 1; w[j] <- -1; L <- rbind(L, w) }; L }
contrasts.of <- function(name, grid, L) {
  con <- contrast(grid, setNames(lapply(seq_len(nrow(L)), function(i) L[i, ]), seq_len(nrow(L))))
  s <- as.data.frame(summary(con, infer = c(TRUE, TRUE), adjust = "none"))
  h <- as.data.frame(summary(con, infer = c(FALSE, TRUE), adjust = "holm"))
  ends <- grep("CL$", names(s))
  for (k in seq_len(nrow(s))) say(paste(name, k, sep = "/"), c(s$estimate[k], s$SE[k], s[k, ends[1]], s[k, ends[2]], s$p.value[k], h$p.value[k]))
}

fit <- lm(weight ~ strip + stage + day + strip:stage, d)
means("lm-equal", emmeans(fit, "strip"))
means("lm-rows", emmeans(fit, "strip", weights = "proportional"))
means("lm-cells", emmeans(fit, c("strip", "stage")))
means("lm-day", emmeans(fit, "stage", at = list(day = 20002)))
contrasts.of("lm-pairs", emmeans(fit, "strip"), pairs.all(3))
# Multiplier of the three pairs: correlation of the contrasts, t.
E <- emmeans(fit, "strip"); L <- pairs.all(3); V <- L %*% vcov(E) %*% t(L)
say("lm-multiplier", quantile.of(cov2cor(V), fit$df.residual, 0.95))

# Two measured columns that act on the slope of each other and of strip.
slopes <- lm(weight ~ strip + day + minutes + strip:day + day:minutes, transform(d, day = day - 20000))
means("slopes", emmeans(slopes, "strip"))
means("slopes-at", emmeans(slopes, "strip", at = list(day = 7, minutes = 20)))

counted <- glm(count ~ strip + stage + offset(log(minutes)), poisson, d)
means("log", emmeans(counted, "strip", offset = log(60)))
s <- as.data.frame(summary(emmeans(counted, "strip", offset = log(60)), type = "response"))
for (k in 1:3) say(paste("log-response", k, sep = "/"), c(s$rate[k], s$asymp.LCL[k], s$asymp.UCL[k]))
contrasts.of("log-pairs", emmeans(counted, "strip"), pairs.all(3))
p <- predict(counted, data.frame(strip = "old", stage = c("early", "late"), minutes = 30), se.fit = TRUE)
say("log-predicted", c(p$fit, p$se.fit))

share <- glm(cbind(count, 30 - count) ~ strip + stage, binomial, d)
s <- as.data.frame(summary(emmeans(share, "strip"), type = "response"))
for (k in 1:3) say(paste("logit-response", k, sep = "/"), c(s$prob[k], s$asymp.LCL[k], s$asymp.UCL[k]))
against <- rbind(c(-1, 1, 0), c(-1, 0, 1))
contrasts.of("logit-against", emmeans(share, "strip"), against)

# No old strip was watched late: the interaction of those two is aliased.
hole <- d[!(d$strip == "old" & d$stage == "late"), ]
holed <- lm(weight ~ strip * stage, hole)
means("hole", emmeans(holed, c("strip", "stage")))
means("hole-strip", emmeans(holed, "strip"))

s <- read.csv("../count-models/salamanders.csv")
s$spp <- factor(s$spp, c("GP", "PR", "DM", "EC-A", "EC-L", "DES-L", "DF")); s$mined <- factor(s$mined, c("yes", "no"))
sal <- glmmTMB(count ~ spp * mined + (1 | site), s, family = nbinom2)
g <- emmeans(sal, c("spp", "mined"))
t <- as.data.frame(g)
for (k in 1:14) say(paste("salamanders", k, sep = "/"), c(t$emmean[k], t$SE[k]))
t <- as.data.frame(emmeans(sal, "mined"))
for (k in 1:2) say(paste("salamanders-mined", k, sep = "/"), c(t$emmean[k], t$SE[k]))
q <- read.csv("../count-models/quine.csv")
quine <- glmmTMB(Days ~ Eth + Sex + Age + Lrn, transform(q, Age = factor(Age)), family = nbinom2)
contrasts.of("quine-age", emmeans(quine, "Age"), pairs.all(4))

# Simultaneous multipliers: groups of these sizes, all pairs or each against the first.
unlink("multipliers.csv")
cat("against,n1,n2,n3,n4,df,level,multiplier\n", file = "multipliers.csv")
row <- function(against, sizes, df, level, value) cat(paste(c(against, sizes, if (is.finite(df)) df else "Inf", level, formatC(value, digits = 9, format = "g")), collapse = ","), "\n", sep = "", file = "multipliers.csv", append = TRUE)
# Equal sizes, all pairs: the studentised range, exactly.
for (df in c(5, 20, Inf)) for (level in c(0.9, 0.95, 0.99)) row(0, rep(10, 4), df, level, qtukey(level, 4, df) / sqrt(2))
# All others: by the function above.
for (sizes in list(c(3, 10, 20, 5), c(40, 4, 4, 4))) for (against in 0:1) for (df in c(6, Inf)) {
  L <- if (against == 1) cbind(-1, diag(3)) else pairs.all(4)
  R <- cov2cor(L %*% diag(1 / sizes) %*% t(L))
  row(against, sizes, df, 0.95, quantile.of(R, df, 0.95))
}
cat(R.version.string, paste(sapply(c("emmeans", "mvtnorm", "glmmTMB"), function(p) paste(p, packageVersion(p))), collapse = ", "), "\n")
