// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/charts/strength_chart.h"

#include "ui/charts/calendar_axis.h"
#include "ui/charts/chart_looks.h"
#include "ui/charts/time_chart_view.h"

#include <QCategoryAxis>
#include <QChart>
#include <QEvent>
#include <QLabel>
#include <QLegend>
#include <QLocale>
#include <QVBoxLayout>
#include <QValueAxis>

#include <algorithm>

namespace levelbar::ui {

namespace {

constexpr int kDaysAround = 5;
constexpr int kGoalDaysAhead = 84; // a goal's day farther off would squeeze the past

// The values that lie in the window, in the chart's scale.
class ValueRange {
public:
    ValueRange(const TimeWindow& window, const ChartScale& scale)
        : m_window(window)
        , m_scale(scale)
    {
    }

    void take(const StrengthCourse& course)
    {
        for (const StrengthDot& dot : course.figure.dots) {
            take(dot.day, dot.kilograms);
        }
        for (const auto* band : {&course.figure.band, &course.forecast}) {
            for (const BandPoint& point : *band) {
                take(point.day, point.low);
                take(point.day, point.high);
            }
        }
    }

    void take(const StrengthGoal& goal)
    {
        for (const Day day : {m_window.from(), m_window.to()}) {
            take(day, goal.load.kilograms());
        }
    }

    // Low and high with some room; 0 and 1 when nothing lies there.
    [[nodiscard]] std::pair<double, double> withRoom() const
    {
        if (m_high <= m_low) {
            return {0.0, 1.0};
        }
        const double room = 0.08 * (m_high - m_low);
        return {std::max(0.0, m_low - room), m_high + room};
    }

private:
    void take(Day day, double kilograms)
    {
        if (day >= m_window.from() && day <= m_window.to()) {
            const double value = m_scale.of(kilograms, day);
            m_low = std::min(m_low, value);
            m_high = std::max(m_high, value);
        }
    }

    const TimeWindow& m_window;
    const ChartScale& m_scale;
    double m_low = 1e9;
    double m_high = 0.0;
};

} // namespace

StrengthChart::StrengthChart(QWidget* parent)
    : QWidget(parent)
    , m_chart(new QChart)
    , m_graphics(new TimeChartView(m_chart, this))
    , m_legend(new QLabel(this))
    , m_readOut(new QLabel(this))
    , m_days(new QCategoryAxis(m_chart))
    , m_values(new QValueAxis(m_chart))
    , m_series(m_chart, m_days, m_values)
{
    m_graphics->setObjectName(QStringLiteral("strengthChartView"));
    setSummary(tr("Strength chart."));
    m_graphics->setToolTip(tr("Drag over a stretch to see it larger; the wheel or + and - zoom; "
                              "Shift with an arrow moves; a double click or 0 shows everything"));
    m_readOut->setObjectName(QStringLiteral("strengthReadOut"));
    m_readOut->setTextFormat(Qt::PlainText);
    m_readOut->setWordWrap(true);
    m_readOut->setMinimumHeight(m_readOut->fontMetrics().height() + 8);
    m_chart->setMargins(QMargins(4, 4, 24, 4));
    m_chart->legend()->hide();
    QFont small = font();
    small.setPointSizeF(small.pointSizeF() * 0.9);
    m_legend->setFont(small);
    m_legend->setObjectName(QStringLiteral("strengthLegend"));
    m_legend->setTextFormat(Qt::RichText);
    m_legend->setWordWrap(true);
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->addWidget(m_legend);
    layout->addWidget(m_graphics, 1);
    layout->addWidget(m_readOut);
    connectView();
    paintLooks();
}

void StrengthChart::connectView()
{
    connect(m_graphics, &SafeChartView::pointedAt, this, &StrengthChart::point);
    connect(m_graphics, &SafeChartView::stepped, this, &StrengthChart::step);
    connect(m_graphics, &TimeChartView::stretchWanted, this, [this](double from, double to) {
        m_window.show(dayAtPlace(from), dayAtPlace(to));
        showWindow();
    });
    connect(m_graphics,
            &TimeChartView::zoomWanted,
            this,
            [this](double factor, const std::optional<double>& about) {
                const Day middle = m_window.from() + (m_window.to() - m_window.from()) / 2;
                m_window.zoom(factor, about ? dayAtPlace(*about) : middle);
                showWindow();
            });
    connect(m_graphics, &TimeChartView::moveWanted, this, [this](double share) {
        m_window.move(share);
        showWindow();
    });
    connect(m_graphics, &TimeChartView::allWanted, this, [this] {
        m_window.showAll();
        showWindow();
    });
}

void StrengthChart::paintLooks()
{
    const QPalette tones = palette();
    paintChartGround(*m_chart, tones);
    m_series.paint(tones);
    m_legend->setText(StrengthSeries::legend(m_view, tones));
}

void StrengthChart::show(StrengthView view)
{
    const bool isSame = view.name == m_view.name && !m_view.course.figure.dots.empty();
    m_view = std::move(view);
    m_current.reset();
    m_graphics->setCrosshair(std::nullopt);
    m_values->setTitleText(m_view.scale.axisTitle());
    m_series.fill(m_view);
    m_series.paint(palette());
    m_legend->setText(StrengthSeries::legend(m_view, palette()));
    setWhole(isSame);
    showWindow();
    say(m_view.course.figure.dots.empty()
            ? tr("Nothing to show for this exercise and side.")
            : tr("Point at a dot, or step with the left and right keys."));
}

void StrengthChart::setWhole(bool keepsWindow)
{
    Day from = m_view.asOf - TimeWindow::kFewestOfAll;
    Day to = m_view.asOf;
    const auto take = [&](const StrengthCourse& course) {
        if (!course.figure.dots.empty()) {
            from = std::min(from, course.figure.dots.front().day);
        }
        if (!course.forecast.empty()) {
            to = std::max(to, course.forecast.back().day);
        }
    };
    take(m_view.course);
    if (m_view.other) {
        take(*m_view.other);
    }
    if (m_view.goal && m_view.goal->by) {
        to = std::max(to, std::min(*m_view.goal->by, m_view.asOf + kGoalDaysAhead));
    }
    if (keepsWindow) {
        m_window.changeWhole(from - kDaysAround, to + kDaysAround);
    } else {
        m_window.setWhole(from - kDaysAround, to + kDaysAround);
    }
}

void StrengthChart::showWindow()
{
    labelCalendar(*m_days,
                  m_window.from(),
                  m_window.to(),
                  locale(),
                  labelsIn(width(), QFontMetricsF(font())));
    ValueRange range(m_window, m_view.scale);
    range.take(m_view.course);
    if (m_view.other) {
        range.take(*m_view.other);
    }
    if (m_view.goal) {
        range.take(*m_view.goal);
    }
    const auto [low, high] = range.withRoom();
    m_values->setRange(low, high);
    m_values->applyNiceNumbers();
    const double span = high - low;
    m_values->setLabelFormat(span < 0.8 ? QStringLiteral("%.2f")
                             : span < 8 ? QStringLiteral("%.1f")
                                        : QStringLiteral("%.0f"));
    m_series.setHeight(m_view, m_values->min(), m_values->max());
    m_series.setGoal(m_view, m_window.from(), m_window.to());
}

QString StrengthChart::readOut() const
{
    return m_readOut->text();
}

std::size_t StrengthChart::placeCount() const
{
    const StrengthCourse& course = m_view.course;
    return course.figure.dots.size() + (course.forecast.empty() ? 0 : course.forecast.size() - 1);
}

void StrengthChart::point(const QPointF& value)
{
    constexpr double kAcross = 40.0; // spans of the axes that count as equally far
    const StrengthCourse& course = m_view.course;
    const Day day = dayAtPlace(value.x());
    if (day > m_view.asOf && !course.forecast.empty()) {
        std::size_t nearest = 1;
        for (std::size_t i = 1; i < course.forecast.size(); ++i) {
            if (std::abs(course.forecast[i].day - day) <
                std::abs(course.forecast[nearest].day - day)) {
                nearest = i;
            }
        }
        tell(course.figure.dots.size() + nearest - 1);
        return;
    }
    const double daySpan = std::max(1, m_window.to() - m_window.from()) / kAcross;
    const double factor = m_view.scale.factorOn(day);
    const double valueSpan = std::max(1e-3, m_values->max() - m_values->min()) / kAcross;
    const auto dot =
        nearestDot(course.figure, day, value.y() / factor, daySpan, valueSpan / factor);
    if (dot && dot != m_current) {
        tell(*dot);
    }
}

void StrengthChart::step(int direction)
{
    const auto dots = static_cast<int>(m_view.course.figure.dots.size());
    if (dots == 0) {
        return;
    }
    const int now = m_current ? static_cast<int>(*m_current) : (direction < 0 ? dots : -1);
    const int last = static_cast<int>(placeCount()) - 1;
    tell(static_cast<std::size_t>(std::clamp(now + direction, 0, last)));
}

void StrengthChart::tell(std::size_t place)
{
    m_current = place;
    const StrengthCourse& course = m_view.course;
    const std::size_t dots = course.figure.dots.size();
    const bool isDot = place < dots;
    const BandPoint ahead = isDot ? BandPoint{} : course.forecast[place - dots + 1];
    const Day day = isDot ? course.figure.dots[place].day : ahead.day;
    const double kilograms = isDot ? course.figure.dots[place].kilograms : ahead.value;
    if (day < m_window.from() || day > m_window.to()) {
        m_window.bringIn(day);
        showWindow();
    }
    say(isDot ? dotWords(course.figure.dots[place], m_view) : forecastWords(ahead, m_view));
    const QPointF at(axisPlace(day), m_view.scale.of(kilograms, day));
    m_series.mark(at);
    m_graphics->setCrosshair(at);
}

void StrengthChart::say(const QString& text)
{
    m_readOut->setText(text);
    m_readOut->setAccessibleDescription(text);
    m_graphics->setAccessibleDescription(text);
}

void StrengthChart::setSummary(const QString& summary)
{
    m_graphics->setAccessibleName(
        tr("%1 Left and right keys step through the dots, plus and minus zoom, Shift with an "
           "arrow moves, 0 shows everything.")
            .arg(summary));
}

// Another width has room for more or fewer dates.
void StrengthChart::resizeEvent(QResizeEvent* event)
{
    QWidget::resizeEvent(event);
    if (m_window.from() < m_window.to()) {
        showWindow();
    }
}

void StrengthChart::changeEvent(QEvent* event)
{
    QWidget::changeEvent(event);
    if (event->type() == QEvent::PaletteChange) {
        paintLooks();
    }
}

} // namespace levelbar::ui
