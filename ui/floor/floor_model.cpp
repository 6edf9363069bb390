// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/floor/floor_model.h"

#include "ui/floor/floor_words.h"
#include "ui/floor/side_words.h"

#include <algorithm>

namespace levelbar::ui {

namespace {

bool haveSameShape(const FloorSheet& a, const FloorSheet& b)
{
    return a.columns == b.columns &&
           std::equal(a.rows.begin(),
                      a.rows.end(),
                      b.rows.begin(),
                      b.rows.end(),
                      [](const FloorRow& x, const FloorRow& y) { return x.member == y.member; });
}

// What a cell is drawn from beside its text.
QVariant doneData(const FloorCell& cell, int role)
{
    using State = FloorModel::CellState;
    switch (role) {
    case FloorModel::StateRole: {
        const State unknown = cell.planned ? State::Open : State::Blank;
        return static_cast<int>(cell.done ? State::Done : unknown);
    }
    case FloorModel::KnownRole:
        return cell.done ? QVariant(static_cast<int>(cell.done->performed.known)) : QVariant();
    case FloorModel::IsFailedRole:
        return cell.done && cell.done->performed.reps == 0;
    default:
        return {};
    }
}

} // namespace

void FloorModel::setReference(FloorReference reference)
{
    m_reference = std::move(reference);
}

void FloorModel::setSheet(FloorSheet sheet)
{
    if (!haveSameShape(sheet, m_sheet)) {
        beginResetModel();
        m_sheet = std::move(sheet);
        endResetModel();
        return;
    }
    m_sheet = std::move(sheet);
    if (rowCount() > 0 && columnCount() > 0) {
        Q_EMIT dataChanged(index(0, 0), index(rowCount() - 1, columnCount() - 1));
        Q_EMIT headerDataChanged(Qt::Horizontal, 0, columnCount() - 1);
    }
    if (rowCount() > 0) {
        Q_EMIT headerDataChanged(Qt::Vertical, 0, rowCount() - 1);
    }
}

std::optional<CellKey> FloorModel::keyAt(const QModelIndex& index) const
{
    if (!index.isValid() || index.row() >= rowCount() || index.column() >= columnCount()) {
        return std::nullopt;
    }
    const FloorColumn& column = m_sheet.columns[static_cast<std::size_t>(index.column())];
    return CellKey{m_sheet.rows[static_cast<std::size_t>(index.row())].member,
                   column.exercise,
                   column.number,
                   column.side};
}

QModelIndex FloorModel::indexOf(const CellKey& key) const
{
    const auto row = std::find_if(m_sheet.rows.begin(), m_sheet.rows.end(), [&](const auto& r) {
        return r.member == key.member;
    });
    const auto column = std::find(m_sheet.columns.begin(),
                                  m_sheet.columns.end(),
                                  FloorColumn{key.exercise, key.number, key.side});
    if (row == m_sheet.rows.end() || column == m_sheet.columns.end()) {
        return {};
    }
    return index(static_cast<int>(row - m_sheet.rows.begin()),
                 static_cast<int>(column - m_sheet.columns.begin()));
}

std::optional<FloorCell> FloorModel::cell(const CellKey& key) const
{
    const QModelIndex found = indexOf(key);
    return found.isValid() ? std::optional(cellAt(found)) : std::nullopt;
}

bool FloorModel::isLeftOfPair(int column) const
{
    const auto at = static_cast<std::size_t>(column);
    if (at + 1 >= m_sheet.columns.size()) {
        return false;
    }
    const FloorColumn& left = m_sheet.columns[at];
    const FloorColumn& right = m_sheet.columns[at + 1];
    return left.exercise == right.exercise && left.number == right.number &&
           left.side == Side::Left && right.side == Side::Right;
}

std::vector<QModelIndex> FloorModel::round() const
{
    std::vector<QModelIndex> all;
    const int rows = rowCount();
    all.reserve(static_cast<std::size_t>(rows * columnCount()));
    for (int column = 0; column < columnCount(); ++column) {
        const bool isPair = isLeftOfPair(column);
        for (int turn = 0; turn < (isPair ? 2 : 1); ++turn) {
            for (int row = 0; row < rows; ++row) {
                const bool startsRight = isPair && cellAt(index(row, column + 1)).sides.isFirst;
                all.push_back(index(row, column + (startsRight ? 1 - turn : turn)));
            }
        }
        column += isPair ? 1 : 0;
    }
    return all;
}

QModelIndex FloorModel::nextOpen(const QModelIndex& from) const
{
    const std::vector<QModelIndex> all = round();
    const auto found = std::find(all.begin(), all.end(), from);
    const auto start = static_cast<std::size_t>(found - all.begin());
    for (std::size_t step = 1; step <= all.size(); ++step) {
        // From nowhere: the first.
        const std::size_t place = found == all.end() ? step - 1 : (start + step) % all.size();
        if (all[place] != from && cellAt(all[place]).isOpen()) {
            return all[place];
        }
    }
    return {};
}

FloorModel::DraftKey FloorModel::draftKey(const CellKey& key) const
{
    return {m_sheet.groupClass, m_sheet.day, key};
}

std::optional<Draft> FloorModel::draft(const CellKey& key) const
{
    const auto found = m_drafts.find(draftKey(key));
    return found == m_drafts.end() ? std::nullopt : std::optional(found->second);
}

void FloorModel::setDraft(const CellKey& key, const Draft& draft)
{
    m_drafts[draftKey(key)] = draft;
    tell(key);
}

void FloorModel::clearDraft(const CellKey& key)
{
    if (m_drafts.erase(draftKey(key)) > 0) {
        tell(key);
    }
}

void FloorModel::tell(const CellKey& key)
{
    const QModelIndex changed = indexOf(key);
    if (changed.isValid()) {
        Q_EMIT dataChanged(changed, changed);
    }
}

int FloorModel::rowCount(const QModelIndex& parent) const
{
    return parent.isValid() ? 0 : static_cast<int>(m_sheet.rows.size());
}

int FloorModel::columnCount(const QModelIndex& parent) const
{
    return parent.isValid() ? 0 : static_cast<int>(m_sheet.columns.size());
}

const FloorCell& FloorModel::cellAt(const QModelIndex& index) const
{
    return m_sheet.rows[static_cast<std::size_t>(index.row())]
        .cells[static_cast<std::size_t>(index.column())];
}

QString FloorModel::shownText(const QModelIndex& index) const
{
    const FloorCell& cell = cellAt(index);
    const Exercise* exercise = m_reference.library.exercise(
        m_sheet.columns[static_cast<std::size_t>(index.column())].exercise);
    if (cell.done) {
        return doneCellText(*cell.done, exercise, m_reference.effort);
    }
    return cell.planned ? openCellText(cell, exercise) : QString();
}

QString FloorModel::spokenText(const QModelIndex& index) const
{
    const FloorCell& cell = cellAt(index);
    const FloorColumn& column = m_sheet.columns[static_cast<std::size_t>(index.column())];
    const Exercise* exercise = m_reference.library.exercise(column.exercise);
    QString text = tr("%1, %2.").arg(
        personName(m_reference, m_sheet.rows[static_cast<std::size_t>(index.row())].member),
        placeText(m_reference, column));
    const QString sides = cell.done ? QString() : sidesText(cell, column.side);
    if (cell.planned) {
        const QString plan = plannedText(*cell.planned, exercise);
        text += sides.isEmpty() ? tr(" Planned %1.").arg(plan)
                                : tr(" Planned %1, %2.").arg(plan, sides);
    }
    if (cell.isWorthEyes && cell.isOpen()) {
        text += tr(" Worth watching.");
    }
    text += cell.done ? tr(" Done %1, %2.")
                            .arg(doneText(*cell.done, exercise, m_reference.effort),
                                 knownText(cell.done->performed.known))
                      : tr(" Not known yet.");
    if (const auto typed = draft(*keyAt(index))) {
        text += tr(" Typed: %1.").arg(typed->text());
        if (!typed->fault.isEmpty()) {
            text += QLatin1Char(' ') + typed->fault;
        }
    }
    return text;
}

QVariant FloorModel::data(const QModelIndex& index, int role) const
{
    const auto key = keyAt(index);
    if (!key) {
        return {};
    }
    const Draft typed = draft(*key).value_or(Draft{});
    const bool isDraft = typed.isLoad || !typed.text().isEmpty();
    switch (role) {
    case Qt::DisplayRole:
        if (isDraft) {
            return typed.isLoad ? tr("load %1").arg(typed.text()) : typed.text();
        }
        return shownText(index);
    case Qt::AccessibleTextRole:
        return spokenText(index);
    case IsDraftRole:
        return isDraft;
    case Qt::ToolTipRole:
    case FaultRole:
        return typed.fault;
    case StartsExerciseRole:
        return startsExercise(index.column());
    case IsOddExerciseRole:
        return isOddExercise(index.column());
    case IsWorthEyesRole:
        return cellAt(index).isWorthEyes && cellAt(index).isOpen();
    case StartsRackRole:
        return startsRack(index.row());
    default:
        return doneData(cellAt(index), role);
    }
}

QVariant FloorModel::headerData(int section, Qt::Orientation orientation, int role) const
{
    const int count = orientation == Qt::Horizontal ? columnCount() : rowCount();
    if (section < 0 || section >= count) {
        return {};
    }
    return orientation == Qt::Horizontal ? columnHeader(section, role)
                                         : personHeader(section, role);
}

QVariant FloorModel::personHeader(int row, int role) const
{
    const FloorRow& person = m_sheet.rows[static_cast<std::size_t>(row)];
    const QString name = personName(m_reference, person.member);
    if (role == Qt::DisplayRole) {
        return name;
    }
    if (role == BibRole) {
        return person.bib;
    }
    if (role == StartsRackRole) {
        return startsRack(row);
    }
    if (role == RackRole) {
        const bool isShared = !m_sheet.rows.empty() && m_sheet.rows.back().rack > 1;
        return isShared && (row == 0 || startsRack(row)) ? person.rack : 0;
    }
    if (role == Qt::ToolTipRole || role == Qt::AccessibleTextRole) {
        const auto done = std::count_if(
            person.cells.begin(), person.cells.end(), [](const auto& cell) { return cell.done; });
        return tr("%1: %n sets done", nullptr, static_cast<int>(done)).arg(name);
    }
    return {};
}

QVariant FloorModel::columnHeader(int column, int role) const
{
    const FloorColumn& set = m_sheet.columns[static_cast<std::size_t>(column)];
    switch (role) {
    case Qt::DisplayRole:
    case Qt::ToolTipRole:
    case Qt::AccessibleTextRole:
        return placeText(m_reference, set);
    case ExerciseNameRole:
        return exerciseName(m_reference, set.exercise);
    case SetRole: {
        const QString number = QLocale().toString(set.number);
        return set.side == Side::Both ? tr("Set %1").arg(number)
                                      : tr("Set %1 %2").arg(number, sideLetter(set.side));
    }
    case StartsExerciseRole:
        return startsExercise(column);
    case IsOddExerciseRole:
        return isOddExercise(column);
    default:
        return {};
    }
}

// A line between racks: not above the first.
bool FloorModel::startsRack(int row) const
{
    const auto at = static_cast<std::size_t>(row);
    return at > 0 && m_sheet.rows[at - 1].rack != m_sheet.rows[at].rack;
}

bool FloorModel::startsExercise(int column) const
{
    const auto at = static_cast<std::size_t>(column);
    return at == 0 || m_sheet.columns[at - 1].exercise != m_sheet.columns[at].exercise;
}

bool FloorModel::isOddExercise(int column) const
{
    int changes = 0;
    for (int at = 1; at <= column; ++at) {
        changes += startsExercise(at) ? 1 : 0;
    }
    return changes % 2 == 1;
}

} // namespace levelbar::ui
