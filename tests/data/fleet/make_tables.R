# Makes the check values of the fleet model: tests/data/reference/fleet_{record,fit,tool}.csv. Needs R with lme4, nlme
# and pbkrtest (Debian: r-cran-lme4 r-cran-nlme r-cran-pbkrtest). Run from the project's folder:
#   Rscript tests/data/fleet/make_tables.R
# Variances, log likelihood, slopes: lme4, its optimum polished; nlme must agree. Kenward-Roger: pbkrtest. Predictions
# of one more check: written out with full matrices from the definitions, derivatives by Richardson extrapolation.
suppressMessages({library(lme4); library(nlme); library(pbkrtest)})

simulated <- function(seed, tools, tau, sigma, most) {
  set.seed(seed)
  rows <- list()
  segment <- 0
  for (t in seq_len(tools)) {
    slope <- 0.25 + tau * rnorm(1)
    level <- rnorm(1)
    x <- runif(1)
    since <- x
    segment <- segment + 1
    for (i in seq_len(sample(most, 1))) {
      check <- function() rows[[length(rows) + 1]] <<-
        data.frame(tool = t, segment = segment, x = round(x, 3),
                   y = round(level + slope * (x - since) + sigma * rnorm(1), 3))
      check()
      if (runif(1) < 0.25) { segment <- segment + 1; level <- 0.3 * rnorm(1); since <- x; check() }
      x <- x + 0.25 + 1.25 * runif(1)
    }
  }
  do.call(rbind, rows)
}

published <- function(data, subject, x, y) {
  number <- match(as.character(data[[subject]]), unique(as.character(data[[subject]])))
  d <- data.frame(tool = number, segment = number, x = data[[x]], y = data[[y]])
  d[order(d$tool, d$x), ]
}

sets <- list(simulated_20 = simulated(1, 20, 0.4, 0.3, 5),
             simulated_60 = simulated(2, 60, 0.2, 0.3, 8),
             simulated_alike = simulated(9, 20, 0, 0.3, 5),
             orthodont = published(nlme::Orthodont, "Subject", "age", "distance"),
             oxboys = published(nlme::Oxboys, "Subject", "age", "height"),
             simulated_no_differences = simulated(10, 20, 0, 0.3, 5))  # REML puts the variance of slopes at 0

fitted <- function(d) {
  d$tool <- factor(d$tool); d$segment <- factor(d$segment)
  parts <- lFormula(y ~ 0 + segment + x + (0 + x | tool), d, REML = TRUE,
                    control = lmerControl(check.rankX = "silent.drop.cols", check.nobs.vs.nRE = "ignore"))
  deviance <- do.call(mkLmerDevfun, parts)
  best <- optimizeLmer(deviance)$par
  if (best > 1e-4) {  # polish: the root of the derivative is sharper than the minimum
    slope <- function(t) { h <- 1e-4 * t
      (8 * (deviance(t + h) - deviance(t - h)) - (deviance(t + 2 * h) - deviance(t - 2 * h))) / (12 * h) }
    best <- uniroot(slope, best * c(0.98, 1.02), tol = 1e-13, extendInt = "upX")$root
  } else best <- 0
  deviance(best)
  mkMerMod(environment(deviance), list(par = best, fval = deviance(best), feval = 0, conv = 0, message = ""),
           parts$reTrms, parts$fr)
}

richardson <- function(f, at, h) {  # central differences of orders h, h/2, h/4
  d <- lapply(c(h, h / 2, h / 4), function(e) (f(at + e) - f(at - e)) / (2 * e))
  e1 <- (4 * d[[2]] - d[[1]]) / 3; e2 <- (4 * d[[3]] - d[[2]]) / 3
  (16 * e2 - e1) / 15
}

record <- fits <- tools <- NULL
for (name in names(sets)) {
  d <- sets[[name]]
  record <- rbind(record, data.frame(set = name, d))
  m <- fitted(d)
  tau2 <- as.numeric(VarCorr(m)$tool); sigma2 <- sigma(m)^2
  f <- data.frame(tool = factor(d$tool), segment = factor(d$segment), x = d$x, y = d$y)
  Z <- t(as.matrix(getME(m, "Zt"))); X <- as.matrix(getME(m, "X")); y <- d$y; n <- length(y)
  ZZ <- Z %*% t(Z)
  if (tau2 > 0) {
    again <- lme(y ~ 0 + segment + x, f, random = ~ 0 + x | tool,
                 control = lmeControl(tolerance = 1e-12, msTol = 1e-14, niterEM = 200, maxIter = 500, msMaxIter = 500))
    stopifnot(abs(as.numeric(logLik(again)) - as.numeric(logLik(m))) < 1e-6,
              abs(again$sigma^2 / sigma2 - 1) < 1e-4, abs(fixef(again)["x"] / fixef(m)["x"] - 1) < 1e-4)
  }
  # The expected restricted information, as Kenward and Roger use it.
  V <- function(theta) theta[1] * ZZ + theta[2] * diag(n)
  projection <- function(Vi) Vi - Vi %*% X %*% solve(t(X) %*% Vi %*% X, t(X) %*% Vi)
  P <- projection(solve(V(c(tau2, sigma2))))
  information <- 0.5 * matrix(c(sum((P %*% ZZ) * t(P %*% ZZ)), sum((P %*% ZZ) * t(P)),
                                sum((P %*% ZZ) * t(P)), sum(P * t(P))), 2)
  W <- solve(information)
  if (tau2 > 0) {
    adjusted <- vcovAdj(m)
    krSe <- sqrt(adjusted["x", "x"])
    L <- matrix(0, 1, ncol(X)); L[ncol(X)] <- 1
    krDf <- getKR(KRmodcomp(m, L), "ddf")
    stopifnot(max(abs(attr(adjusted, "W") / W - 1)) < 1e-6)
  } else krSe <- krDf <- NA
  fits <- rbind(fits, data.frame(set = name, slope_variance = tau2, residual_variance = sigma2,
    log_likelihood = as.numeric(logLik(m)), slope = fixef(m)[["x"]], slope_se = sqrt(vcov(m)["x", "x"]),
    kr_se = krSe, kr_df = krDf, w_slope = W[1, 1], w_both = W[1, 2], w_residual = W[2, 2]))

  differences <- ranef(m)$tool[["x"]]
  for (t in unique(d$tool)) {
    own <- d[d$tool == t, ]
    newest <- max(own$segment)
    x0 <- max(own$x) + 1
    x00 <- numeric(ncol(X)); x00[match(paste0("segment", newest), colnames(X))] <- 1; x00[ncol(X)] <- x0
    z00 <- numeric(ncol(Z)); z00[match(t, unique(d$tool))] <- x0
    weights <- function(theta, fixed, random) {
      Vi <- solve(V(theta))
      as.vector(fixed %*% solve(t(X) %*% Vi %*% X, t(X) %*% Vi) + theta[1] * (random %*% t(Z)) %*% projection(Vi))
    }
    # Mean squared error of the predictor at known variances, without the check's own scatter.
    error <- function(theta, fixed, random) {
      k <- weights(theta, fixed, random)
      v <- V(theta)
      as.numeric(k %*% v %*% k - 2 * theta[1] * (k %*% Z %*% random) + theta[1] * sum(random^2))
    }
    theta <- c(tau2, sigma2)
    step <- c(if (tau2 > 0) 0.02 * tau2 else 1e-3 * sigma2, 0.02 * sigma2)
    along <- function(g, i) richardson(function(p) { q <- theta; q[i] <- p; g(q) }, theta[i], step[i])
    figures <- function(fixed, random, scatter) {
      dk <- cbind(along(function(q) weights(q, fixed, random), 1), along(function(q) weights(q, fixed, random), 2))
      known <- error(theta, fixed, random) + scatter * sigma2
      estimation <- 2 * sum(W * (t(dk) %*% V(theta) %*% dk))
      gradient <- c(along(function(q) error(q, fixed, random), 1), along(function(q) error(q, fixed, random), 2) + scatter)
      c(value = sum(weights(theta, fixed, random) * y), se = sqrt(known + estimation),
        df = 2 * known^2 / as.numeric(gradient %*% W %*% gradient))
    }
    slopeOnly <- function(v) { v[-length(v)] <- 0; v }
    inSlope <- figures(replace(numeric(ncol(X)), ncol(X), 1), z00 / x0, 0)
    check <- figures(x00, z00, 1)
    stopifnot(abs(inSlope["value"] - fixef(m)[["x"]] - differences[match(t, unique(d$tool))]) < 1e-7)
    tools <- rbind(tools, data.frame(set = name, tool = t, x = x0, slope = fixef(m)[["x"]] + differences[match(t, unique(d$tool))],
      slope_se = inSlope[["se"]], predicted = check[["value"]], se = check[["se"]], df = check[["df"]]))
  }
}

write <- function(table, file, what, digits) {
  path <- file.path("tests/data/reference", file)
  number <- function(v) if (is.numeric(v)) ifelse(is.na(v), "", formatC(v, digits = 9, format = "g", flag = "#")) else v
  version <- sprintf("%s, lme4 %s, nlme %s, pbkrtest %s", R.version.string, packageVersion("lme4"), packageVersion("nlme"),
                     packageVersion("pbkrtest"))
  writeLines(c(paste0("# source: ", what, "; ", version, "; tests/data/fleet/make_tables.R"),
               paste("# digits:", digits)), path)
  if (file != "fleet_record.csv") table[] <- lapply(table, number)
  table$tool <- if (is.null(table$tool)) NULL else as.integer(table$tool)
  suppressWarnings(write.table(table, path, append = TRUE, sep = ",", row.names = FALSE, quote = FALSE, eol = "\n"))
}
write(record, "fleet_record.csv", "simulated fleets; Orthodont and Oxboys as nlme ships them", "as printed")
write(fits, "fleet_fit.csv", "REML fits of y ~ 0 + segment + x + (0 + x | tool)", "7 significant")
write(tools, "fleet_tool.csv", "best linear unbiased predictions of slopes and of one more check at x", "7 significant")
