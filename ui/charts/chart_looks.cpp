// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/charts/chart_looks.h"

#include "ui/theme.h"

#include <QAbstractAxis>

namespace levelbar::ui {

void paintChartGround(QChart& chart, const QPalette& tones)
{
    const Colours more = colours(tones);
    const QColor text = tones.color(QPalette::Text);
    chart.setBackgroundBrush(tones.color(QPalette::Base));
    chart.setBackgroundRoundness(0);
    for (QAbstractAxis* axis : chart.axes()) {
        axis->setLabelsColor(text);
        axis->setTitleBrush(text);
        axis->setGridLineColor(more.grid);
        axis->setLinePenColor(more.quiet);
    }
}

} // namespace levelbar::ui
