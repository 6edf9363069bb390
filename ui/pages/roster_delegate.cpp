// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/roster_delegate.h"

#include "ui/glyphs.h"
#include "ui/pages/roster_model.h"
#include "ui/words.h"

#include <QApplication>
#include <QPainter>
#include <QSortFilterProxyModel>

namespace levelbar::ui {

namespace {

constexpr int kRowHeight = 50;
constexpr int kGlyphWidth = 112;

const MemberReview* memberAt(const QModelIndex& index)
{
    QModelIndex source = index;
    if (const auto* proxy = qobject_cast<const QSortFilterProxyModel*>(index.model())) {
        source = proxy->mapToSource(index);
    }
    const auto* model = qobject_cast<const RosterModel*>(source.model());
    return model == nullptr ? nullptr : model->member(source.row());
}

void drawElided(QPainter& painter, const QRect& place, const QString& text)
{
    painter.drawText(place,
                     Qt::AlignVCenter | Qt::AlignLeft,
                     painter.fontMetrics().elidedText(text, Qt::ElideRight, place.width()));
}

void paintName(QPainter& painter,
               const QRect& place,
               const MemberReview& member,
               const QColor& quiet)
{
    QFont bold = painter.font();
    bold.setBold(true);
    painter.save();
    painter.setFont(bold);
    const QRect upper(place.left(), place.top() + 4, place.width(), place.height() / 2 - 2);
    const QRect lower(place.left(), upper.bottom(), place.width(), place.height() / 2 - 4);
    const bool hasName = !member.member.name.empty();
    drawElided(painter, upper, plain(hasName ? member.member.name : member.member.code));
    painter.restore();
    painter.save();
    painter.setPen(quiet);
    drawElided(painter,
               lower,
               hasName ? plain(member.member.code + (member.member.group.empty() ? "" : " · ") +
                               member.member.group)
                       : plain(member.member.group));
    painter.restore();
}

} // namespace

QSize RosterDelegate::sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const
{
    QSize size = QStyledItemDelegate::sizeHint(option, index);
    size.setHeight(kRowHeight);
    return size;
}

void RosterDelegate::paint(QPainter* painter,
                           const QStyleOptionViewItem& option,
                           const QModelIndex& index) const
{
    const MemberReview* member = memberAt(index);
    QStyleOptionViewItem plainOption = option;
    initStyleOption(&plainOption, index);
    const int column = index.column();
    if (member == nullptr || column == RosterModel::ExperienceColumn ||
        column == RosterModel::LastSeen) {
        QStyledItemDelegate::paint(painter, option, index);
        return;
    }
    plainOption.text.clear();
    QApplication::style()->drawControl(
        QStyle::CE_ItemViewItem, &plainOption, painter, plainOption.widget);
    painter->save();
    const bool isSelected = (option.state & QStyle::State_Selected) != 0;
    QPalette palette = option.palette;
    if (isSelected) {
        palette.setColor(QPalette::Text, palette.color(QPalette::HighlightedText));
        palette.setColor(QPalette::Base, palette.color(QPalette::Highlight)); // inside hollow marks
    }
    painter->setPen(palette.color(QPalette::Text));
    const QColor quiet = isSelected ? palette.color(QPalette::Text) : colours(palette).quiet;
    const QRect place = option.rect.adjusted(8, 0, -6, 0);
    const QRect glyph(place.left(), place.top(), kGlyphWidth, place.height());
    const QRect beside = place.adjusted(kGlyphWidth + 6, 0, 0, 0);
    const QString text = index.data().toString();
    const StrengthReview* strength = mainStrength(*member);
    const SideReview* side = mainSide(*member);
    if (column == RosterModel::Person) {
        paintName(*painter, place, *member, quiet);
    } else if (column == RosterModel::TrendColumn && strength != nullptr) {
        paintTrend(*painter, glyph, strength->trend, palette);
        drawElided(*painter, beside, text);
    } else if (column == RosterModel::Difference && side != nullptr) {
        paintTilt(*painter, glyph, *side, palette);
        drawElided(*painter, beside, text);
    } else {
        if (column == RosterModel::Flags && !member->attention.empty() &&
            member->attention.front().kind == AttentionKind::Pain && !isSelected) {
            painter->setPen(colours(palette).warning);
            QFont bold = painter->font();
            bold.setBold(true);
            painter->setFont(bold);
        }
        drawElided(*painter, place, text);
    }
    painter->restore();
}

} // namespace levelbar::ui
