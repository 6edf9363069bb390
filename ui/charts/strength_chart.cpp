// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/charts/strength_chart.h"

#include "ui/charts/calendar_axis.h"
#include "ui/charts/safe_chart_view.h"
#include "ui/theme.h"
#include "ui/words.h"

#include <QAreaSeries>
#include <QCategoryAxis>
#include <QChart>
#include <QDate>
#include <QEvent>
#include <QLabel>
#include <QLegendMarker>
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

QString setText(const PerformedSet& set, const QLocale& locale)
{
    QString text = QStringLiteral("%1 %2 × %3")
                       .arg(plain(set.load.number()),
                            plain(unitWord(set.load.unit())),
                            locale.toString(set.reps.value_or(0)));
    if (set.reserve) {
        text += StrengthChart::tr(", %1 in reserve").arg(plain(levelbar::text(*set.reserve)));
    }
    return text;
}

} // namespace

StrengthChart::StrengthChart(QWidget* parent)
    : QWidget(parent)
    , m_chart(new QChart)
    , m_view(new SafeChartView(m_chart, this))
    , m_readOut(new QLabel(this))
    , m_days(new QCategoryAxis(m_chart))
    , m_kilograms(new QValueAxis(m_chart))
    , m_upper(new QLineSeries(m_chart))
    , m_lower(new QLineSeries(m_chart))
    , m_band(new QAreaSeries(m_upper, m_lower))
    , m_line(new QLineSeries(m_chart))
    , m_marker(new QScatterSeries(m_chart))
{
    m_view->setObjectName(QStringLiteral("strengthChartView"));
    m_view->setAccessibleName(tr("Strength chart; left and right keys step through the dots"));
    m_readOut->setObjectName(QStringLiteral("strengthReadOut"));
    m_readOut->setTextFormat(Qt::PlainText);
    m_readOut->setMinimumHeight(m_readOut->fontMetrics().height() + 8);
    m_chart->setMargins(QMargins(4, 4, 4, 4));
    m_chart->addAxis(m_days, Qt::AlignBottom);
    m_chart->addAxis(m_kilograms, Qt::AlignLeft);
    makeSeries();
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->addWidget(m_view, 1);
    layout->addWidget(m_readOut);
    connect(m_view, &SafeChartView::pointedAt, this, &StrengthChart::point);
    connect(m_view, &SafeChartView::stepped, this, &StrengthChart::step);
    paintLooks();
}

void StrengthChart::makeSeries()
{
    const auto attach = [this](QAbstractSeries* series) {
        m_chart->addSeries(series);
        series->attachAxis(m_days);
        series->attachAxis(m_kilograms);
    };
    m_band->setName(tr("nine times in ten"));
    m_line->setName(tr("strength, as seen today"));
    attach(m_band);
    attach(m_line);
    const std::array<QString, LookCount> names = {tr("counted"),
                                                  tr("counted, reserve not known"),
                                                  tr("accepted"),
                                                  tr("group"),
                                                  tr("sheet"),
                                                  tr("tested")};
    // The same shapes as on the class floor: circles for what was watched or accepted, squares
    // for groups and sheets, filled where it was counted.
    constexpr std::array kShapes = {QScatterSeries::MarkerShapeCircle,
                                    QScatterSeries::MarkerShapeCircle,
                                    QScatterSeries::MarkerShapeCircle,
                                    QScatterSeries::MarkerShapeRectangle,
                                    QScatterSeries::MarkerShapeRectangle,
                                    QScatterSeries::MarkerShapeRotatedRectangle};
    for (std::size_t i = 0; i < m_dots.size(); ++i) {
        m_dots.at(i) = new QScatterSeries(m_chart);
        m_dots.at(i)->setName(names.at(i));
        m_dots.at(i)->setMarkerShape(kShapes.at(i));
        attach(m_dots.at(i));
    }
    m_marker->setMarkerShape(QScatterSeries::MarkerShapeCircle);
    attach(m_marker);
    const auto markers = m_chart->legend()->markers(m_marker);
    if (!markers.isEmpty()) {
        markers.constFirst()->setVisible(false);
    }
    m_chart->legend()->setAlignment(Qt::AlignTop);
    m_chart->legend()->setMarkerShape(QLegend::MarkerShapeFromSeries);
}

void StrengthChart::paintLooks()
{
    const QPalette tones = palette();
    const Colours more = colours(tones);
    const QColor text = tones.color(QPalette::Text);
    m_chart->setBackgroundBrush(tones.color(QPalette::Base));
    m_chart->setBackgroundRoundness(0);
    m_chart->legend()->setLabelColor(text);
    for (QAbstractAxis* axis : m_chart->axes()) {
        axis->setLabelsColor(text);
        axis->setTitleBrush(text);
        axis->setGridLineColor(more.grid);
        axis->setLinePenColor(more.quiet);
    }
    m_kilograms->setTitleText(tr("1RM, kg"));
    m_band->setPen(Qt::NoPen);
    m_band->setBrush(more.band);
    m_line->setPen(QPen(text, 2.4));
    const QColor hollow = tones.color(QPalette::Base);
    const auto look = [&](Look which, double size, const QColor& fill, const QColor& edge) {
        QScatterSeries* series = m_dots.at(which);
        series->setMarkerSize(size);
        series->setColor(fill);
        series->setBorderColor(edge);
        series->setPen(QPen(edge, 1.4));
    };
    look(Counted, 8, text, text);
    look(Unsized, 6, more.quiet, more.quiet);
    look(Accepted, 8, hollow, text);
    look(Group, 8, hollow, text);
    look(Sheet, 8, text, text);
    look(Tested, 14, more.right, text);
    m_marker->setMarkerSize(18);
    m_marker->setColor(Qt::transparent);
    m_marker->setBorderColor(tones.color(QPalette::Link));
    m_marker->setPen(QPen(tones.color(QPalette::Link), 2.5));
}

StrengthChart::Look StrengthChart::lookOf(const StrengthDot& dot)
{
    if (dot.isTest) {
        return Tested;
    }
    switch (dot.known) {
    case HowKnown::Accepted:
        return Accepted;
    case HowKnown::Group:
        return Group;
    case HowKnown::Sheet:
        return Sheet;
    case HowKnown::Counted:
        break;
    }
    return dot.isBound ? Unsized : Counted;
}

void StrengthChart::setRanges(const StrengthFigure& figure, Day asOf)
{
    Day from = asOf - 28;
    double low = 1e9;
    double high = 0.0;
    for (const StrengthDot& dot : figure.dots) {
        from = std::min(from, dot.day);
        low = std::min(low, dot.kilograms);
        high = std::max(high, dot.kilograms);
    }
    for (const BandPoint& point : figure.band) {
        low = std::min(low, point.low);
        high = std::max(high, point.high);
    }
    if (high <= low) {
        low = 0.0;
        high = 1.0;
    }
    const double room = 0.06 * (high - low);
    labelCalendar(*m_days, from - kDaysAround, asOf + kDaysAround, locale());
    m_kilograms->setRange(std::max(0.0, low - room), high + room);
    m_kilograms->applyNiceNumbers();
    m_kilograms->setLabelFormat(high - low < 8 ? QStringLiteral("%.1f") : QStringLiteral("%.0f"));
}

void StrengthChart::show(const StrengthFigure& figure, Day asOf)
{
    m_figure = figure;
    m_current.reset();
    QList<QPointF> upper;
    QList<QPointF> lower;
    QList<QPointF> line;
    for (const BandPoint& point : figure.band) {
        const double x = axisPlace(point.day);
        upper << QPointF(x, point.high);
        lower << QPointF(x, point.low);
        line << QPointF(x, point.value);
    }
    std::array<QList<QPointF>, LookCount> dots;
    for (const StrengthDot& dot : figure.dots) {
        dots.at(lookOf(dot)) << QPointF(axisPlace(dot.day), dot.kilograms);
    }
    // replace() only: append() in a chart costs a full repaint a point.
    m_upper->replace(upper);
    m_lower->replace(lower);
    m_line->replace(line);
    for (std::size_t i = 0; i < m_dots.size(); ++i) {
        m_dots.at(i)->replace(dots.at(i));
        for (QLegendMarker* marker : m_chart->legend()->markers(m_dots.at(i))) {
            marker->setVisible(!dots.at(i).isEmpty());
        }
    }
    m_marker->replace(QList<QPointF>());
    for (QLegendMarker* marker : m_chart->legend()->markers(m_marker)) {
        marker->setVisible(false);
    }
    setRanges(figure, asOf);
    m_readOut->setText(figure.dots.empty()
                           ? tr("Nothing to show for this exercise and side.")
                           : tr("Point at a dot, or step with the left and right keys."));
}

QString StrengthChart::readOut() const
{
    return m_readOut->text();
}

int StrengthChart::dotCount() const
{
    int count = 0;
    for (const QScatterSeries* series : m_dots) {
        count += series->count();
    }
    return count;
}

int StrengthChart::linePointCount() const
{
    return m_line->count();
}

void StrengthChart::point(const QPointF& value)
{
    constexpr double kAcross = 40.0; // spans of the axes that count as equally far
    const double daySpan =
        std::max(1.0, (m_days->max() - m_days->min()) / axisPlace(Day{1})) / kAcross;
    const double kilogramSpan = std::max(0.1, m_kilograms->max() - m_kilograms->min()) / kAcross;
    const auto dot = nearestDot(m_figure, dayAtPlace(value.x()), value.y(), daySpan, kilogramSpan);
    if (dot && dot != m_current) {
        tell(*dot);
    }
}

void StrengthChart::step(int direction)
{
    if (m_figure.dots.empty()) {
        return;
    }
    const auto last = static_cast<int>(m_figure.dots.size()) - 1;
    const int now = m_current ? static_cast<int>(*m_current) : (direction < 0 ? last + 1 : -1);
    tell(static_cast<std::size_t>(std::clamp(now + direction, 0, last)));
}

void StrengthChart::tell(std::size_t place)
{
    m_current = place;
    const StrengthDot& dot = m_figure.dots[place];
    const CivilDate date = civilDate(dot.day);
    const QString day =
        locale().toString(QDate(date.year, date.month, date.day), QStringLiteral("d MMM yyyy"));
    const QString kilograms = locale().toString(dot.kilograms, 'f', 1);
    QString text;
    if (dot.isTest) {
        text = tr("%1: tested, %2 kg").arg(day, kilograms);
    } else if (dot.isBound) {
        text = tr("%1: %2, %3: at least %4 kg")
                   .arg(day, setText(*dot.set, locale()), word(howKnownWord(dot.known)), kilograms);
    } else {
        text = tr("%1: %2, %3: speaks for %4 kg")
                   .arg(day, setText(*dot.set, locale()), word(howKnownWord(dot.known)), kilograms);
    }
    m_readOut->setText(text);
    m_readOut->setAccessibleDescription(text);
    m_marker->replace(QList<QPointF>{QPointF(axisPlace(dot.day), dot.kilograms)});
}

void StrengthChart::changeEvent(QEvent* event)
{
    QWidget::changeEvent(event);
    if (event->type() == QEvent::PaletteChange) {
        paintLooks();
    }
}

} // namespace levelbar::ui
