// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/charts/sides_chart.h"

#include "ui/glyphs.h"
#include "ui/side_text.h"
#include "ui/theme.h"
#include "ui/words.h"

#include <QHelpEvent>
#include <QKeyEvent>
#include <QLocale>
#include <QPainter>
#include <QScrollBar>
#include <QToolTip>

#include <algorithm>
#include <cmath>

namespace levelbar::ui {

namespace {

constexpr int kNameWidth = 190;
constexpr int kValueMargin = 34;
constexpr double kDotRadius = 6.0;
constexpr double kLeastScale = 20.0;
constexpr double kMostScale = 60.0;
constexpr float kOneDay = 0.55F;

QString nameOf(const SidesRow& row)
{
    return row.name.empty() ? plain(row.code) : plain(row.name);
}

} // namespace

SidesChart::SidesChart(QWidget* parent)
    : QAbstractScrollArea(parent)
{
    setFocusPolicy(Qt::StrongFocus);
    setFrameShape(QFrame::NoFrame);
    setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    viewport()->setMouseTracking(true);
}

void SidesChart::show(const SidesFigure& figure)
{
    const auto before = current();
    m_figure = figure;
    double farthest = kLeastScale;
    for (const SidesRow& row : figure.rows) {
        const Estimate& d = row.side.differencePercent;
        farthest = std::max({farthest, std::abs(d.low), std::abs(d.high)});
    }
    m_reach = std::min(kMostScale, std::ceil(farthest / 10.0) * 10.0);
    m_current = -1;
    for (std::size_t row = 0; before && row < figure.rows.size(); ++row) {
        if (figure.rows[row].member == before->member) {
            m_current = static_cast<int>(row);
        }
    }
    setScrollRange();
    viewport()->update();
}

std::optional<SidesRow> SidesChart::current() const
{
    const auto row = static_cast<std::size_t>(m_current);
    return m_current < 0 || row >= m_figure.rows.size() ? std::nullopt
                                                        : std::optional(m_figure.rows[row]);
}

void SidesChart::choose(MemberId member)
{
    for (std::size_t row = 0; row < m_figure.rows.size(); ++row) {
        if (m_figure.rows[row].member == member) {
            select(static_cast<int>(row));
        }
    }
}

int SidesChart::rowHeight() const
{
    return fontMetrics().height() + 10;
}

int SidesChart::headerHeight() const
{
    return 2 * fontMetrics().height() + 14;
}

double SidesChart::place(double percent) const
{
    const double width = viewport()->width() - kNameWidth - kValueMargin;
    // The sign turns round: a positive difference means the right is stronger, the left weaker,
    // and that belongs in the left half.
    const double share = std::clamp(-percent / m_reach, -1.0, 1.0);
    return kNameWidth + width / 2.0 * (1.0 + share);
}

void SidesChart::setScrollRange()
{
    const int content = static_cast<int>(m_figure.rows.size()) * rowHeight();
    const int page = std::max(0, viewport()->height() - headerHeight());
    verticalScrollBar()->setPageStep(page);
    verticalScrollBar()->setSingleStep(rowHeight());
    verticalScrollBar()->setRange(0, std::max(0, content - page));
}

void SidesChart::resizeEvent(QResizeEvent* event)
{
    QAbstractScrollArea::resizeEvent(event);
    setScrollRange();
}

int SidesChart::rowAt(int y) const
{
    const int row = (y - headerHeight() + verticalScrollBar()->value()) / rowHeight();
    return y < headerHeight() || row >= static_cast<int>(m_figure.rows.size()) ? -1 : row;
}

void SidesChart::select(int row)
{
    if (m_figure.rows.empty()) {
        return;
    }
    m_current = std::clamp(row, 0, static_cast<int>(m_figure.rows.size()) - 1);
    const int top = m_current * rowHeight();
    const int page = verticalScrollBar()->pageStep();
    if (top < verticalScrollBar()->value()) {
        verticalScrollBar()->setValue(top);
    } else if (top + rowHeight() > verticalScrollBar()->value() + page) {
        verticalScrollBar()->setValue(top + rowHeight() - page);
    }
    const SidesRow& chosen = m_figure.rows[static_cast<std::size_t>(m_current)];
    setAccessibleDescription(nameOf(chosen) + QStringLiteral(": ") + listedText(chosen.side));
    viewport()->update();
    Q_EMIT this->chosen();
}

void SidesChart::paintAxis(QPainter& painter) const
{
    const Colours tones = colours(palette());
    const int bottom = viewport()->height();
    const int top = headerHeight();
    const double threshold = m_figure.thresholdPercent;
    painter.fillRect(QRectF(QPointF(place(m_reach), top), QPointF(place(threshold), bottom)),
                     tones.shade);
    painter.fillRect(QRectF(QPointF(place(-threshold), top), QPointF(place(-m_reach), bottom)),
                     tones.shade);
    painter.setPen(palette().color(QPalette::Text));
    const int line = fontMetrics().height();
    const auto middle = static_cast<int>(place(0.0));
    const auto leftEdge = static_cast<int>(place(m_reach));
    const auto rightEdge = static_cast<int>(place(-m_reach));
    QFont bold = painter.font();
    bold.setBold(true);
    painter.save();
    painter.setFont(bold);
    painter.drawText(
        QRect(leftEdge, 2, middle - leftEdge - 8, line), Qt::AlignLeft, tr("left weaker"));
    painter.drawText(
        QRect(middle + 8, 2, rightEdge - middle - 8, line), Qt::AlignRight, tr("right weaker"));
    painter.restore();
    const int step = m_reach > 30.0 ? 20 : 10;
    const int steps = static_cast<int>(m_reach) / step;
    for (int percent = -steps * step; percent <= steps * step; percent += step) {
        const double x = place(percent);
        painter.setPen(percent == 0 ? QPen(tones.quiet, 2.0) : QPen(tones.grid, 1.0));
        painter.drawLine(QPointF(x, top), QPointF(x, bottom));
        painter.setPen(tones.quiet);
        painter.drawText(QRectF(x - 40, line + 5, 80, line),
                         Qt::AlignCenter,
                         tr("%1 %").arg(locale().toString(std::abs(percent))));
    }
}

void SidesChart::paintRow(QPainter& painter, int row, int top) const
{
    const SidesRow& entry = m_figure.rows[static_cast<std::size_t>(row)];
    const Colours tones = colours(palette());
    const int height = rowHeight();
    const double y = top + height / 2.0;
    if (row == m_current) {
        painter.fillRect(QRect(0, top, viewport()->width(), height), palette().alternateBase());
        const QColor bar = hasFocus() ? palette().color(QPalette::Highlight) : tones.quiet;
        painter.fillRect(QRect(0, top, 4, height), bar);
    }
    const bool isListed = entry.side.tier != SideTier::None;
    QFont font = painter.font();
    font.setBold(isListed);
    painter.save();
    painter.setFont(font);
    painter.setPen(palette().color(QPalette::Text));
    painter.drawText(
        QRect(8, top, kNameWidth - 16, height),
        Qt::AlignVCenter | Qt::AlignLeft,
        painter.fontMetrics().elidedText(nameOf(entry), Qt::ElideRight, kNameWidth - 16));
    painter.restore();
    const Estimate& d = entry.side.differencePercent;
    const bool isLeft = entry.side.weaker == Side::Left;
    const bool isSingle = entry.side.days < 2;
    QColor tone = isSingle ? tones.quiet : (isLeft ? tones.left : tones.right);
    tone.setAlphaF(isSingle ? kOneDay : 1.0F); // behind those who are known better
    QPen whisker(tone, 2.0);
    if (!hasClearSide(entry.side)) {
        whisker.setStyle(Qt::DotLine);
    }
    painter.setPen(whisker);
    painter.drawLine(QPointF(place(d.low), y), QPointF(place(d.high), y));
    painter.setPen(QPen(tone, 2.0));
    // Left hollow, right filled: shape leads.
    painter.setBrush(isLeft ? palette().color(QPalette::Base) : tone);
    painter.drawEllipse(QPointF(place(d.value), y), kDotRadius, kDotRadius);
}

void SidesChart::paintEvent(QPaintEvent* /*event*/)
{
    QPainter painter(viewport());
    painter.setRenderHint(QPainter::Antialiasing);
    painter.fillRect(viewport()->rect(), palette().base());
    if (m_figure.rows.empty()) {
        painter.setPen(palette().color(QPalette::Text));
        painter.drawText(viewport()->rect(),
                         Qt::AlignCenter | Qt::TextWordWrap,
                         tr("Nobody here has been measured on both sides on one day yet."));
        return;
    }
    paintAxis(painter);
    painter.setClipRect(0, headerHeight(), viewport()->width(), viewport()->height());
    const int offset = verticalScrollBar()->value();
    const int first = offset / rowHeight();
    for (int row = first; row < static_cast<int>(m_figure.rows.size()); ++row) {
        const int top = headerHeight() + row * rowHeight() - offset;
        if (top > viewport()->height()) {
            break;
        }
        paintRow(painter, row, top);
    }
}

void SidesChart::mousePressEvent(QMouseEvent* event)
{
    const int row = rowAt(event->pos().y());
    if (row >= 0) {
        select(row);
    }
}

void SidesChart::mouseDoubleClickEvent(QMouseEvent* event)
{
    const int row = rowAt(event->pos().y());
    if (row >= 0) {
        Q_EMIT opened(m_figure.rows[static_cast<std::size_t>(row)].member);
    }
}

void SidesChart::keyPressEvent(QKeyEvent* event)
{
    switch (event->key()) {
    case Qt::Key_Up:
        select(m_current - 1);
        return;
    case Qt::Key_Down:
        select(m_current + 1);
        return;
    case Qt::Key_Home:
        select(0);
        return;
    case Qt::Key_End:
        select(static_cast<int>(m_figure.rows.size()) - 1);
        return;
    case Qt::Key_Return:
    case Qt::Key_Enter:
        if (const auto row = current(); row && !event->isAutoRepeat()) {
            Q_EMIT opened(row->member);
        }
        return;
    case Qt::Key_PageUp:
        select(std::max(0, m_current - verticalScrollBar()->pageStep() / rowHeight()));
        return;
    case Qt::Key_PageDown:
        select(m_current + verticalScrollBar()->pageStep() / rowHeight());
        return;
    case Qt::Key_R:
        if (current()) {
            Q_EMIT reasonWanted();
        }
        return;
    default:
        QAbstractScrollArea::keyPressEvent(event);
    }
}

bool SidesChart::viewportEvent(QEvent* event)
{
    if (event->type() == QEvent::ToolTip) {
        const auto* help = static_cast<QHelpEvent*>(event);
        const int row = rowAt(help->pos().y());
        if (row >= 0) {
            const SidesRow& entry = m_figure.rows[static_cast<std::size_t>(row)];
            const QString days = tr("%n days measured", nullptr, entry.side.days);
            QToolTip::showText(help->globalPos(),
                               nameOf(entry) + QStringLiteral("\n") + listedText(entry.side) +
                                   QStringLiteral("\n") + days,
                               viewport());
            return true;
        }
        QToolTip::hideText();
    }
    return QAbstractScrollArea::viewportEvent(event);
}

} // namespace levelbar::ui
