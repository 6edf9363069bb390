// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/review/figures.h"

#include <QByteArray>
#include <QString>

namespace levelbar::ui {

// A person's strength chart on its way into a file.
struct ChartSubject {
    StrengthFigure figure;
    Day asOf;
    QString lift; // "Barbell bench press", with its side
    QString code;
    QString name; // may be empty
};

enum class ChartFormat { Png, Svg, Csv };

// The bytes of the file. PNG: 1920 x 1080; SVG: shapes and text; CSV: see
// core/report/figure_table.h.
[[nodiscard]] QByteArray chartBytes(const ChartSubject& subject, ChartFormat format);

[[nodiscard]] QString chartEnding(ChartFormat format); // "png"

} // namespace levelbar::ui
