// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/today/line_delegate.h"

#include "ui/theme.h"
#include "ui/today/lines_model.h"

#include <QAbstractItemView>
#include <QApplication>
#include <QPainter>

namespace levelbar::ui {

namespace {

constexpr int kMargin = 7;
constexpr int kNameWidth = 156;
constexpr int kMark = 5; // the stripe of what is about safety

QFont bold(QFont font)
{
    font.setBold(true);
    return font;
}

QString actionText(const QModelIndex& index)
{
    return QStringLiteral("\u2192 ") + index.data(LinesModel::ActionRole).toString();
}

int wordsWidth(int width)
{
    return width - kNameWidth - 3 * kMargin - kMark;
}

int heightOf(const QFontMetrics& metrics, int width, const QString& text)
{
    return metrics.boundingRect(QRect(0, 0, width, 10'000), Qt::TextWordWrap, text).height();
}

} // namespace

QSize LineDelegate::sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const
{
    const auto* view = qobject_cast<const QAbstractItemView*>(option.widget);
    const int width = view == nullptr ? 600 : view->viewport()->width();
    const QFontMetrics& metrics = option.fontMetrics;
    if (!index.data(LinesModel::ReasonRole).isValid()) {
        return {width, metrics.height() + 2 * kMargin};
    }
    const int words =
        heightOf(metrics, wordsWidth(width), index.data(LinesModel::ReasonRole).toString()) +
        heightOf(QFontMetrics(bold(option.font)), wordsWidth(width), actionText(index));
    const int name = heightOf(
        QFontMetrics(bold(option.font)), kNameWidth, index.data(LinesModel::NameRole).toString());
    return {width, std::max(words, name) + 2 * kMargin};
}

void LineDelegate::paint(QPainter* painter,
                         const QStyleOptionViewItem& option,
                         const QModelIndex& index) const
{
    QStyleOptionViewItem background = option;
    initStyleOption(&background, index);
    background.text.clear();
    QApplication::style()->drawControl(
        QStyle::CE_ItemViewItem, &background, painter, option.widget);
    const bool isSelected = option.state.testFlag(QStyle::State_Selected);
    const bool isActive = option.state.testFlag(QStyle::State_Active);
    const auto group = isActive ? QPalette::Active : QPalette::Inactive;
    const QColor ink =
        option.palette.color(group, isSelected ? QPalette::HighlightedText : QPalette::Text);
    painter->save();
    painter->setPen(ink);
    const QRect place = option.rect.adjusted(kMark + kMargin, kMargin, -kMargin, -kMargin);
    if (!index.data(LinesModel::ReasonRole).isValid()) {
        painter->drawText(place, Qt::AlignVCenter, index.data(LinesModel::NameRole).toString());
        painter->restore();
        return;
    }
    if (index.data(LinesModel::IsSafetyRole).toBool()) {
        painter->fillRect(
            QRect(option.rect.left(), option.rect.top() + 2, kMark, option.rect.height() - 4),
            colours(option.palette).warning);
    }
    const QRect name(place.left(), place.top(), kNameWidth, place.height());
    QRect text(
        name.right() + kMargin, place.top(), wordsWidth(option.rect.width()), place.height());
    painter->setFont(bold(option.font));
    painter->drawText(name, Qt::TextWordWrap, index.data(LinesModel::NameRole).toString());
    painter->setFont(option.font);
    QRect used;
    painter->drawText(text, Qt::TextWordWrap, index.data(LinesModel::ReasonRole).toString(), &used);
    text.setTop(used.bottom() + 1);
    painter->setFont(bold(option.font));
    painter->drawText(text, Qt::TextWordWrap, actionText(index));
    painter->restore();
}

} // namespace levelbar::ui
