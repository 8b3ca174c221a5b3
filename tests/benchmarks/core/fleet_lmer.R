# Times R's lmer on a fleet written by fleet_ratio: levels of the segments as random intercepts, which suits lmer best
# (as fixed effects, as our model has them, they would make its design matrix as wide as the fleet).
#   Rscript fleet_lmer.R FILE TURNS → processor seconds of the fit (median), variance of slopes, variance of checks
suppressMessages(library(lme4))
arguments <- commandArgs(trailingOnly = TRUE)
d <- read.csv(arguments[1])
d$tool <- factor(d$tool)
d$segment <- factor(d$segment)
seconds <- sapply(seq_len(as.integer(arguments[2])), function(i)
  sum(system.time(m <<- lmer(y ~ x + (1 | segment) + (0 + x | tool), d, REML = TRUE))[c("user.self", "sys.self")]))
cat(median(seconds), as.numeric(VarCorr(m)$tool), sigma(m)^2, "\n")
