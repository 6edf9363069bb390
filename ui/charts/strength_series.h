// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "ui/charts/strength_words.h"

#include <QPointF>

#include <array>
#include <optional>

class QAbstractSeries;
class QAreaSeries;
class QCategoryAxis;
class QChart;
class QLineSeries;
class QPalette;
class QScatterSeries;
class QValueAxis;

namespace levelbar::ui {

// How a dot is drawn, on screen and on paper: by how its set is known.
enum class DotLook { Counted, Unsized, Accepted, Group, Sheet, Tested };
inline constexpr std::size_t kDotLooks = 6;

[[nodiscard]] DotLook lookOf(const StrengthDot& dot);
[[nodiscard]] QString lookName(DotLook look);

// The lines, bands and dots of a strength chart: which there are and how they look. The past has
// a full line and a filled band, the forecast a dashed line and a hatched band; a second exercise
// a line of dots and dashes and triangles.
class StrengthSeries {
public:
    // The chart takes the axes and owns all series; it must outlive this.
    StrengthSeries(QChart* chart, QCategoryAxis* days, QValueAxis* values);

    void fill(const StrengthView& view);

    // Lay-offs are shaded over the whole height and pain is marked at its foot.
    void setHeight(const StrengthView& view, double low, double high);

    // The goal is a line up to its day, or to the end of the window.
    void setGoal(const StrengthView& view, Day from, Day to);

    void paint(const QPalette& tones);

    // What the marks mean, as rich text that wraps: the legend of a chart cuts its words off. Only
    // what the view holds.
    [[nodiscard]] static QString legend(const StrengthView& view, const QPalette& tones);

    void mark(const std::optional<QPointF>& dot);

    [[nodiscard]] int dotCount() const;
    [[nodiscard]] int linePointCount() const;
    [[nodiscard]] int forecastPointCount() const;
    [[nodiscard]] int goalPointCount() const;

private:
    struct Band {
        QLineSeries* upper;
        QLineSeries* lower;
        QAreaSeries* area;
    };

    [[nodiscard]] Band makeBand() const;
    void attach(QAbstractSeries* series);
    void makeDots();
    void paintLines(const QPalette& tones);
    void paintDots(const QPalette& tones);

    QChart* m_chart;
    QCategoryAxis* m_days;
    QValueAxis* m_values;
    Band m_layOffs;
    Band m_past;
    Band m_ahead;
    QLineSeries* m_line;
    QLineSeries* m_forecast;
    QLineSeries* m_goal;
    QLineSeries* m_otherLine;
    QLineSeries* m_otherForecast;
    QScatterSeries* m_otherDots;
    std::array<QScatterSeries*, kDotLooks> m_dots{};
    QScatterSeries* m_pains;
    QScatterSeries* m_marker;
};

} // namespace levelbar::ui
