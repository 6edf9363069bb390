// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/report/strength_plot.h"

#include "ui/charts/calendar_axis.h"
#include "ui/charts/strength_series.h"
#include "ui/theme.h"

#include <QCoreApplication>
#include <QFontMetricsF>
#include <QLocale>
#include <QPainter>
#include <QPainterPath>

#include <algorithm>
#include <array>
#include <cmath>

namespace levelbar::ui {

namespace {

constexpr int kDaysAround = 5;
constexpr int kShortestDays = 28;

struct Range {
    double low = 0.0;
    double high = 1.0;
};

// A step of 1, 2 or 5 times a power of ten that cuts the range into `most` parts at most.
double niceStep(const Range& range, double most)
{
    const double raw = std::max(range.high - range.low, 1e-6) / std::max(most, 1.0);
    const double power = std::pow(10.0, std::floor(std::log10(raw)));
    for (const double factor : {1.0, 2.0, 5.0}) {
        if (power * factor >= raw * (1.0 - 1e-9)) {
            return power * factor;
        }
    }
    return power * 10.0;
}

Range kilogramsOf(const StrengthFigure& figure)
{
    Range range{1e9, 0.0};
    for (const StrengthDot& dot : figure.dots) {
        range.low = std::min(range.low, dot.kilograms);
        range.high = std::max(range.high, dot.kilograms);
    }
    for (const BandPoint& point : figure.band) {
        range.low = std::min(range.low, point.low);
        range.high = std::max(range.high, point.high);
    }
    if (range.high <= range.low) {
        return {0.0, 1.0};
    }
    const double room = 0.06 * (range.high - range.low);
    return {std::max(0.0, range.low - room), range.high + room};
}

// One plot: where days and kilograms lie in its box.
class Plot {
public:
    Plot(QPainter& painter,
         const QRectF& box,
         const StrengthFigure& figure,
         Day asOf,
         const PlotLook& look)
        : m_painter(painter)
        , m_figure(figure)
        , m_look(look)
        , m_metrics(look.font, painter.device())
        , m_from(asOf - kShortestDays)
        , m_to(asOf + kDaysAround)
        , m_range(kilogramsOf(figure))
    {
        if (!figure.dots.empty()) {
            m_from = std::min(m_from, figure.dots.front().day);
        }
        m_from = m_from - kDaysAround;
        const double line = m_metrics.height();
        m_step = niceStep(m_range, box.height() / (2.2 * line));
        const double labels = m_metrics.horizontalAdvance(label(m_range.high)) + 0.6 * line;
        m_inside = box.adjusted(labels, 0.5 * line, -0.2 * line, -1.4 * line);
    }

    void paint()
    {
        paintGrid();
        m_painter.save();
        m_painter.setClipRect(m_inside);
        paintBand();
        m_painter.restore();
        paintDots();
    }

private:
    [[nodiscard]] double x(Day day) const
    {
        return m_inside.left() + m_inside.width() * (day - m_from) / std::max(1, m_to - m_from);
    }

    [[nodiscard]] double y(double kilograms) const
    {
        const double share = (kilograms - m_range.low) / (m_range.high - m_range.low);
        return m_inside.bottom() - m_inside.height() * share;
    }

    [[nodiscard]] QString label(double kilograms) const
    {
        return QLocale().toString(kilograms, 'f', m_step < 0.999 ? 1 : 0);
    }

    void paintGrid();
    void paintBand();
    void paintDots();

    QPainter& m_painter;
    const StrengthFigure& m_figure;
    const PlotLook& m_look;
    QFontMetricsF m_metrics;
    Day m_from;
    Day m_to;
    Range m_range;
    double m_step = 1.0;
    QRectF m_inside;
};

void Plot::paintGrid()
{
    const QPalette tones = lightPalette();
    const Colours more = colours(tones);
    QColor faint = more.quiet;
    faint.setAlphaF(0.25F);
    const QPen lines(faint, 0.4 * m_look.point);
    m_painter.setFont(m_look.font);
    const double height = m_metrics.height();
    const auto last = static_cast<int>(std::floor(m_range.high / m_step));
    for (auto step = static_cast<int>(std::ceil(m_range.low / m_step)); step <= last; ++step) {
        const double at = step * m_step;
        m_painter.setPen(lines);
        m_painter.drawLine(QPointF(m_inside.left(), y(at)), QPointF(m_inside.right(), y(at)));
        m_painter.setPen(more.quiet);
        const QRectF place(
            m_inside.left() - 100.0 * height, y(at) - height, 99.7 * height, 2.0 * height);
        m_painter.drawText(place, Qt::AlignRight | Qt::AlignVCenter, label(at));
    }
    // As many labels as stand side by side, with room between them.
    const double width = m_metrics.horizontalAdvance(QStringLiteral("28 MMM ’26")) + height;
    const auto most = static_cast<std::size_t>(std::max(2.0, m_inside.width() / width));
    for (const CalendarLabel& day : calendarLabels(m_from, m_to, QLocale(), most)) {
        const double at = x(day.day);
        m_painter.setPen(lines);
        m_painter.drawLine(QPointF(at, m_inside.top()), QPointF(at, m_inside.bottom()));
        const double half = m_metrics.horizontalAdvance(day.text) / 2.0;
        const double left = std::clamp(at - half, m_inside.left(), m_inside.right() - 2.0 * half);
        m_painter.setPen(more.quiet);
        m_painter.drawText(QPointF(left, m_inside.bottom() + 0.3 * height + m_metrics.ascent()),
                           day.text);
    }
    m_painter.setPen(QPen(more.quiet, 0.6 * m_look.point));
    m_painter.drawLine(m_inside.bottomLeft(), m_inside.bottomRight());
}

void Plot::paintBand()
{
    if (m_figure.band.empty()) {
        return;
    }
    QPolygonF band;
    QPolygonF line;
    for (const BandPoint& point : m_figure.band) {
        band << QPointF(x(point.day), y(point.high));
        line << QPointF(x(point.day), y(point.value));
    }
    std::for_each(m_figure.band.rbegin(), m_figure.band.rend(), [&](const BandPoint& point) {
        band << QPointF(x(point.day), y(point.low));
    });
    const QPalette tones = lightPalette();
    m_painter.setPen(Qt::NoPen);
    m_painter.setBrush(colours(tones).band);
    m_painter.drawPolygon(band);
    m_painter.setBrush(Qt::NoBrush);
    m_painter.setPen(QPen(tones.color(QPalette::Text),
                          1.2 * m_look.point,
                          Qt::SolidLine,
                          Qt::RoundCap,
                          Qt::RoundJoin));
    m_painter.drawPolyline(line);
}

// The shapes of the chart on screen.
void paintDot(QPainter& painter, const QPointF& at, DotLook look, double point)
{
    const QPalette tones = lightPalette();
    const Colours more = colours(tones);
    const QColor ink = tones.color(QPalette::Text);
    const QColor paper = Qt::white;
    const double r = point * (look == DotLook::Unsized ? 1.2 : 1.7);
    const bool isHollow = look == DotLook::Accepted || look == DotLook::Group;
    painter.setPen(QPen(look == DotLook::Unsized ? more.quiet : ink, 0.6 * point));
    painter.setBrush(isHollow ? paper : (look == DotLook::Unsized ? more.quiet : ink));
    switch (look) {
    case DotLook::Group:
    case DotLook::Sheet:
        painter.drawRect(QRectF(at.x() - r, at.y() - r, 2.0 * r, 2.0 * r));
        break;
    case DotLook::Tested: {
        const double d = 1.7 * r;
        painter.setBrush(more.right);
        painter.drawPolygon(QPolygonF({{at.x(), at.y() - d},
                                       {at.x() + d, at.y()},
                                       {at.x(), at.y() + d},
                                       {at.x() - d, at.y()}}));
        break;
    }
    default:
        painter.drawEllipse(at, r, r);
    }
}

void Plot::paintDots()
{
    // Many dots hide the line behind them.
    constexpr std::size_t kMany = 400;
    const double point = m_figure.dots.size() > kMany ? 0.6 * m_look.point : m_look.point;
    for (const StrengthDot& dot : m_figure.dots) {
        paintDot(m_painter, QPointF(x(dot.day), y(dot.kilograms)), lookOf(dot), point);
    }
}

PlotLook sized(const PlotLook& look)
{
    PlotLook result = look;
    result.font.setPixelSize(
        std::max(1, static_cast<int>(std::lround(look.labelPoints * look.point))));
    return result;
}

} // namespace

void paintStrengthPlot(QPainter& painter,
                       const QRectF& box,
                       const StrengthFigure& figure,
                       Day asOf,
                       const PlotLook& look)
{
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    const PlotLook own = sized(look);
    Plot(painter, box, figure, asOf, own).paint();
    painter.restore();
}

void paintPlotLegend(QPainter& painter,
                     const QRectF& line,
                     std::span<const StrengthFigure* const> figures,
                     const PlotLook& look)
{
    std::array<bool, kDotLooks> isThere{};
    for (const StrengthFigure* figure : figures) {
        for (const StrengthDot& dot : figure->dots) {
            isThere.at(static_cast<std::size_t>(lookOf(dot))) = true;
        }
    }
    const PlotLook own = sized(look);
    const Colours more = colours(lightPalette());
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setFont(own.font);
    const QFontMetricsF metrics(own.font, painter.device());
    double left = line.left() + 2.0 * look.point;
    const double middle = line.center().y();
    const auto say = [&](const QString& text) {
        painter.setPen(more.quiet);
        painter.drawText(QPointF(left, middle + (metrics.ascent() - metrics.descent()) / 2.0),
                         text);
        left += metrics.horizontalAdvance(text) + 9.0 * look.point;
    };
    say(QCoreApplication::translate("StrengthPlot", "kg, one-rep max"));
    painter.setPen(Qt::NoPen);
    painter.setBrush(more.band);
    painter.drawRect(QRectF(left, middle - 2.0 * look.point, 9.0 * look.point, 4.0 * look.point));
    left += 12.0 * look.point;
    say(QCoreApplication::translate("StrengthPlot", "nine in ten"));
    for (std::size_t i = 0; i < isThere.size(); ++i) {
        if (isThere.at(i)) {
            const auto which = static_cast<DotLook>(i);
            paintDot(painter, QPointF(left + 2.0 * look.point, middle), which, look.point);
            left += 7.0 * look.point;
            say(lookName(which));
        }
    }
    painter.restore();
}

} // namespace levelbar::ui
