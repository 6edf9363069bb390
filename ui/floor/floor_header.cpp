// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/floor/floor_header.h"

#include "ui/floor/floor_colours.h"
#include "ui/floor/floor_model.h"

#include <QPainter>

#include <algorithm>

namespace levelbar::ui {

namespace {

constexpr int kPadding = 6;
constexpr int kNameLines = 2;

} // namespace

FloorHeader::FloorHeader(QWidget* parent)
    : QHeaderView(Qt::Horizontal, parent)
{
    setSectionResizeMode(QHeaderView::Fixed);
    setSectionsClickable(false);
    setHighlightSections(false);
    // The exercise's name is drawn over several sections: a scrolled strip is not enough.
    connect(this, &QHeaderView::sectionResized, this, [this] { viewport()->update(); });
}

QSize FloorHeader::sizeHint() const
{
    return {0, fontMetrics().height() * (kNameLines + 1) + 3 * kPadding};
}

QRect FloorHeader::exerciseRect(int column, const QRect& section) const
{
    int first = column;
    while (first > 0 &&
           !model()->headerData(first, orientation(), FloorModel::StartsExerciseRole).toBool()) {
        --first;
    }
    int last = column;
    while (last + 1 < count() &&
           !model()->headerData(last + 1, orientation(), FloorModel::StartsExerciseRole).toBool()) {
        ++last;
    }
    const int left = std::max(sectionViewportPosition(first), 0);
    const int right =
        std::min(sectionViewportPosition(last) + sectionSize(last), viewport()->width());
    return {left, section.top(), right - left, fontMetrics().height() * kNameLines + kPadding};
}

void FloorHeader::paintSection(QPainter* painter, const QRect& rect, int logicalIndex) const
{
    const auto head = [&](int role) {
        return model()->headerData(logicalIndex, orientation(), role);
    };
    painter->save();
    painter->setClipRect(rect);
    painter->fillRect(rect, groupColour(palette(), head(FloorModel::IsOddExerciseRole).toBool()));

    const QRect name = exerciseRect(logicalIndex, rect);
    QFont bold = font();
    bold.setBold(true);
    painter->setFont(bold);
    painter->setPen(palette().color(QPalette::Text));
    painter->drawText(name.adjusted(kPadding, kPadding / 2, -kPadding, 0),
                      Qt::AlignLeft | Qt::AlignBottom | Qt::TextWordWrap,
                      head(FloorModel::ExerciseNameRole).toString());

    painter->setFont(font());
    painter->setPen(dimTextColour(palette()));
    painter->drawText(rect.adjusted(kPadding, name.height(), -kPadding, -kPadding / 2),
                      Qt::AlignLeft | Qt::AlignVCenter,
                      head(FloorModel::SetRole).toString());

    painter->setPen(lineColour(palette()));
    painter->drawLine(rect.bottomLeft(), rect.bottomRight());
    if (head(FloorModel::StartsExerciseRole).toBool()) {
        painter->setPen(QPen(strongLineColour(palette()), 2));
        painter->drawLine(rect.topLeft(), rect.bottomLeft());
    }
    painter->restore();
}

} // namespace levelbar::ui
