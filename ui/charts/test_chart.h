// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/review/test_figure.h"

#include <QWidget>

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

// The results of one test through time with band and forecast, drawn as the strength chart is.
class TestChart : public QWidget {
    Q_OBJECT

public:
    explicit TestChart(QWidget* parent = nullptr);

    // `summary`: for whoever cannot see it.
    void show(const TestFigure& figure, Day today, const QString& summary);

    [[nodiscard]] QString readOut() const;
    [[nodiscard]] int valueCount() const;
    [[nodiscard]] int forecastPointCount() const;

protected:
    void changeEvent(QEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;

private:
    struct Band {
        QLineSeries* upper;
        QLineSeries* lower;
        QAreaSeries* area;
        QLineSeries* line;

        void fill(const std::vector<BandPoint>& points) const;
    };

    [[nodiscard]] Band makeBand();
    void paintLooks();
    void setRanges(Day today);
    void step(int direction);
    void point(const QPointF& value);
    void tell(std::size_t place);

    QChart* m_chart;
    SafeChartView* m_view;
    QLabel* m_readOut;
    void labelDays();

    Day m_from; // shown
    Day m_to;
    QCategoryAxis* m_days;
    QValueAxis* m_values;
    Band m_past;
    Band m_ahead;
    QScatterSeries* m_dots;
    QScatterSeries* m_marker;
    TestFigure m_figure;
    std::optional<std::size_t> m_current;
};

} // namespace levelbar::ui
