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
constexpr int kShortestName = 8; // in widths of a digit
constexpr int kLongestName = 28;

// On two lines when that is enough, else on one with its end left out.
void paintName(QPainter& painter, const QRect& place, const QString& name)
{
    constexpr int kWrapped = Qt::AlignLeft | Qt::AlignBottom | Qt::TextWordWrap;
    const QFontMetrics metrics = painter.fontMetrics();
    const QRect needed = metrics.boundingRect(place, kWrapped, name);
    if (needed.height() <= metrics.height() * kNameLines && needed.width() <= place.width()) {
        painter.drawText(place, kWrapped, name);
        return;
    }
    painter.drawText(place,
                     Qt::AlignLeft | Qt::AlignBottom,
                     metrics.elidedText(name, Qt::ElideRight, place.width()));
}

} // namespace

FloorNames::FloorNames(QWidget* parent)
    : QHeaderView(Qt::Vertical, parent)
{
    setSectionResizeMode(QHeaderView::Fixed);
    setSectionsClickable(false);
    setDefaultSectionSize(fontMetrics().height() * 7 / 4);
}

QSize FloorNames::sizeHint() const
{
    QFont bold = font();
    bold.setBold(true);
    const QFontMetrics metrics(bold);
    int widest = metrics.horizontalAdvance(QLatin1Char('0')) * kShortestName;
    for (int row = 0; model() != nullptr && row < count(); ++row) {
        widest = std::max(widest,
                          metrics.horizontalAdvance(
                              model()->headerData(row, orientation(), Qt::DisplayRole).toString()));
    }
    const int limit = metrics.horizontalAdvance(QLatin1Char('0')) * kLongestName;
    return {std::min(widest, limit) + 3 * kPadding + numbersWidth(), 0};
}

// Rack and bib stand before the name.
int FloorNames::numbersWidth() const
{
    QFont bold = font();
    bold.setBold(true);
    return QFontMetrics(bold).horizontalAdvance(QStringLiteral("R20 000")) + kPadding;
}

void FloorNames::paintNumbers(QPainter& painter, const QRect& rect, int row) const
{
    const auto number = [&](int role) {
        return model()->headerData(row, orientation(), role).toInt();
    };
    QFont bold = font();
    bold.setBold(true);
    painter.setFont(bold);
    const QRect place(rect.left() + kPadding, rect.top(), numbersWidth() - kPadding, rect.height());
    if (const int rack = number(FloorModel::RackRole); rack > 0) {
        painter.setPen(palette().color(QPalette::Text));
        painter.drawText(place, Qt::AlignLeft | Qt::AlignVCenter, tr("R%1").arg(rack));
    }
    if (const int bib = number(FloorModel::BibRole); bib > 0) {
        painter.setPen(palette().color(QPalette::Text));
        painter.drawText(place, Qt::AlignRight | Qt::AlignVCenter, locale().toString(bib));
    }
}

void FloorNames::paintSection(QPainter* painter, const QRect& rect, int logicalIndex) const
{
    const bool isCurrent =
        selectionModel() != nullptr && selectionModel()->currentIndex().row() == logicalIndex;
    painter->save();
    painter->fillRect(rect, groupColour(palette(), true));
    if (isCurrent) {
        painter->fillRect(QRect(rect.left(), rect.top(), kPadding / 2, rect.height()),
                          palette().color(QPalette::Highlight));
    }
    paintNumbers(*painter, rect, logicalIndex);
    QFont written = font();
    written.setBold(isCurrent);
    painter->setFont(written);
    painter->setPen(palette().color(QPalette::Text));
    const QRect place = rect.adjusted(2 * kPadding + numbersWidth(), 0, -kPadding, 0);
    painter->drawText(
        place,
        Qt::AlignLeft | Qt::AlignVCenter,
        painter->fontMetrics().elidedText(
            model()->headerData(logicalIndex, orientation(), Qt::DisplayRole).toString(),
            Qt::ElideRight,
            place.width()));
    painter->setPen(lineColour(palette()));
    painter->drawLine(rect.bottomLeft(), rect.bottomRight());
    if (model()->headerData(logicalIndex, orientation(), FloorModel::StartsRackRole).toBool()) {
        painter->setPen(QPen(strongLineColour(palette()), 3));
        painter->drawLine(rect.topLeft(), rect.topRight());
    }
    painter->restore();
}

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
    const int right = sectionViewportPosition(last) + sectionSize(last);
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
    paintName(*painter,
              name.adjusted(kPadding, kPadding / 2, -kPadding, 0),
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
