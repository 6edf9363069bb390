// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/exercise/done_set.h"

#include <QStyledItemDelegate>

namespace levelbar::ui {

// Draws the mark of how a set is known: a full disc for counted, a ring for as planned, a full
// square for a sheet, an empty square for a whole group, a cross for tried and failed. Shape
// leads; the colour is the text's.
void paintKnownMark(
    QPainter& painter, const QRectF& place, HowKnown known, bool isFailed, const QColor& colour);

// Draws the cells of the class floor: the plan dimmed, what is done with its mark, what is being
// typed with a caret, what was refused in a frame.
class FloorCellDelegate : public QStyledItemDelegate {
    Q_OBJECT

public:
    using QStyledItemDelegate::QStyledItemDelegate;

    void paint(QPainter* painter,
               const QStyleOptionViewItem& option,
               const QModelIndex& index) const override;
    [[nodiscard]] QSize sizeHint(const QStyleOptionViewItem& option,
                                 const QModelIndex& index) const override;
};

} // namespace levelbar::ui
