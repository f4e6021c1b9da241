# Models of counts by glmmTMB, for the tests of packages/survey/src/contrast/count-model.ts.  Rscript make.R
# Writes watches.csv (made up, nothing drawn at random) and values.csv.
suppressMessages(library(glmmTMB))
scatter <- c(0.6, 1.5, 1, 0.8, 1.3)
pattern <- c(-1, 1, -0.4, 0.4, -1.3, 1.3)
d <- expand.grid(plot = 1:2, visit = 1:4, field = 1:12)
d$strip <- ifelse(d$field > 6, "yes", "no")
d$crop <- ifelse(d$field %% 2 == 0, "sunflower", "cherry")
d$minutes <- ifelse((d$field + d$visit) %% 3 == 0, 20, 10)
d$flowers <- 100 + 20 * ((5 * d$field + 3 * d$visit + d$plot) %% 7)
d$count <- round(0.9 * d$minutes * ifelse(d$strip == "yes", 1.6, 1) * exp(0.5 * pattern[(d$field - 1) %% 6 + 1]) * scatter[(3 * d$field + 2 * d$visit) %% 5 + 1]) +
  (7 * d$field + 5 * d$visit + 3 * d$plot) %% 6
d$other <- round(0.6 * d$minutes * exp(-0.3 * pattern[(d$field - 1) %% 6 + 1]) * scatter[(d$field + 4 * d$visit) %% 5 + 1]) + (3 * d$field + 2 * d$visit + d$plot) %% 4
write.csv(d[c("field", "crop", "strip", "visit", "plot", "minutes", "flowers", "count", "other")], "watches.csv", row.names = FALSE, quote = FALSE)

# totals by visit; flowers are means weighed by minutes, minutes the mean of a watch
v <- do.call(rbind, lapply(split(d, list(d$visit, d$field)), function(x) data.frame(
  field = x$field[1], crop = x$crop[1], strip = x$strip[1], count = sum(x$count), other = sum(x$other), minutes = sum(x$minutes),
  watches = nrow(x), flowers = sum(x$flowers * x$minutes) / sum(x$minutes))))
told <- function(name, fit, term = "stripyes") data.frame(name = name, estimate = fixef(fit)$cond[[term]], se = sqrt(vcov(fit)$cond[term, term]))
values <- rbind(
  told("plain", glmmTMB(count ~ crop + strip + offset(log(minutes)) + (1 | field), v, family = nbinom2)),
  told("minutes", glmmTMB(count ~ crop + log(minutes / watches) + strip + offset(log(watches)) + (1 | field), v, family = nbinom2)),
  told("flowers", glmmTMB(count ~ crop + log(flowers) + strip + offset(log(minutes)) + (1 | field), v, family = nbinom2)),
  told("shares", glmmTMB(cbind(count, other) ~ crop + strip + (1 | field), v, family = betabinomial)))
values[-1] <- signif(values[-1], 8)
write.csv(values, "values.csv", row.names = FALSE, quote = FALSE)
