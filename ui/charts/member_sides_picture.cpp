// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/charts/member_sides_picture.h"

#include "ui/charts/calendar_axis.h"
#include "ui/charts/side_marks.h"
#include "ui/theme.h"
#include "ui/words.h"

#include <QCoreApplication>
#include <QFontMetricsF>
#include <QLocale>
#include <QPainter>
#include <QPainterPath>

#include <algorithm>
#include <cmath>
#include <functional>

namespace levelbar::ui {

namespace {

struct PictureWords {
    Q_DECLARE_TR_FUNCTIONS(MemberSidesPicture)
};

constexpr double kLeftMargin = 62.0;
constexpr double kRightMargin = 14.0;
constexpr double kGap = 26.0; // between the halves
constexpr double kUpperShare = 0.56;
constexpr double kLeastReach = 20.0;
constexpr double kMostReach = 60.0;
constexpr double kDot = kSideMark;
constexpr float kFaint = 0.20F;
constexpr int kMostTicks = 5;
constexpr int kWindowDays = 120; // a difference is not known for longer than that

// 1, 2 or 5 times a power of ten, so that about kMostTicks of them fill the span.
double niceStep(double span)
{
    const double rough = std::max(span, 1e-9) / kMostTicks;
    const double power = std::pow(10.0, std::floor(std::log10(rough)));
    for (const double factor : {1.0, 2.0, 5.0}) {
        if (factor * power >= rough) {
            return factor * power;
        }
    }
    return 10.0 * power;
}

QColor faint(QColor colour)
{
    colour.setAlphaF(kFaint);
    return colour;
}

using Height = std::function<double(double)>;
using Across = std::function<double(Day)>;

// Runs without a gap that is too long to be bridged.
std::vector<std::vector<BandPoint>> runsOf(const std::vector<BandPoint>& band, int mostDays)
{
    std::vector<std::vector<BandPoint>> runs;
    for (const BandPoint& point : band) {
        if (runs.empty() || point.day - runs.back().back().day > mostDays) {
            runs.emplace_back();
        }
        runs.back().push_back(point);
    }
    return runs;
}

void paintBand(QPainter& painter,
               const std::vector<BandPoint>& band,
               const Across& across,
               const Height& height,
               const QColor& colour)
{
    QPolygonF edge;
    for (const BandPoint& point : band) {
        edge << QPointF(across(point.day), height(point.high));
    }
    for (auto point = band.rbegin(); point != band.rend(); ++point) {
        edge << QPointF(across(point->day), height(point->low));
    }
    painter.setPen(Qt::NoPen);
    painter.setBrush(colour);
    painter.drawPolygon(edge);
}

void paintLine(QPainter& painter,
               const std::vector<BandPoint>& band,
               const Across& across,
               const Height& height,
               const QPen& pen)
{
    QPolygonF line;
    for (const BandPoint& point : band) {
        line << QPointF(across(point.day), height(point.value));
    }
    painter.setPen(pen);
    painter.setBrush(Qt::NoBrush);
    painter.drawPolyline(line);
}

// Left dashed, right drawn through: the two stay apart without colour.
QPen sidePen(Side side, const Colours& tones)
{
    QPen pen(side == Side::Left ? tones.left : tones.right, 2.2);
    if (side == Side::Left) {
        pen.setDashPattern({3.0, 1.6});
    }
    return pen;
}

SideMark markOf(const StrengthDot& dot)
{
    if (dot.isTest) {
        return SideMark::Test;
    }
    return dot.isBound ? SideMark::AtLeast : SideMark::Set;
}

} // namespace

MemberSidesPicture::MemberSidesPicture(const MemberSidesFigure& figure,
                                       const QRectF& place,
                                       const QFont& font)
    : m_figure(figure)
    , m_left(place.left())
    , m_line(QFontMetricsF(font).height())
{
    m_legend = QRectF(place.left() + kLeftMargin, place.top() + 2.0, place.width(), m_line + 4.0);
    QRectF rest =
        place.adjusted(kLeftMargin, m_legend.height() + 6.0, -kRightMargin, -(m_line + 6.0));
    m_upper = QRectF(rest.topLeft(), QSizeF(rest.width(), kUpperShare * (rest.height() - kGap)));
    m_lower = QRectF(QPointF(rest.left(), m_upper.bottom() + kGap), rest.bottomRight());
    setRanges();
}

void MemberSidesPicture::setRanges()
{
    double low = 1e9;
    double high = 0.0;
    m_from = Day{1'000'000};
    m_to = Day{0};
    const auto see = [&](Day day, double bottom, double top) {
        m_from = std::min(m_from, day);
        m_to = std::max(m_to, day);
        low = std::min(low, bottom);
        high = std::max(high, top);
    };
    for (const SideDot& dot : m_figure.dots) {
        see(dot.dot.day, dot.dot.kilograms, dot.dot.kilograms);
    }
    for (const auto* band : {&m_figure.left, &m_figure.right}) {
        for (const BandPoint& point : *band) {
            see(point.day, point.low, point.high);
        }
    }
    double farthest = std::max(kLeastReach, 1.3 * m_figure.review.thresholdPercent);
    for (const BandPoint& point : m_figure.difference) {
        m_from = std::min(m_from, point.day);
        m_to = std::max(m_to, point.day);
        farthest = std::max({farthest, std::abs(point.low), std::abs(point.high)});
    }
    for (const PairDot& pair : m_figure.pairs) {
        farthest = std::max(farthest, std::abs(pair.percent));
    }
    m_reach = std::min(kMostReach, std::ceil(farthest / 10.0) * 10.0);
    m_from = std::min(m_from, m_to - 28);
    const int room = std::max(3, (m_to - m_from) / 50);
    m_from = m_from - room;
    m_to = m_to + room;
    if (high <= 0.0) {
        low = 0.0;
        high = 1.0;
    }
    m_step = niceStep(high - low);
    m_low = std::floor((low - 0.02 * (high - low)) / m_step) * m_step;
    m_high = std::ceil((high + 0.02 * (high - low)) / m_step) * m_step;
    if (m_high <= m_low) {
        m_high = m_low + m_step;
    }
}

double MemberSidesPicture::across(Day day) const
{
    const double share = static_cast<double>(day - m_from) / std::max(1, m_to - m_from);
    return m_upper.left() + share * m_upper.width();
}

double MemberSidesPicture::valueHeight(double value) const
{
    return m_upper.bottom() - (value - m_low) / (m_high - m_low) * m_upper.height();
}

double MemberSidesPicture::differenceHeight(double percent) const
{
    // A positive difference means the right is stronger, the left weaker: the lower half.
    const double share = std::clamp(percent / m_reach, -1.0, 1.0);
    return m_lower.center().y() + share * m_lower.height() / 2.0;
}

void MemberSidesPicture::paint(QPainter& painter,
                               const QPalette& palette,
                               std::optional<Day> chosen) const
{
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    paintCalendar(painter, palette);
    if (chosen) {
        painter.setPen(QPen(palette.color(QPalette::Link), 2.0));
        painter.drawLine(QPointF(across(*chosen), m_upper.top()),
                         QPointF(across(*chosen), m_lower.bottom()));
    }
    paintValues(painter, palette);
    paintDifference(painter, palette);
    paintLegend(painter, palette);
    painter.restore();
}

QRectF MemberSidesPicture::besideAxis(const QRectF& half, double y) const
{
    const double centre = std::clamp(y, half.top() + m_line / 2.0, half.bottom() - m_line / 2.0);
    return {m_left, centre - m_line, half.left() - m_left - 6.0, 2.0 * m_line};
}

void MemberSidesPicture::paintCalendar(QPainter& painter, const QPalette& palette) const
{
    const Colours tones = colours(palette);
    for (const CalendarLabel& label : calendarLabels(m_from, m_to, QLocale())) {
        const double x = across(label.day);
        painter.setPen(QPen(tones.grid, 1.0));
        painter.drawLine(QPointF(x, m_upper.top()), QPointF(x, m_upper.bottom()));
        painter.drawLine(QPointF(x, m_lower.top()), QPointF(x, m_lower.bottom()));
        painter.setPen(palette.color(QPalette::Text));
        painter.drawText(
            QRectF(x - 60.0, m_lower.bottom() + 3.0, 120.0, m_line), Qt::AlignCenter, label.text);
    }
}

void MemberSidesPicture::paintValues(QPainter& painter, const QPalette& palette) const
{
    const Colours tones = colours(palette);
    const int decimals = m_step < 1.0 ? 1 : 0;
    for (double value = m_low; value <= m_high + 0.5 * m_step; value += m_step) {
        const double y = valueHeight(value);
        painter.setPen(QPen(tones.grid, 1.0));
        painter.drawLine(QPointF(m_upper.left(), y), QPointF(m_upper.right(), y));
        painter.setPen(palette.color(QPalette::Text));
        painter.drawText(besideAxis(m_upper, y),
                         Qt::AlignRight | Qt::AlignVCenter,
                         PictureWords::tr("%1 %2", "a number and its unit")
                             .arg(QLocale().toString(value, 'f', decimals), plain(m_figure.unit)));
    }
    const auto places = [this](Day day) { return across(day); };
    const auto heights = [this](double value) { return valueHeight(value); };
    painter.setClipRect(m_upper.adjusted(-kDot, -kDot, kDot, kDot));
    for (const Side side : {Side::Left, Side::Right}) {
        const auto& band = side == Side::Left ? m_figure.left : m_figure.right;
        const QColor tone = side == Side::Left ? tones.left : tones.right;
        paintBand(painter, band, places, heights, faint(tone));
    }
    for (const Side side : {Side::Left, Side::Right}) {
        const auto& band = side == Side::Left ? m_figure.left : m_figure.right;
        paintLine(painter, band, places, heights, sidePen(side, tones));
    }
    // The right first: a hollow mark on a filled one shows both.
    for (const Side side : {Side::Right, Side::Left}) {
        for (const SideDot& dot : m_figure.dots) {
            if (dot.side == side) {
                const QPointF at(across(dot.dot.day), valueHeight(dot.dot.kilograms));
                paintSideMark(painter, at, side, markOf(dot.dot), palette);
            }
        }
    }
    painter.setClipping(false);
}

void MemberSidesPicture::paintDifference(QPainter& painter, const QPalette& palette) const
{
    const Colours tones = colours(palette);
    const double threshold = m_figure.review.thresholdPercent;
    const auto shade = [&](double from, double to) {
        painter.fillRect(QRectF(QPointF(m_lower.left(), differenceHeight(from)),
                                QPointF(m_lower.right(), differenceHeight(to)))
                             .normalized(),
                         tones.shade);
    };
    shade(threshold, m_reach);
    shade(-threshold, -m_reach);
    const double step = m_reach > 30.0 ? 20.0 : 10.0;
    for (double percent = -std::floor(m_reach / step) * step; percent <= m_reach; percent += step) {
        const double y = differenceHeight(percent);
        const bool isMiddle = std::abs(percent) < 0.5;
        painter.setPen(isMiddle ? QPen(tones.quiet, 2.0) : QPen(tones.grid, 1.0));
        painter.drawLine(QPointF(m_lower.left(), y), QPointF(m_lower.right(), y));
        painter.setPen(palette.color(QPalette::Text));
        painter.drawText(
            besideAxis(m_lower, y),
            Qt::AlignRight | Qt::AlignVCenter,
            PictureWords::tr("%1 %").arg(QLocale().toString(std::abs(percent), 'f', 0)));
    }
    const auto places = [this](Day day) { return across(day); };
    const auto heights = [this](double percent) { return differenceHeight(percent); };
    const QColor ink = palette.color(QPalette::Text);
    for (const auto& run : runsOf(m_figure.difference, kWindowDays)) {
        paintBand(painter, run, places, heights, tones.band);
        paintLine(painter, run, places, heights, QPen(ink, 2.2));
    }
    for (const PairDot& pair : m_figure.pairs) {
        paintPairMark(
            painter, {across(pair.day), differenceHeight(pair.percent)}, pair.kind, palette);
    }
    QFont bold = painter.font();
    bold.setBold(true);
    const QFont usual = painter.font();
    painter.setFont(bold);
    painter.setPen(ink);
    const QRectF inside = m_lower.adjusted(8.0, 2.0, -8.0, -2.0);
    painter.drawText(inside, Qt::AlignLeft | Qt::AlignTop, PictureWords::tr("right weaker"));
    painter.drawText(inside, Qt::AlignLeft | Qt::AlignBottom, PictureWords::tr("left weaker"));
    painter.setFont(usual);
}

// Only the marks that are there.
void MemberSidesPicture::paintLegend(QPainter& painter, const QPalette& palette) const
{
    double x = m_legend.left() + kDot;
    const double y = m_legend.center().y();
    const auto say = [&](const QString& text, const std::function<void(const QPointF&)>& mark) {
        mark({x + kDot, y});
        painter.setPen(palette.color(QPalette::Text));
        const double width = QFontMetricsF(painter.font()).horizontalAdvance(text);
        painter.drawText(QRectF(x + 3.5 * kDot, m_legend.top(), width + 2.0, m_legend.height()),
                         Qt::AlignLeft | Qt::AlignVCenter,
                         text);
        x += width + 7.5 * kDot;
    };
    const auto sideMark = [&](Side side, SideMark mark) {
        return [&painter, &palette, side, mark](const QPointF& at) {
            paintSideMark(painter, at, side, mark, palette);
        };
    };
    const auto pairMark = [&](PairKind kind) {
        return [&painter, &palette, kind](const QPointF& at) {
            paintPairMark(painter, at, kind, palette);
        };
    };
    const auto hasMark = [&](SideMark mark) {
        return std::any_of(m_figure.dots.begin(), m_figure.dots.end(), [mark](const auto& dot) {
            return markOf(dot.dot) == mark;
        });
    };
    const auto hasPair = [&](PairKind kind) {
        return std::any_of(m_figure.pairs.begin(), m_figure.pairs.end(), [kind](const auto& pair) {
            return pair.kind == kind;
        });
    };
    say(PictureWords::tr("left"), sideMark(Side::Left, SideMark::Set));
    say(PictureWords::tr("right"), sideMark(Side::Right, SideMark::Set));
    if (hasMark(SideMark::AtLeast)) {
        say(PictureWords::tr("at least"), sideMark(Side::Left, SideMark::AtLeast));
    }
    if (hasMark(SideMark::Test)) {
        say(PictureWords::tr("tested"), sideMark(Side::Right, SideMark::Test));
    }
    if (hasPair(PairKind::Sets)) {
        say(PictureWords::tr("pair of sets"), pairMark(PairKind::Sets));
    }
    if (hasPair(PairKind::Open)) {
        say(PictureWords::tr("open pair"), pairMark(PairKind::Open));
    }
    if (hasPair(PairKind::Test)) {
        say(PictureWords::tr("tested pair"), pairMark(PairKind::Test));
    }
}

} // namespace levelbar::ui
