// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/review/figures.h"

#include <QFont>
#include <QRectF>

#include <span>

class QPainter;

namespace levelbar::ui {

// The strength chart on paper: shapes and text, never a bitmap. Always in light colours.
struct PlotLook {
    QFont font;         // of the labels; its size is set from `point`
    double point = 1.0; // a typographic point in the painter's units
    double labelPoints = 7.0;
};

// Paints one figure into the box: band, line, dots, days below, kilograms on the left.
void paintStrengthPlot(QPainter& painter,
                       const QRectF& box,
                       const StrengthFigure& figure,
                       Day asOf,
                       const PlotLook& look);

// One line that says what the shapes of the figures mean; what none of them has is left out.
void paintPlotLegend(QPainter& painter,
                     const QRectF& line,
                     std::span<const StrengthFigure* const> figures,
                     const PlotLook& look);

} // namespace levelbar::ui
