# Makes mixed_models.csv and mixed_models_expected.csv: REML fits by lme4, Kenward-Roger by pbkrtest.
# Run: Rscript mixed_models.R   (Debian: r-cran-lme4 r-cran-pbkrtest r-cran-lmertest)
# Data: Dyestuff, Davies and Goldsmith (1972), table 6.3; Dyestuff2, Box and Tiao (1973), table 5.1.4;
# sleepstudy, Belenky et al. (2003), J. Sleep Res. 12, 1-12. 'Uneven' leaves rows out, for unequal groups.
suppressMessages({library(lme4); library(pbkrtest)})
s <- sleepstudy
sets <- list(
  dyestuff = data.frame(g = Dyestuff$Batch, x = 0, y = Dyestuff$Yield),
  dyestuff2 = data.frame(g = Dyestuff2$Batch, x = 0, y = Dyestuff2$Yield),
  dyestuffUneven = data.frame(g = Dyestuff$Batch, x = 0, y = Dyestuff$Yield)[-c(1, 2, 3, 7, 14, 15, 30), ],
  sleep = data.frame(g = s$Subject, x = s$Days - 4.5, y = s$Reaction),
  sleepUneven = data.frame(g = s$Subject, x = s$Days - 4.5, y = s$Reaction)[-c(2:9, 15, 33:37, 60, 100:104, 177), ],
  sleepSlopes = data.frame(g = s$Subject, x = s$Days - 4.5, y = s$Reaction))
control <- lmerControl(optimizer = "bobyqa", optCtrl = list(rhoend = 1e-12, maxfun = 1e5),
                       check.conv.singular = "ignore")
data <- NULL; out <- NULL
for (name in names(sets)) {
  d <- sets[[name]]
  data <- rbind(data, data.frame(set = name, group = d$g, x = d$x, y = d$y))
  sloped <- name == "sleepSlopes"; line <- any(d$x != 0)
  m <- if (sloped) lmer(y ~ x + (1 | g) + (0 + x | g), d, control = control)
       else if (line) lmer(y ~ x + (1 | g), d, control = control) else lmer(y ~ 1 + (1 | g), d, control = control)
  v <- as.data.frame(VarCorr(m))$vcov
  a <- as.matrix(vcovAdj(m)); p <- length(fixef(m))
  df <- sapply(1:p, function(k) Lb_ddf(as.numeric(1:p == k), vcov(m), vcovAdj(m)))
  put <- function(k, value) out <<- rbind(out, data.frame(set = name, what = k, value = sprintf("%.12g", value)))
  put("within", v[length(v)]); put("between", v[1]); if (sloped) put("slopes", v[2])
  put("criterion", REMLcrit(m))
  if (line) {
    f <- anova(lm(y ~ x, d), lm(y ~ x + g, d))
    put("lnPValue", pf(f$F[2], f$Df[2], f$Res.Df[2], lower.tail = FALSE, log.p = TRUE))
  }
  for (k in 1:p) {
    put(paste0("beta", k - 1), fixef(m)[k]); put(paste0("std", k - 1), sqrt(vcov(m)[k, k]))
    put(paste0("adjusted", k - 1), sqrt(a[k, k])); put(paste0("freedom", k - 1), df[k])
  }
}
write.csv(data, "mixed_models.csv", row.names = FALSE, quote = FALSE)
write.csv(out, "mixed_models_expected.csv", row.names = FALSE, quote = FALSE)
