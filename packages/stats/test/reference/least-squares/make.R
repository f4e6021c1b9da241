# Least squares by R 4.2.2 lm on small invented designs. Run inside this folder; prints one line per quantity, copied into the tests by name.
digits <- function(x) paste(formatC(x, digits = 15, format = "g"), collapse = " ")
say <- function(name, x) cat(name, digits(x), "\n", sep = " ", file = "values.txt", append = TRUE)
unlink("values.txt")
v <- function(X) solve(crossprod(X))[2, 2]
arm <- rep(0:1, each = 4)
date <- c(2, 4, 5, 7, 6, 8, 9, 11)
say("inflation-date", v(cbind(1, arm, date)) / v(cbind(1, arm)))
apart <- c(1, 2, 3, 4, 8, 9, 10, 11)
say("inflation-apart", v(cbind(1, arm, apart)) / v(cbind(1, arm)))
block <- rep(0:1, each = 4); arm2 <- c(0, 0, 1, 1, 0, 0, 1, 1); far <- c(10, 12, 13, 15, 60, 63, 64, 66)
say("inflation-blocks", v(cbind(1, arm2, block, far)) / v(cbind(1, arm2, block)))
say("inflation-blocks-forgotten", v(cbind(1, arm2, far)) / v(cbind(1, arm2)))
share <- c(0.5, 0.5, 0.25, 0, 1, 0.75, 0.5, 0.25)
say("inflation-observer", v(cbind(1, arm, share)) / v(cbind(1, arm)))
# Before/after: 12 cells with a column per field and one for period, then the six differences.
field <- rep(1:6, 2); period <- rep(0:1, each = 6); treated <- as.numeric(field > 3) * period
stage <- c(62, 63, 61, 63, 62, 64, 66, 67, 65, 69, 68, 69)
fields <- model.matrix(~ factor(field))[, -1]
say("inflation-cells", v(cbind(1, treated, fields, period, stage)) / v(cbind(1, treated, fields, period)))
say("inflation-differences", v(cbind(1, rep(0:1, each = 3), c(4, 4, 4, 6, 6, 5))) / v(cbind(1, rep(0:1, each = 3))))
# Edge against centre, four fields, five counts each of edge (3 before noon) and centre (2 before noon).
f <- rep(1:4, each = 10); edge <- rep(rep(1:0, each = 5), 4); hour <- rep(c(-2, -2, -2, 2, 2, -2, -2, 2, 2, 2), 4)
fc <- model.matrix(~ factor(f))[, -1]
say("inflation-counts", v(cbind(1, edge, fc, hour)) / v(cbind(1, edge, fc)))
x1 <- 1:8; x2 <- c(1.1, 1.9, 3.2, 3.9, 5.1, 6.2, 6.8, 8.1); x3 <- rep(2:1, 4)
say("vif", diag(solve(cor(cbind(x1, x2, x3)))))
# Generalised: a factor of three levels beside a measured column, by determinants of correlation matrices (Fox & Monette).
kind <- factor(c("a", "a", "b", "b", "b", "c", "c", "c")); K <- model.matrix(~ kind)[, -1]; w <- c(1, 2, 2, 4, 3, 5, 7, 6)
R <- cor(cbind(K, w))
say("gvif-factor", det(R[1:2, 1:2]) * det(R[3, 3, drop = FALSE]) / det(R))
# Several levels, blocks, nuisance.
z <- c(0.1, 0.4, 0.35, 1.2, 0.9, 1.6, 1.1, 2.2, 1.7, 2.9)
level <- factor(c(0, 0, 0, 1, 1, 1, 2, 2, 2, 2)); b <- factor(c(0, 1, 0, 1, 0, 1, 0, 1, 0, 1)); day <- 20000 + c(3, 1, 4, 1, 5, 9, 2, 6, 5, 3)
fit <- lm(z ~ b + day + level)
s <- summary(fit)
say("levels-estimates", coef(s)[4:5, 1]); say("levels-se", coef(s)[4:5, 2]); say("levels-t", coef(s)[4:5, 3]); say("levels-p", coef(s)[4:5, 4])
say("levels-sd", s$sigma); say("levels-intercept", coef(s)[1, 1:2])
again <- summary(lm(z ~ b + day + relevel(level, "1")))
say("levels-2-against-1", coef(again)[5, ])
slope <- summary(lm(c(1, 2, 4, 4) ~ c(0, 1, 2, 3)))
say("slope", coef(slope)[2, ])
d <- c(0.5, 0.1, 0.7, 0.4, 0.9, 0.3); nd <- c(1, -1, 2, 0, 3, 1)
say("pairs-nuisance", coef(summary(lm(d ~ nd)))[1, ])
# Longley's data (J.W. Longley 1967), as shipped with R: near collinear columns.
l <- summary(lm(Employed ~ GNP.deflator + GNP + Unemployed + Armed.Forces + Population + Year, longley))
say("longley-coefficients", coef(l)[, 1]); say("longley-se", coef(l)[, 2]); say("longley-sd", l$sigma)
say("longley-vif", diag(solve(cor(longley[, 1:6]))))
