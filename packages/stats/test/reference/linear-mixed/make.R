# Reference fits of linear mixed models, by lme4. Run inside this folder: Rscript make.R
# The blueberry and oilseed rape tables are extracts that lie here already; the others come with lme4.
library(lme4)
library(jsonlite)
for (d in c("sleepstudy", "Penicillin", "Pastes", "Dyestuff", "Dyestuff2", "cake"))
  write.csv(get(d), paste0(d, ".csv"), row.names = FALSE, quote = FALSE)
berries <- read.csv("blueberry.csv")
berries$field <- paste(berries$state, berries$farm)
berries$year_of_field <- paste(berries$field, berries$year)
long <- function(v) {
  one <- function(t) data.frame(berries[, c("state", "field", "year_of_field")], row = seq_len(nrow(berries)), trt = t, y = berries[[paste0(v, "_", t)]])
  l <- do.call(rbind, lapply(c("bagged", "open", "hand"), one))
  l$trt <- factor(l$trt, levels = c("open", "bagged", "hand"))
  l[!is.na(l$y), ]
}
wide <- read.csv("pods.csv")
pods <- data.frame(wide[rep(seq_len(nrow(wide)), 20), c("field", "place")], seeds = unlist(wide[, paste0("pod", 1:20)]))
pods$plot <- rep(seq_len(nrow(wide)), 20)

tight <- lmerControl(optimizer = "bobyqa", calc.derivs = FALSE, optCtrl = list(rhobeg = 0.2, rhoend = 1e-10, maxfun = 1e5), check.conv.singular = "ignore")
told <- function(formula, data, REML) {
  m <- lmer(formula, data, REML = REML, control = tight)
  co <- coef(summary(m))
  v <- as.data.frame(VarCorr(m))
  list(n = nobs(m), logLik = as.numeric(logLik(m)), df = attr(logLik(m), "df"), aic = AIC(m), sigma = sigma(m),
    coef = lapply(setNames(rownames(co), rownames(co)), function(r) unname(co[r, 1:2])),
    sd = Map(function(g, a, b, s) list(group = g, of = a, with = if (is.na(b)) NULL else b, value = s), v$grp, v$var1, v$var2, v$sdcor)[v$grp != "Residual"] |> unname())
}
both <- function(name, formula, data) setNames(list(told(formula, data, FALSE), told(formula, data, TRUE)), paste0(name, c(", full", ", restricted")))
fits <- c(
  both("sleepstudy: intercept", Reaction ~ Days + (1 | Subject), sleepstudy),
  both("sleepstudy: correlated slope", Reaction ~ Days + (Days | Subject), sleepstudy),
  both("sleepstudy: uncorrelated slope", Reaction ~ Days + (Days || Subject), sleepstudy),
  both("Penicillin: crossed", diameter ~ 1 + (1 | plate) + (1 | sample), Penicillin),
  both("Pastes: nested", strength ~ 1 + (1 | sample) + (1 | batch), Pastes),
  both("Dyestuff", Yield ~ 1 + (1 | Batch), Dyestuff),
  both("Dyestuff2: no variance", Yield ~ 1 + (1 | Batch), Dyestuff2),
  both("cake: slope beside a crossed intercept", angle ~ recipe + temp + (temp | replicate) + (1 | recipe:replicate), transform(cake, recipe = as.character(recipe))),
  both("blueberry: weight", y ~ trt + (1 | field) + (1 | year_of_field) + (1 | row), long("weight")),
  both("blueberry: weight by state", y ~ trt * state + (1 | field) + (1 | year_of_field) + (1 | row), long("weight")),
  both("blueberry: fruit set", y ~ trt + (1 | field) + (1 | year_of_field) + (1 | row), long("set")),
  both("blueberry: fruit set by state", y ~ trt * state + (1 | field) + (1 | year_of_field) + (1 | row), long("set")),
  both("blueberry: wild bees", log1p(wild_bees) ~ state + transect + (1 | field) + (1 | year_of_field), berries),
  both("blueberry: weight by visits", weight_open ~ log1p(honey_bee) + log1p(wild_bees) + state + factor(year) + (1 | field) + (1 | year_of_field), berries),
  both("oilseed rape: seeds", seeds ~ place + (1 | field) + (1 | plot), pods)
)
modes <- ranef(lmer(Reaction ~ Days + (Days | Subject), sleepstudy, control = tight))$Subject
write_json(list(made = paste(R.version.string, "lme4", packageVersion("lme4")), fits = fits,
  modes = list(subject = rownames(modes), intercept = modes[, 1], slope = modes[, 2])),
  "expected.json", digits = NA, auto_unbox = TRUE, pretty = 1, null = "null")
