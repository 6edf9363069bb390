// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/floor/floor_entry.h"

#include "ui/floor/entry_words.h"
#include "ui/floor/floor_attempt.h"
#include "ui/floor/floor_words.h"
#include "ui/floor/load_steps.h"
#include "ui/floor/side_words.h"
#include "ui/floor/typed_set.h"

namespace levelbar::ui {

namespace {

constexpr int kLongestDraft = 16;

bool takesLoad(const Exercise* exercise)
{
    return exercise == nullptr || exercise->load != LoadKind::None;
}

AmountKind amountKindOf(const Exercise* exercise)
{
    return exercise == nullptr ? AmountKind::Reps : exercise->amount;
}

} // namespace

FloorEntry::FloorEntry(FloorModel& model, FloorWriter& writer, const Clock& clock, QObject* parent)
    : QObject(parent)
    , m_model(model)
    , m_writer(writer)
    , m_clock(clock)
{
}

void FloorEntry::type(const CellKey& key, const QString& text)
{
    Draft draft = m_model.draft(key).value_or(Draft{});
    QString& typed = draft.isLoad ? draft.load : draft.amount;
    typed = (typed + text).left(kLongestDraft);
    draft.fault.clear();
    m_model.setDraft(key, draft);
}

bool FloorEntry::erase(const CellKey& key)
{
    auto draft = m_model.draft(key);
    if (!draft) {
        return false;
    }
    QString& typed = draft->isLoad ? draft->load : draft->amount;
    if (typed.isEmpty()) {
        return abandon(key);
    }
    typed.chop(1);
    draft->fault.clear();
    m_model.setDraft(key, *draft);
    return true;
}

bool FloorEntry::abandon(const CellKey& key)
{
    auto draft = m_model.draft(key);
    if (!draft) {
        return false;
    }
    if (draft->isLoad && !draft->amount.isEmpty()) {
        m_model.setDraft(key, {draft->amount, {}, false, {}});
    } else {
        m_model.clearDraft(key);
    }
    return true;
}

FloorEntry::Outcome FloorEntry::enter(const CellKey& key)
{
    const auto cell = m_model.cell(key);
    if (!cell) {
        return Outcome::Kept;
    }
    const Draft draft = m_model.draft(key).value_or(Draft{});
    if (draft.isLoad) {
        return storeLoad(key, *cell, draft.load);
    }
    if (!draft.amount.isEmpty()) {
        return storeAmount(key, *cell, draft.amount);
    }
    if (cell->done) {
        m_model.clearDraft(key);
        return Outcome::Kept;
    }
    return accept(key, *cell);
}

FloorEntry::Outcome FloorEntry::leave(const CellKey& key)
{
    const auto draft = m_model.draft(key);
    if (!draft) {
        return Outcome::Kept;
    }
    if (draft->text().trimmed().isEmpty()) {
        abandon(key);
        const auto rest = m_model.draft(key);
        return rest ? enter(key) : Outcome::Kept;
    }
    const Outcome outcome = enter(key);
    // A load that was typed while reps were waiting: both were meant.
    if (draft->isLoad && outcome == Outcome::Kept && m_model.draft(key)) {
        return enter(key);
    }
    return outcome;
}

FloorEntry::Outcome FloorEntry::refuse(const CellKey& key, const QString& sentence)
{
    Draft draft = m_model.draft(key).value_or(Draft{});
    draft.fault = sentence;
    m_model.setDraft(key, draft);
    // The cursor may be elsewhere by the time it is read: it says where.
    Q_EMIT refused(tr("%1, %2: %3")
                       .arg(personName(m_model.reference(), key.member),
                            placeText(m_model.reference(), {key.exercise, key.number, key.side}),
                            sentence));
    return Outcome::Refused;
}

FloorEntry::Outcome FloorEntry::accept(const CellKey& key, const FloorCell& cell)
{
    if (!cell.planned) {
        return refuse(key, tr("Nothing is planned here: type the reps that were done."));
    }
    const Exercise* exercise = exerciseOf(key);
    if (cell.sides.isOver) {
        return refuse(key, tr("Pain ended this exercise for both sides today."));
    }
    if (cell.sides.notToday) {
        return refuse(key,
                      *cell.sides.notToday == SideRule::SentOn
                          ? tr("Sent on: this difference is not ours to train.")
                          : tr("It hurt last time: neither side today."));
    }
    if (cell.notAsked) {
        return refuse(key,
                      tr("Not asked for today (%1): type the reps if it was done all the same.")
                          .arg(notAskedText(*cell.notAsked)));
    }
    if (cell.waits) {
        return refuse(key, tr("It waits for a choice: .4 on the pad asks again."));
    }
    if (cell.sides.isOpenPair) {
        return refuse(key, tr("An open pair is counted: type reps and reserve, like 9.1."));
    }
    if (cell.sides.isUncapped) {
        return refuse(key,
                      tr("A set without a limit is counted: type reps and reserve, like 11.2."));
    }
    if (cell.sides.stopAt) {
        KeyedSet keyed = keyedAmount(AmountKind::Reps, *cell.sides.stopAt);
        keyed.known = HowKnown::Accepted;
        return store(key, cell, keyed);
    }
    if (!cell.planned->amount) {
        return refuse(key,
                      amountKindOf(exercise) == AmountKind::Reps
                          ? tr("The plan has no reps here: type how many were done.")
                          : tr("The plan has no amount here: type what was done."));
    }
    KeyedSet keyed = keyedAmount(amountKindOf(exercise), *cell.planned->amount);
    keyed.known = HowKnown::Accepted;
    return store(key, cell, keyed);
}

FloorEntry::Outcome
FloorEntry::storeAmount(const CellKey& key, const FloorCell& cell, const QString& text)
{
    const auto keyed = keyedFrom(key, text);
    if (!keyed) {
        return refuse(key, faultText(keyed.error()));
    }
    return store(key, cell, *keyed);
}

FloorEntry::Outcome
FloorEntry::store(const CellKey& key, const FloorCell& cell, const KeyedSet& typed)
{
    const KeyedSet keyed = withSides(cell, typed);
    if (m_model.sheet().day > m_clock.today()) {
        return refuse(key, tr("This day is still to come: only plans can be laid for it."));
    }
    QString sentence;
    QString other; // what it means for the other side
    const auto failure = failureOf([&] {
        if (cell.done) {
            const DoneSet set = m_writer.correct(*cell.done, keyed);
            sentence = tr("Corrected: %1").arg(describeSet(m_model, set));
            other = storedSidesText(cell, set);
            return;
        }
        const PlannedSet planned = planOf(key, cell);
        if (lacksLoad(planned, exerciseOf(key))) {
            sentence.clear();
            return;
        }
        const DoneSet set = m_writer.log(m_model.sheet(), planned, keyed, withSameLoad(key, cell));
        sentence = tr("Saved: %1").arg(describeSet(m_model, set));
        other = storedSidesText(cell, set);
    });
    if (failure) {
        return refuse(key, *failure);
    }
    if (sentence.isEmpty()) {
        return refuse(key,
                      tr("%1 is new to this and has no load yet: press L, type the load, Enter.")
                          .arg(personName(m_model.reference(), key.member)));
    }
    m_model.clearDraft(key);
    Q_EMIT said(other.isEmpty() ? sentence : tr("%1. %2").arg(sentence, other));
    return Outcome::Stored;
}

void FloorEntry::beginLoad(const CellKey& key)
{
    if (!takesLoad(exerciseOf(key))) {
        refuse(
            key,
            tr("No load is written for %1.").arg(exerciseName(m_model.reference(), key.exercise)));
        return;
    }
    Draft draft = m_model.draft(key).value_or(Draft{});
    draft.isLoad = true;
    draft.load.clear();
    draft.fault.clear();
    m_model.setDraft(key, draft);
}

FloorEntry::Outcome
FloorEntry::storeLoad(const CellKey& key, const FloorCell& cell, const QString& text)
{
    if (text.trimmed().isEmpty()) {
        abandon(key);
        return Outcome::Kept;
    }
    MassUnit unit = MassUnit::Kilogram;
    const auto failure = failureOf([&] {
        unit = cell.done ? cell.done->performed.load.unit() : planOf(key, cell).load.unit();
    });
    if (failure) {
        return refuse(key, *failure);
    }
    const auto load = parseTypedLoad(text.toStdString(), unit);
    if (!load) {
        return refuse(key,
                      tr("'%1' is not a load like 62.5 or 135 lb, from 0 to 1000 kg.").arg(text));
    }
    return changeLoad(key, cell, *load);
}

void FloorEntry::stepLoad(const CellKey& key, int direction)
{
    const auto cell = m_model.cell(key);
    if (!cell) {
        return;
    }
    const Exercise* exercise = exerciseOf(key);
    if (!takesLoad(exercise)) {
        beginLoad(key); // says so
        return;
    }
    Mass load;
    const auto failure = failureOf(
        [&] { load = cell->done ? cell->done->performed.load : planOf(key, *cell).load; });
    if (failure) {
        refuse(key, *failure);
        return;
    }
    const Kit& kit = m_model.reference().kit;
    const Mass stepped = steppedLoad(load, kit, exercise ? *exercise : Exercise(), direction);
    if (!(stepped == load)) {
        changeLoad(key, *cell, stepped);
    }
}

FloorEntry::Outcome
FloorEntry::changeLoad(const CellKey& key, const FloorCell& cell, const Mass& load)
{
    QString sentence;
    const auto failure = failureOf([&] {
        if (cell.done) {
            const DoneSet set = m_writer.correctLoad(*cell.done, load);
            sentence = tr("Corrected: %1").arg(describeSet(m_model, set));
            return;
        }
        const PlannedSet planned = planOf(key, cell);
        std::vector<PlannedSet> changed{planned};
        if (lacksLoad(planned, exerciseOf(key))) {
            changed = alsoWithoutLoad(planned);
        }
        m_writer.changeLoad(changed, load, m_model.sheet().day);
        sentence = tr("Planned load: %1, %2: %3")
                       .arg(personName(m_model.reference(), key.member),
                            placeText(m_model.reference(), {key.exercise, key.number, key.side}),
                            loadText(load));
    });
    if (failure) {
        return refuse(key, *failure);
    }
    const Draft draft = m_model.draft(key).value_or(Draft{});
    if (draft.amount.isEmpty()) {
        m_model.clearDraft(key);
    } else {
        m_model.setDraft(key, {draft.amount, {}, false, {}});
    }
    Q_EMIT said(sentence);
    return Outcome::Kept;
}

void FloorEntry::takeBack()
{
    std::optional<TakenBack> taken;
    if (const auto failure = failureOf([&] { taken = m_writer.takeBackLast(); })) {
        Q_EMIT refused(*failure);
        return;
    }
    Q_EMIT said(taken ? describeTakenBack(m_model, *taken) : tr("There is nothing to take back."));
}

const Exercise* FloorEntry::exerciseOf(const CellKey& key) const
{
    return m_model.reference().library.exercise(key.exercise);
}

PlannedSet FloorEntry::planOf(const CellKey& key, const FloorCell& cell) const
{
    return cell.planned ? *cell.planned
                        : m_writer.suggestion(m_model.sheet(), m_model.reference(), key);
}

Result<KeyedSet> FloorEntry::keyedFrom(const CellKey& key, const QString& text) const
{
    // What is written on another day was not watched by the one who writes.
    const HowKnown known =
        m_model.sheet().day == m_clock.today() ? HowKnown::Counted : HowKnown::Sheet;
    return parseTypedSet(text, {amountKindOf(exerciseOf(key)), known, m_model.reference().effort});
}

std::optional<PlannedSet> FloorEntry::withSameLoad(const CellKey& key, const FloorCell& cell) const
{
    const CellSides& sides = cell.sides;
    if (!sides.isFirst || !(sides.isCapped || sides.isOpenPair)) {
        return std::nullopt;
    }
    const auto other = m_model.cell({key.member, key.exercise, key.number, otherSide(key.side)});
    if (!other || !other->isOpen() || !other->planned->id.isStored()) {
        return std::nullopt;
    }
    return other->planned;
}

std::vector<PlannedSet> FloorEntry::alsoWithoutLoad(const PlannedSet& planned) const
{
    std::vector<PlannedSet> found;
    for (const FloorRow& row : m_model.sheet().rows) {
        for (const FloorCell& cell : row.cells) {
            const bool isAlike = row.member == planned.member && cell.isOpen() &&
                                 cell.planned->exercise == planned.exercise;
            if (isAlike && lacksLoad(*cell.planned, exerciseOf({{}, planned.exercise}))) {
                found.push_back(*cell.planned);
            }
        }
    }
    if (!planned.id.isStored()) {
        found.push_back(planned);
    }
    return found;
}

} // namespace levelbar::ui
