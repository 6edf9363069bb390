// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QChart>
#include <QPalette>

namespace levelbar::ui {

// Ground, axes and grid in the theme's tones; the series are the chart's own business.
void paintChartGround(QChart& chart, const QPalette& tones);

} // namespace levelbar::ui
