// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/review/figures.h"

#include <QWidget>

#include <array>
#include <optional>

class QAreaSeries;
class QCategoryAxis;
class QChart;
class QLabel;
class QLineSeries;
class QScatterSeries;
class QValueAxis;

namespace levelbar::ui {

class SafeChartView;

// A person's strength over time: dots told apart by how their set is known, the line with its
// band, and a line of text that reads out the dot under the pointer (or stepped to by key).
class StrengthChart : public QWidget {
    Q_OBJECT

public:
    explicit StrengthChart(QWidget* parent = nullptr);

    void show(const StrengthFigure& figure, Day asOf);

    [[nodiscard]] QString readOut() const;

    // For tests: the series' points are what the figure holds.
    [[nodiscard]] int dotCount() const;
    [[nodiscard]] int linePointCount() const;

protected:
    void changeEvent(QEvent* event) override;

private:
    enum Look { Counted, Unsized, Accepted, Group, Sheet, Tested, LookCount };

    static Look lookOf(const StrengthDot& dot);
    void makeSeries();
    void paintLooks();
    void setRanges(const StrengthFigure& figure, Day asOf);
    void point(const QPointF& value);
    void step(int direction);
    void tell(std::size_t dot);

    QChart* m_chart;
    SafeChartView* m_view;
    QLabel* m_readOut;
    QCategoryAxis* m_days;
    QValueAxis* m_kilograms;
    QLineSeries* m_upper;
    QLineSeries* m_lower;
    QAreaSeries* m_band;
    QLineSeries* m_line;
    std::array<QScatterSeries*, LookCount> m_dots{};
    QScatterSeries* m_marker;
    StrengthFigure m_figure;
    std::optional<std::size_t> m_current;
};

} // namespace levelbar::ui
