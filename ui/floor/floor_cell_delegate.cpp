// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/floor/floor_cell_delegate.h"

#include "ui/floor/floor_colours.h"
#include "ui/floor/floor_model.h"

#include <QPainter>
#include <QPainterPath>

namespace levelbar::ui {

namespace {

using CellState = FloorModel::CellState;

constexpr int kPadding = 6;
constexpr int kMark = 10;

void paintGround(QPainter& painter, const QStyleOptionViewItem& option, const QModelIndex& index)
{
    const bool isDone = index.data(FloorModel::StateRole).toInt() == int(CellState::Done);
    const bool isOdd = index.data(FloorModel::IsOddExerciseRole).toBool();
    const QRect& rect = option.rect;
    painter.fillRect(rect,
                     isDone ? doneColour(option.palette) : groupColour(option.palette, isOdd));
    painter.setPen(lineColour(option.palette));
    painter.drawLine(rect.bottomLeft(), rect.bottomRight());
    painter.drawLine(rect.topRight(), rect.bottomRight());
    if (index.data(FloorModel::StartsRackRole).toBool()) {
        painter.setPen(QPen(strongLineColour(option.palette), 3));
        painter.drawLine(rect.topLeft(), rect.topRight());
    }
    if (index.data(FloorModel::StartsExerciseRole).toBool()) {
        painter.setPen(QPen(strongLineColour(option.palette), 2));
        painter.drawLine(rect.topLeft(), rect.bottomLeft());
    }
}

void paintFrame(QPainter& painter,
                const QStyleOptionViewItem& option,
                const QColor& colour,
                int width)
{
    painter.setPen(QPen(colour, width));
    painter.setBrush(Qt::NoBrush);
    const int inset = width / 2 + 1;
    painter.drawRect(option.rect.adjusted(inset, inset, -inset, -inset));
}

void paintText(QPainter& painter, const QStyleOptionViewItem& option, const QModelIndex& index)
{
    const bool isDraft = index.data(FloorModel::IsDraftRole).toBool();
    const bool isDone = index.data(FloorModel::StateRole).toInt() == int(CellState::Done);
    const QColor ink = option.palette.color(QPalette::Text);
    QFont font = option.font;
    font.setBold(isDraft);
    painter.setFont(font);
    painter.setPen(isDone || isDraft ? ink : dimTextColour(option.palette));
    const QRect rect = option.rect.adjusted(2 * kPadding + kMark, 0, -kPadding / 2, 0);
    QString text = index.data(Qt::DisplayRole).toString();
    const QFontMetrics metrics(font);
    text = metrics.elidedText(text, Qt::ElideRight, rect.width());
    painter.drawText(rect, Qt::AlignLeft | Qt::AlignVCenter, text);
    if (isDraft && option.state.testFlag(QStyle::State_HasFocus)) {
        const int x = rect.left() + metrics.horizontalAdvance(text) + 1;
        const int half = metrics.height() / 2;
        painter.setPen(QPen(ink, 2));
        painter.drawLine(x, rect.center().y() - half, x, rect.center().y() + half);
    }
}

// An eye: two lids and the pupil. A shape, so that it needs no colour.
void paintEye(QPainter& painter, const QRectF& place, const QColor& colour)
{
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(QPen(colour, 1.8));
    painter.setBrush(Qt::NoBrush);
    const QPointF left(place.left(), place.center().y());
    const QPointF right(place.right(), place.center().y());
    QPainterPath lids(left);
    lids.quadTo(QPointF(place.center().x(), place.top() - 1), right);
    lids.quadTo(QPointF(place.center().x(), place.bottom() + 1), left);
    painter.drawPath(lids);
    painter.setBrush(colour);
    painter.drawEllipse(place.center(), place.width() / 6, place.width() / 6);
    painter.restore();
}

void paintMark(QPainter& painter, const QStyleOptionViewItem& option, const QModelIndex& index)
{
    if (index.data(FloorModel::IsWorthEyesRole).toBool()) {
        constexpr int kEye = 14;
        paintEye(painter,
                 QRectF(option.rect.left() + 3, option.rect.center().y() - 4.5, kEye, 10),
                 option.palette.color(QPalette::Text));
    }
    const QVariant known = index.data(FloorModel::KnownRole);
    if (!known.isValid() || index.data(FloorModel::IsDraftRole).toBool()) {
        return;
    }
    const QRectF place(
        option.rect.left() + kPadding, option.rect.center().y() - kMark / 2.0 + 0.5, kMark, kMark);
    paintKnownMark(painter,
                   place,
                   static_cast<HowKnown>(known.toInt()),
                   index.data(FloorModel::IsFailedRole).toBool(),
                   option.palette.color(QPalette::Text));
}

} // namespace

void paintKnownMark(
    QPainter& painter, const QRectF& place, HowKnown known, bool isFailed, const QColor& colour)
{
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(QPen(colour, 1.6));
    const bool isFull = known == HowKnown::Counted || known == HowKnown::Sheet;
    const QRectF shape = place.adjusted(1, 1, -1, -1);
    painter.setBrush(isFull && !isFailed ? QBrush(colour) : QBrush(Qt::NoBrush));
    if (isFailed) {
        painter.drawLine(shape.topLeft(), shape.bottomRight());
        painter.drawLine(shape.topRight(), shape.bottomLeft());
    } else if (known == HowKnown::Counted || known == HowKnown::Accepted) {
        painter.drawEllipse(shape);
    } else {
        painter.drawRect(shape);
    }
    painter.restore();
}

void FloorCellDelegate::paint(QPainter* painter,
                              const QStyleOptionViewItem& option,
                              const QModelIndex& index) const
{
    painter->save();
    painter->setClipRect(option.rect);
    paintGround(*painter, option, index);
    paintMark(*painter, option, index);
    paintText(*painter, option, index);
    if (option.state.testFlag(QStyle::State_Selected)) {
        paintFrame(*painter, option, option.palette.color(QPalette::Highlight), 3);
    }
    if (!index.data(FloorModel::FaultRole).toString().isEmpty()) {
        paintFrame(*painter, option, faultColour(option.palette), 3);
    }
    painter->restore();
}

QSize FloorCellDelegate::sizeHint(const QStyleOptionViewItem& option,
                                  const QModelIndex& index) const
{
    const QFontMetrics metrics(option.font);
    const int text = metrics.horizontalAdvance(index.data(Qt::DisplayRole).toString());
    return {text + 3 * kPadding + kMark + kPadding / 2, metrics.height() + 2 * kPadding};
}

} // namespace levelbar::ui
