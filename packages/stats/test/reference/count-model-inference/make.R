suppressMessages({library(glmmTMB); library(lme4)})
cbpp <- read.csv("../count-models/cbpp.csv"); cbpp$period <- factor(cbpp$period); cbpp$herd <- factor(cbpp$herd)
sal <- read.csv("../count-models/salamanders.csv")
sal$spp <- factor(sal$spp, levels = c("GP", "PR", "DM", "EC-A", "EC-L", "DES-L", "DF")); sal$mined <- factor(sal$mined, levels = c("yes", "no"))
out <- character(); put <- function(name, ...) out <<- c(out, paste(c(gsub(" ", "-", name), sprintf("%.12g", c(...))), collapse = " "))
ctl <- glmmTMBControl(optCtrl = list(iter.max = 5000, eval.max = 5000, rel.tol = 1e-14, x.tol = 1e-12))
fits <- list(
  cbpp = glmmTMB(cbind(incidence, size - incidence) ~ period + (1 | herd), cbpp, family = binomial, control = ctl),
  poisson = glmmTMB(count ~ spp + mined + (1 | site), sal, family = poisson, control = ctl),
  nb2 = glmmTMB(count ~ spp + mined + (1 | site), sal, family = nbinom2, control = ctl),
  nb1 = glmmTMB(count ~ spp + mined + (1 | site), sal, family = nbinom1, control = ctl),
  zinb2 = glmmTMB(count ~ spp + mined + (1 | site), ziformula = ~ mined, sal, family = nbinom2, control = ctl))
for (name in names(fits)) put(paste("aic", name), AIC(fits[[name]]), attr(logLik(fits[[name]]), "df"), nobs(fits[[name]]))
small <- list(
  "mining" = update(fits$nb2, . ~ . - mined), "species" = update(fits$nb2, . ~ . - spp),
  "sites" = glmmTMB(count ~ spp + mined, sal, family = nbinom2, control = ctl))
for (name in names(small)) { a <- anova(small[[name]], fits$nb2); put(paste("lr", name), a$Chisq[2], a$"Chi Df"[2], a$"Pr(>Chisq)"[2]) }
herds <- anova(glmmTMB(cbind(incidence, size - incidence) ~ period, cbpp, family = binomial, control = ctl), fits$cbpp)
put("lr herds", herds$Chisq[2], herds$"Chi Df"[2], herds$"Pr(>Chisq)"[2])
wald <- function(name, fit, parm, level = 0.95) { b <- fixef(fit)$cond[parm]; se <- sqrt(vcov(fit)$cond[parm, parm]); z <- qnorm((1 + level) / 2); put(name, b, se, b - z * se, b + z * se) }
wald("wald cbpp period2", fits$cbpp, "period2"); wald("wald nb2 minedno", fits$nb2, "minedno"); wald("wald nb2 minedno 0.9", fits$nb2, "minedno", 0.9)
# A difference of two coefficients.
d <- c(0, 0, 0, 0, -1, 1, 0, 0); b <- sum(d * fixef(fits$nb2)$cond); se <- sqrt(drop(d %*% vcov(fits$nb2)$cond %*% d))
put("wald nb2 difference", b, se, b - qnorm(.975) * se, b + qnorm(.975) * se)
put("t", qt(.975, c(3, 14, 21)))
for (parm in 1:4) put(paste("profile cbpp", parm), suppressWarnings(confint(fits$cbpp, parm = parm, method = "uniroot"))[1, 1:2])
put("profile cbpp sd", exp(suppressWarnings(confint(fits$cbpp, parm = 5, method = "uniroot"))[1, 1:2]))
for (parm in c(1, 2, 8)) put(paste("profile nb2", parm), suppressWarnings(confint(fits$nb2, parm = parm, method = "uniroot"))[1, 1:2])
put("profile nb2 sd", exp(suppressWarnings(confint(fits$nb2, parm = 10, method = "uniroot"))[1, 1:2]))
put("profile nb2 8 0.9", suppressWarnings(confint(fits$nb2, parm = 8, method = "uniroot", level = 0.9))[1, 1:2])
q <- glmer(cbind(incidence, size - incidence) ~ period + (1 | herd), cbpp, family = binomial, nAGQ = 25, control = glmerControl(optimizer = "bobyqa", tolPwrss = 1e-12, optCtrl = list(rhoend = 1e-9)))
put("quadrature cbpp", fixef(q), sqrt(unlist(VarCorr(q))))
writeLines(out, "values.txt")
