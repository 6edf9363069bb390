// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "ui/charts/strength_series.h"
#include "ui/charts/time_window.h"

#include <QWidget>

#include <optional>

class QCategoryAxis;
class QChart;
class QLabel;
class QValueAxis;

namespace levelbar::ui {

class TimeChartView;

// A person's strength over time and up to six weeks ahead, zoomed and moved by mouse and keys,
// and a line of text that reads out the dot under the pointer (or stepped to by key).
class StrengthChart : public QWidget {
    Q_OBJECT

public:
    explicit StrengthChart(QWidget* parent = nullptr);

    // What is zoomed in to stays so while the name is the same.
    void show(StrengthView view);

    // For whoever cannot see it: "Bench press: rising 0.4 % a week, 0.1 to 0.8, over 11 weeks."
    void setSummary(const QString& summary);

    [[nodiscard]] const StrengthView& view() const { return m_view; }

    [[nodiscard]] const TimeWindow& window() const { return m_window; }

    [[nodiscard]] QString readOut() const;

    // For tests: the series' points are what the figure holds.
    [[nodiscard]] const StrengthSeries& series() const { return m_series; }

protected:
    void changeEvent(QEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;

private:
    void connectView();
    void paintLooks();
    void setWhole(bool keepsWindow);
    void showWindow();
    void point(const QPointF& value);
    void step(int direction);
    void tell(std::size_t place);
    void say(const QString& text);

    [[nodiscard]] std::size_t placeCount() const;

    QChart* m_chart;
    TimeChartView* m_graphics;
    QLabel* m_legend;
    QLabel* m_readOut;
    QCategoryAxis* m_days;
    QValueAxis* m_values;
    StrengthSeries m_series;
    StrengthView m_view;
    TimeWindow m_window;
    std::optional<std::size_t> m_current; // the dots, then the weeks of the forecast
};

} // namespace levelbar::ui
