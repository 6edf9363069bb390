# SPDX-FileCopyrightText: 2026 The Levelbar developers
# SPDX-License-Identifier: GPL-3.0-or-later
# Our line and trend beside R's lm() and StructTS(type = "trend"): the same series, in one run, the
# answers before the times.
#   Rscript tests/bench/trend_in_r.R build/bench/tests/bench/levelbar_trend_series
program <- commandArgs(trailingOnly = TRUE)[1]
all <- read.csv(text = system2(program, stdout = TRUE))
timed <- function(work, repeats) {
  1e6 * system.time(for (i in seq_len(repeats)) work())[["elapsed"]] / repeats
}
rows <- lapply(split(all, all$series), function(s) {
  y <- 100 * log(s$value)
  fit <- lm(y ~ s$week)
  bounds <- confint(fit, level = 0.9)[2, ]
  structural <- StructTS(ts(y), type = "trend")
  data.frame(
    slope = abs(coef(fit)[[2]] - s$line[1]) / abs(coef(fit)[[2]]),
    interval = max(abs(bounds - c(s$line_low[1], s$line_high[1]))),
    level_r = structural$fitted[length(y), "level"],
    level = 100 * log(s$level[1]),
    change_r = mean(tail(tsSmooth(structural)[, "slope"], 8)),
    change = s$change[1],
    inside = abs(mean(tail(tsSmooth(structural)[, "slope"], 8)) - s$change[1]) <=
      (s$change_high[1] - s$change_low[1]) / 2,
    lm_us = timed(function() lm(y ~ s$week), 50),
    structural_us = timed(function() StructTS(ts(y), type = "trend"), 3),
    line_us = s$line_us[1],
    trend_us = s$trend_us[1])
})
table <- do.call(rbind, rows)
cat(sprintf("Series: %d of %d values\n", nrow(table), nrow(all) / nrow(table)))
cat(sprintf("Slope of the line, largest relative difference to lm: %.1e; of its interval: %.1e\n",
            max(table$slope), max(table$interval)))
cat(sprintf("Level today, ours and StructTS: median difference %.2f %%, correlation %.4f\n",
            median(abs(table$level - table$level_r)), cor(table$level, table$level_r)))
cat(sprintf("Change a week over the last eight: median difference %.2f points, correlation %.2f; StructTS inside our interval: %.0f %%\n",
            median(abs(table$change - table$change_r)), cor(table$change, table$change_r),
            100 * mean(table$inside)))
cat(sprintf("lm %.0f us, our line %.2f us: %.0f times\n", median(table$lm_us),
            median(table$line_us), median(table$lm_us) / median(table$line_us)))
cat(sprintf("StructTS %.0f us, our trend %.1f us: %.0f times\n", median(table$structural_us),
            median(table$trend_us), median(table$structural_us) / median(table$trend_us)))
