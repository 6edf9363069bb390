// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/roster_model.h"

#include "ui/glyphs.h"
#include "ui/words.h"

namespace levelbar::ui {

namespace {

// A short word a flag, safety first.
QString flagWord(const Attention& attention)
{
    switch (attention.kind) {
    case AttentionKind::Pain:
        return RosterModel::tr("Pain");
    case AttentionKind::Imbalance:
        switch (attention.tier) {
        case SideTier::Act:
            return RosterModel::tr("Work on it");
        case SideTier::SendOn:
            return RosterModel::tr("Send on");
        default:
            return RosterModel::tr("Check again");
        }
    case AttentionKind::Falling:
        return RosterModel::tr("Falling");
    case AttentionKind::NoGain:
        return RosterModel::tr("No gain");
    case AttentionKind::Absence:
        return RosterModel::tr("Not seen");
    default:
        return plain(attentionWord(attention.kind));
    }
}

// Each flag once, in the order of the reasons.
QString flagWords(const MemberReview& member)
{
    QStringList flags;
    for (const Attention& attention : member.attention) {
        const QString flag = flagWord(attention);
        if (!flags.contains(flag)) {
            flags << flag;
        }
    }
    return flags.join(QStringLiteral(" · "));
}

} // namespace

void RosterModel::show(ReviewedRosterPointer roster, std::map<MemberId, QString> classes)
{
    const bool hasSamePeople =
        m_roster && roster && m_roster->review.members.size() == roster->review.members.size();
    if (hasSamePeople) {
        m_roster = std::move(roster);
        m_classes = std::move(classes);
        Q_EMIT dataChanged(index(0, 0), index(rowCount() - 1, ColumnCount - 1));
        return;
    }
    beginResetModel();
    m_roster = std::move(roster);
    m_classes = std::move(classes);
    endResetModel();
}

const MemberReview* RosterModel::member(int row) const
{
    const bool isThere =
        m_roster && row >= 0 && row < static_cast<int>(m_roster->review.members.size());
    return isThere ? &m_roster->review.members[static_cast<std::size_t>(row)] : nullptr;
}

int RosterModel::rowCount(const QModelIndex& parent) const
{
    return parent.isValid() || !m_roster ? 0 : static_cast<int>(m_roster->review.members.size());
}

int RosterModel::columnCount(const QModelIndex& parent) const
{
    return parent.isValid() ? 0 : ColumnCount;
}

QVariant RosterModel::headerData(int section, Qt::Orientation orientation, int role) const
{
    if (orientation != Qt::Horizontal || role != Qt::DisplayRole) {
        return {};
    }
    switch (section) {
    case Person:
        return tr("Person");
    case ExperienceColumn:
        return tr("Experience");
    case LastSeen:
        return tr("Last seen");
    case TrendColumn:
        return tr("Trend");
    case Difference:
        return tr("Left and right");
    case Flags:
        return tr("Look at");
    default:
        return {};
    }
}

QString RosterModel::text(const MemberReview& member, int column) const
{
    switch (column) {
    case Person:
        return member.member.name.empty() ? plain(member.member.code) : plain(member.member.name);
    case ExperienceColumn:
        return member.member.experience ? word(experienceWord(*member.member.experience))
                                        : QString();
    case LastSeen:
        return member.lastSeen ? words(agoPhrase(m_roster->review.asOf - *member.lastSeen))
                               : tr("never");
    case TrendColumn: {
        const StrengthReview* main = mainStrength(member);
        return main == nullptr ? tr("nothing recent") : words(shortPhrase(main->trend));
    }
    case Difference: {
        const SideReview* side = mainSide(member);
        return side == nullptr ? QString() : words(shortPhrase(*side));
    }
    case Flags:
        return flagWords(member);
    default:
        return {};
    }
}

QVariant RosterModel::sortValue(const MemberReview& member, int column) const
{
    switch (column) {
    case ExperienceColumn:
        return member.member.experience ? static_cast<int>(*member.member.experience) : 0;
    case LastSeen:
        return member.lastSeen ? m_roster->review.asOf - *member.lastSeen : 100000;
    case TrendColumn: {
        const StrengthReview* main = mainStrength(member);
        return main != nullptr && main->trend.percentPerWeek ? main->trend.percentPerWeek->value
                                                             : -1000.0;
    }
    case Difference: {
        const SideReview* side = mainSide(member);
        return side == nullptr ? 0.0 : side->probabilityBeyondFive;
    }
    case Flags:
        // Safety first: the kind of the first reason leads, then how many there are.
        return member.attention.empty()
                   ? 0
                   : 1000 - 10 * static_cast<int>(member.attention.front().kind) +
                         static_cast<int>(member.attention.size());
    default:
        return text(member, column).toCaseFolded();
    }
}

QString RosterModel::toolTip(const MemberReview& member, int column) const
{
    switch (column) {
    case TrendColumn: {
        const StrengthReview* main = mainStrength(member);
        if (main == nullptr) {
            return {};
        }
        const Exercise* exercise = m_roster->library.exercise(main->exercise);
        return plain(exercise->name) + QStringLiteral(": ") + words(phrases(main->trend));
    }
    case Difference: {
        const SideReview* side = mainSide(member);
        return side == nullptr
                   ? QString()
                   : plain(side->measure.name) + QStringLiteral(": ") + words(phrases(*side));
    }
    case Flags: {
        QStringList lines;
        for (const Attention& attention : member.attention) {
            lines << words(attention);
        }
        return lines.join(QLatin1Char('\n'));
    }
    default:
        return {};
    }
}

QVariant RosterModel::data(const QModelIndex& index, int role) const
{
    const MemberReview* found = index.isValid() ? member(index.row()) : nullptr;
    if (found == nullptr) {
        return {};
    }
    switch (role) {
    case Qt::DisplayRole:
        return text(*found, index.column());
    case Qt::ToolTipRole: {
        const QString tip = toolTip(*found, index.column());
        return tip.isEmpty() ? QVariant() : tip;
    }
    case Qt::AccessibleTextRole: {
        const QString tip = toolTip(*found, index.column());
        return tip.isEmpty() ? text(*found, index.column()) : tip;
    }
    case SortRole:
        return sortValue(*found, index.column());
    case MemberRole:
        return static_cast<qlonglong>(found->member.id.value);
    case SearchRole: {
        const auto classes = m_classes.find(found->member.id);
        return QStringList{plain(found->member.name),
                           plain(found->member.code),
                           plain(found->member.group),
                           classes == m_classes.end() ? QString() : classes->second,
                           text(*found, ExperienceColumn),
                           text(*found, Flags)}
            .join(QLatin1Char('\n'));
    }
    default:
        return {};
    }
}

} // namespace levelbar::ui
