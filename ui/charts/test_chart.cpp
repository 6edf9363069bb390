// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/charts/test_chart.h"

#include "ui/charts/calendar_axis.h"
#include "ui/charts/chart_looks.h"
#include "ui/charts/safe_chart_view.h"
#include "ui/charts/time_window.h"
#include "ui/theme.h"
#include "ui/words.h"

#include <QAreaSeries>
#include <QCategoryAxis>
#include <QChart>
#include <QEvent>
#include <QLabel>
#include <QLegend>
#include <QLineSeries>
#include <QLocale>
#include <QScatterSeries>
#include <QVBoxLayout>
#include <QValueAxis>

#include <algorithm>
#include <cmath>

namespace levelbar::ui {

namespace {

constexpr int kDaysAround = 5;

} // namespace

TestChart::TestChart(QWidget* parent)
    : QWidget(parent)
    , m_chart(new QChart)
    , m_view(new SafeChartView(m_chart, this))
    , m_readOut(new QLabel(this))
    , m_days(new QCategoryAxis(m_chart))
    , m_values(new QValueAxis(m_chart))
    , m_past(makeBand())
    , m_ahead(makeBand())
    , m_dots(new QScatterSeries(m_chart))
    , m_marker(new QScatterSeries(m_chart))
{
    m_view->setObjectName(QStringLiteral("testChartView"));
    m_readOut->setObjectName(QStringLiteral("testReadOut"));
    m_readOut->setTextFormat(Qt::PlainText);
    m_readOut->setWordWrap(true);
    m_readOut->setMinimumHeight(m_readOut->fontMetrics().height() + 8);
    m_chart->setMargins(QMargins(4, 4, 24, 4));
    m_chart->legend()->hide();
    m_chart->addAxis(m_days, Qt::AlignBottom);
    m_chart->addAxis(m_values, Qt::AlignLeft);
    m_dots->setMarkerShape(QScatterSeries::MarkerShapeRotatedRectangle); // tested, as elsewhere
    for (QAbstractSeries* series : std::initializer_list<QAbstractSeries*>{
             m_past.area, m_ahead.area, m_past.line, m_ahead.line, m_dots, m_marker}) {
        m_chart->addSeries(series);
        series->attachAxis(m_days);
        series->attachAxis(m_values);
    }
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->addWidget(m_view, 1);
    layout->addWidget(m_readOut);
    connect(m_view, &SafeChartView::pointedAt, this, &TestChart::point);
    connect(m_view, &SafeChartView::stepped, this, &TestChart::step);
    paintLooks();
}

TestChart::Band TestChart::makeBand()
{
    auto* upper = new QLineSeries(m_chart);
    auto* lower = new QLineSeries(m_chart);
    return {upper, lower, new QAreaSeries(upper, lower), new QLineSeries(m_chart)};
}

void TestChart::Band::fill(const std::vector<BandPoint>& points) const
{
    QList<QPointF> high;
    QList<QPointF> low;
    QList<QPointF> middle;
    for (const BandPoint& point : points) {
        const double x = axisPlace(point.day);
        high << QPointF(x, point.high);
        low << QPointF(x, point.low);
        middle << QPointF(x, point.value);
    }
    upper->replace(high);
    lower->replace(low);
    line->replace(middle);
}

void TestChart::paintLooks()
{
    const QPalette tones = palette();
    const Colours more = colours(tones);
    const QColor text = tones.color(QPalette::Text);
    paintChartGround(*m_chart, tones);
    m_past.area->setPen(Qt::NoPen);
    m_past.area->setBrush(more.band);
    m_past.line->setPen(QPen(text, 2.4));
    m_ahead.area->setPen(QPen(more.quiet, 1.0, Qt::DashLine));
    m_ahead.area->setBrush(QBrush(more.quiet, Qt::BDiagPattern));
    m_ahead.line->setPen(QPen(text, 2.0, Qt::DashLine));
    m_dots->setMarkerSize(12);
    m_dots->setColor(more.right);
    m_dots->setBorderColor(text);
    m_dots->setPen(QPen(text, 1.4));
    m_marker->setMarkerSize(20);
    m_marker->setColor(Qt::transparent);
    m_marker->setBorderColor(tones.color(QPalette::Link));
    m_marker->setPen(QPen(tones.color(QPalette::Link), 2.5));
}

void TestChart::show(const TestFigure& figure, Day today, const QString& summary)
{
    m_figure = figure;
    m_current.reset();
    m_past.fill(figure.band);
    m_ahead.fill(figure.forecast);
    QList<QPointF> dots;
    for (const DatedValue& value : figure.values) {
        dots << QPointF(axisPlace(value.day), value.value);
    }
    m_dots->replace(dots);
    m_marker->replace(QList<QPointF>());
    m_values->setTitleText(plain(figure.unit));
    setRanges(today);
    m_view->setAccessibleName(tr("%1 Left and right keys step through the results.").arg(summary));
    m_readOut->setText(
        figure.values.empty()
            ? QString()
            : tr("Hatched: where it leads if it goes on so, up to six weeks after the last."));
}

void TestChart::setRanges(Day today)
{
    Day from = today - TimeWindow::kFewestOfAll;
    Day to = today;
    double low = 1e9;
    double high = -1e9;
    const auto take = [&](Day day, double least, double most) {
        from = std::min(from, day);
        to = std::max(to, day);
        low = std::min(low, least);
        high = std::max(high, most);
    };
    for (const DatedValue& value : m_figure.values) {
        take(value.day, value.value, value.value);
    }
    for (const auto* band : {&m_figure.band, &m_figure.forecast}) {
        for (const BandPoint& point : *band) {
            take(point.day, point.low, point.high);
        }
    }
    if (high < low) {
        low = 0.0;
        high = 1.0;
    }
    const double room = std::max(0.06 * (high - low), 0.05);
    m_from = from - kDaysAround;
    m_to = to + kDaysAround;
    labelDays();
    m_values->setRange(low - room, high + room);
    m_values->applyNiceNumbers();
    m_values->setLabelFormat(high - low < 8 ? QStringLiteral("%.1f") : QStringLiteral("%.0f"));
}

void TestChart::point(const QPointF& value)
{
    const int day = dayAtPlace(value.x()).sinceEpoch;
    std::optional<std::size_t> nearest;
    for (std::size_t i = 0; i < m_figure.values.size(); ++i) {
        const auto distance = [&](std::size_t place) {
            return std::abs(m_figure.values[place].day.sinceEpoch - day);
        };
        if (!nearest || distance(i) < distance(*nearest)) {
            nearest = i;
        }
    }
    if (nearest && nearest != m_current) {
        tell(*nearest);
    }
}

void TestChart::step(int direction)
{
    const auto count = static_cast<int>(m_figure.values.size());
    if (count > 0) {
        const int now = m_current ? static_cast<int>(*m_current) : (direction < 0 ? count : -1);
        tell(static_cast<std::size_t>(std::clamp(now + direction, 0, count - 1)));
    }
}

void TestChart::tell(std::size_t place)
{
    m_current = place;
    const DatedValue& value = m_figure.values[place];
    const QString text =
        tr("%1: %2 %3")
            .arg(dayText(value.day), locale().toString(value.value, 'f', 1), plain(m_figure.unit));
    m_readOut->setText(text);
    m_view->setAccessibleDescription(text);
    m_marker->replace(QList<QPointF>{QPointF(axisPlace(value.day), value.value)});
}

QString TestChart::readOut() const
{
    return m_readOut->text();
}

int TestChart::valueCount() const
{
    return m_dots->count();
}

int TestChart::forecastPointCount() const
{
    return m_ahead.line->count();
}

void TestChart::labelDays()
{
    labelCalendar(*m_days, m_from, m_to, locale(), labelsIn(width(), QFontMetricsF(font())));
}

// Another width has room for more or fewer dates.
void TestChart::resizeEvent(QResizeEvent* event)
{
    QWidget::resizeEvent(event);
    if (m_from < m_to) {
        labelDays();
    }
}

void TestChart::changeEvent(QEvent* event)
{
    QWidget::changeEvent(event);
    if (event->type() == QEvent::PaletteChange) {
        paintLooks();
    }
}

} // namespace levelbar::ui
