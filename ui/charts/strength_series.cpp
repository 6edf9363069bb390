// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/charts/strength_series.h"

#include "ui/charts/calendar_axis.h"
#include "ui/theme.h"

#include <QAreaSeries>
#include <QCategoryAxis>
#include <QChart>
#include <QCoreApplication>
#include <QLineSeries>
#include <QPalette>
#include <QScatterSeries>
#include <QStringList>
#include <QValueAxis>

#include <algorithm>

namespace levelbar::ui {

namespace {

// Okabe and Ito's bluish green: neither of the two colours of left and right.
constexpr QColor kOtherColour(0x00, 0x9E, 0x73);

QString seriesText(const char* text)
{
    return QCoreApplication::translate("StrengthChart", text);
}

struct BandPoints {
    QList<QPointF> upper;
    QList<QPointF> lower;
    QList<QPointF> line;
};

BandPoints pointsOf(const std::vector<BandPoint>& band, const ChartScale& scale)
{
    BandPoints points;
    for (const BandPoint& point : band) {
        const double x = axisPlace(point.day);
        points.upper << QPointF(x, scale.of(point.high, point.day));
        points.lower << QPointF(x, scale.of(point.low, point.day));
        points.line << QPointF(x, scale.of(point.value, point.day));
    }
    return points;
}

} // namespace

DotLook lookOf(const StrengthDot& dot)
{
    if (dot.isTest) {
        return DotLook::Tested;
    }
    switch (dot.known) {
    case HowKnown::Accepted:
        return DotLook::Accepted;
    case HowKnown::Group:
        return DotLook::Group;
    case HowKnown::Sheet:
        return DotLook::Sheet;
    case HowKnown::Counted:
        break;
    }
    return dot.isBound ? DotLook::Unsized : DotLook::Counted;
}

QString lookName(DotLook look)
{
    switch (look) {
    case DotLook::Counted:
        return seriesText("counted");
    case DotLook::Unsized:
        return seriesText("reserve unknown");
    case DotLook::Accepted:
        return seriesText("accepted");
    case DotLook::Group:
        return seriesText("group");
    case DotLook::Sheet:
        return seriesText("sheet");
    case DotLook::Tested:
        break;
    }
    return seriesText("tested");
}

StrengthSeries::Band StrengthSeries::makeBand() const
{
    auto* upper = new QLineSeries(m_chart);
    auto* lower = new QLineSeries(m_chart);
    return {upper, lower, new QAreaSeries(upper, lower)};
}

StrengthSeries::StrengthSeries(QChart* chart, QCategoryAxis* days, QValueAxis* values)
    : m_chart(chart)
    , m_days(days)
    , m_values(values)
    , m_layOffs(makeBand())
    , m_past(makeBand())
    , m_ahead(makeBand())
    , m_line(new QLineSeries(chart))
    , m_forecast(new QLineSeries(chart))
    , m_goal(new QLineSeries(chart))
    , m_otherLine(new QLineSeries(chart))
    , m_otherForecast(new QLineSeries(chart))
    , m_otherDots(new QScatterSeries(chart))
    , m_pains(new QScatterSeries(chart))
    , m_marker(new QScatterSeries(chart))
{
    chart->addAxis(days, Qt::AlignBottom);
    chart->addAxis(values, Qt::AlignLeft);
    for (QAbstractSeries* series : std::initializer_list<QAbstractSeries*>{m_layOffs.area,
                                                                           m_past.area,
                                                                           m_ahead.area,
                                                                           m_line,
                                                                           m_forecast,
                                                                           m_goal,
                                                                           m_otherLine,
                                                                           m_otherForecast,
                                                                           m_otherDots}) {
        attach(series);
    }
    makeDots();
    attach(m_pains);
    attach(m_marker);
    m_otherDots->setMarkerShape(QScatterSeries::MarkerShapeTriangle);
    m_pains->setMarkerShape(QScatterSeries::MarkerShapeStar);
    m_marker->setMarkerShape(QScatterSeries::MarkerShapeCircle);
}

void StrengthSeries::attach(QAbstractSeries* series)
{
    m_chart->addSeries(series);
    series->attachAxis(m_days);
    series->attachAxis(m_values);
}

void StrengthSeries::makeDots()
{
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
        m_dots.at(i)->setMarkerShape(kShapes.at(i));
        attach(m_dots.at(i));
    }
}

void StrengthSeries::fill(const StrengthView& view)
{
    const StrengthCourse& course = view.course;
    const BandPoints past = pointsOf(course.figure.band, view.scale);
    const BandPoints ahead = pointsOf(course.forecast, view.scale);
    std::array<QList<QPointF>, kDotLooks> dots;
    for (const StrengthDot& dot : course.figure.dots) {
        dots.at(static_cast<std::size_t>(lookOf(dot)))
            << QPointF(axisPlace(dot.day), view.scale.of(dot.kilograms, dot.day));
    }
    // replace() only: append() in a chart costs a full repaint a point.
    m_past.upper->replace(past.upper);
    m_past.lower->replace(past.lower);
    m_line->replace(past.line);
    m_ahead.upper->replace(ahead.upper);
    m_ahead.lower->replace(ahead.lower);
    m_forecast->replace(ahead.line);
    for (std::size_t i = 0; i < m_dots.size(); ++i) {
        m_dots.at(i)->replace(dots.at(i));
    }
    const StrengthCourse none;
    const StrengthCourse& other = view.other ? *view.other : none;
    m_otherLine->replace(pointsOf(other.figure.band, view.scale).line);
    m_otherForecast->replace(pointsOf(other.forecast, view.scale).line);
    QList<QPointF> others;
    for (const StrengthDot& dot : other.figure.dots) {
        others << QPointF(axisPlace(dot.day), view.scale.of(dot.kilograms, dot.day));
    }
    m_otherDots->replace(others);
    mark(std::nullopt);
}

void StrengthSeries::setHeight(const StrengthView& view, double low, double high)
{
    QList<QPointF> upper;
    QList<QPointF> lower;
    for (const LayOff& stretch : view.course.layOffs) {
        for (const auto& [day, isInside] : {std::pair(stretch.from, false),
                                            std::pair(stretch.from, true),
                                            std::pair(stretch.to, true),
                                            std::pair(stretch.to, false)}) {
            upper << QPointF(axisPlace(day), isInside ? high : low);
            lower << QPointF(axisPlace(day), low);
        }
    }
    m_layOffs.upper->replace(upper);
    m_layOffs.lower->replace(lower);
    QList<QPointF> pains;
    for (const PainfulDay& day : view.course.pains) {
        pains << QPointF(axisPlace(day.day), low + 0.03 * (high - low));
    }
    m_pains->replace(pains);
}

void StrengthSeries::setGoal(const StrengthView& view, Day from, Day to)
{
    QList<QPointF> points;
    if (view.goal && (!view.goal->by || *view.goal->by > from)) {
        const double kilograms = view.goal->load.kilograms();
        const Day end = std::min(view.goal->by.value_or(to), to);
        // Level in kilograms; per body mass it moves with the mass, week by week.
        for (Day day = from; day < end; day = day + 7) {
            points << QPointF(axisPlace(day), view.scale.of(kilograms, day));
        }
        points << QPointF(axisPlace(end), view.scale.of(kilograms, end));
    }
    m_goal->replace(points);
}

void StrengthSeries::paint(const QPalette& tones)
{
    paintLines(tones);
    paintDots(tones);
}

void StrengthSeries::paintLines(const QPalette& tones)
{
    const Colours more = colours(tones);
    const QColor text = tones.color(QPalette::Text);
    m_layOffs.area->setPen(Qt::NoPen);
    m_layOffs.area->setBrush(more.shade);
    m_past.area->setPen(Qt::NoPen);
    m_past.area->setBrush(more.band);
    // Told apart from the past by its hatching and edges, not by shade alone.
    m_ahead.area->setPen(QPen(more.quiet, 1.0, Qt::DashLine));
    m_ahead.area->setBrush(QBrush(more.quiet, Qt::BDiagPattern));
    m_line->setPen(QPen(text, 2.4));
    m_forecast->setPen(QPen(text, 2.0, Qt::DashLine));
    m_goal->setPen(QPen(more.warning, 2.0, Qt::DashDotDotLine));
    m_otherLine->setPen(QPen(kOtherColour, 2.4, Qt::DashDotLine));
    m_otherForecast->setPen(QPen(kOtherColour, 1.6, Qt::DotLine));
}

void StrengthSeries::paintDots(const QPalette& tones)
{
    const Colours more = colours(tones);
    const QColor text = tones.color(QPalette::Text);
    const QColor hollow = tones.color(QPalette::Base);
    const auto paint =
        [](QScatterSeries* series, double size, const QColor& fill, const QColor& edge) {
            series->setMarkerSize(size);
            series->setColor(fill);
            series->setBorderColor(edge);
            series->setPen(QPen(edge, 1.4));
        };
    const auto look = [&](DotLook which) { return m_dots.at(static_cast<std::size_t>(which)); };
    // Many dots hide the line behind them.
    constexpr int kMany = 400;
    int count = 0;
    for (const QScatterSeries* dots : m_dots) {
        count += static_cast<int>(dots->count());
    }
    const double usual = count > kMany ? 5.0 : 8.0;
    paint(look(DotLook::Counted), usual, text, text);
    paint(look(DotLook::Unsized), 0.75 * usual, more.quiet, more.quiet);
    paint(look(DotLook::Accepted), usual, hollow, text);
    paint(look(DotLook::Group), usual, hollow, text);
    paint(look(DotLook::Sheet), usual, text, text);
    paint(look(DotLook::Tested), 14, more.right, text);
    paint(m_otherDots, 8, kOtherColour, kOtherColour);
    paint(m_pains, 13, more.warning, more.warning);
    m_marker->setMarkerSize(18);
    m_marker->setColor(Qt::transparent);
    m_marker->setBorderColor(tones.color(QPalette::Link));
    m_marker->setPen(QPen(tones.color(QPalette::Link), 2.5));
}

QString StrengthSeries::legend(const StrengthView& view, const QPalette& tones)
{
    const Colours more = colours(tones);
    QStringList parts;
    const auto add = [&](const QString& shape, const QColor& colour, const QString& name) {
        QString words = name.toHtmlEscaped();
        words.replace(QLatin1Char(' '), QStringLiteral("&nbsp;"));
        parts << QStringLiteral("<span style=\"color:%1\">%2</span>&nbsp;%3")
                     .arg(colour.name(), shape, words);
    };
    const QColor text = tones.color(QPalette::Text);
    const std::array<std::pair<QString, QColor>, kDotLooks> shapes = {
        {{QStringLiteral("●"), text},
         {QStringLiteral("•"), more.quiet},
         {QStringLiteral("○"), text},
         {QStringLiteral("□"), text},
         {QStringLiteral("■"), text},
         {QStringLiteral("◆"), more.right}}};
    const StrengthCourse& course = view.course;
    for (std::size_t i = 0; i < shapes.size(); ++i) {
        const auto look = static_cast<DotLook>(i);
        if (std::any_of(course.figure.dots.begin(),
                        course.figure.dots.end(),
                        [look](const StrengthDot& dot) { return lookOf(dot) == look; })) {
            add(shapes.at(i).first, shapes.at(i).second, lookName(look));
        }
    }
    if (!course.figure.band.empty()) {
        add(QStringLiteral("▒"), more.quiet, seriesText("nine in ten"));
    }
    if (!course.forecast.empty()) {
        add(QStringLiteral("▨"), more.quiet, seriesText("if it goes on so"));
    }
    if (!course.layOffs.empty()) {
        add(QStringLiteral("░"), more.quiet, seriesText("lay-off"));
    }
    if (!course.pains.empty()) {
        add(QStringLiteral("★"), more.warning, seriesText("pain"));
    }
    if (view.goal) {
        add(QStringLiteral("┄"), more.warning, seriesText("goal"));
    }
    if (view.other) {
        add(QStringLiteral("▲"), kOtherColour, view.otherName);
    }
    return parts.join(QStringLiteral(" &nbsp; "));
}

void StrengthSeries::mark(const std::optional<QPointF>& dot)
{
    m_marker->replace(dot ? QList<QPointF>{*dot} : QList<QPointF>());
}

int StrengthSeries::dotCount() const
{
    int count = 0;
    for (const QScatterSeries* series : m_dots) {
        count += series->count();
    }
    return count;
}

int StrengthSeries::linePointCount() const
{
    return m_line->count();
}

int StrengthSeries::goalPointCount() const
{
    return m_goal->count();
}

int StrengthSeries::forecastPointCount() const
{
    return m_forecast->count();
}

} // namespace levelbar::ui
