// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/floor/floor_pad.h"

#include "core/floor/day_changes.h"
#include "core/floor/floor_order.h"
#include "core/floor/newcomer.h"
#include "ui/floor/floor_attempt.h"
#include "ui/words.h"

#include <QLocale>

#include <algorithm>

namespace levelbar::ui {

namespace {

constexpr std::int64_t kMinute = 60'000;

bool isTakingBack(const NumberPad& pad, const PadKey& key)
{
    if (key.isRepeat) {
        return false;
    }
    const bool isDone = key.kind == PadKey::Kind::Character && key.character == '/';
    const bool isWord = key.kind == PadKey::Kind::Enter;
    return (isDone && pad.typed == "/") || (isWord && (pad.typed == "u" || pad.typed == ".9"));
}

// Asked about kit or another exercise: nothing has changed yet.
bool isOnlyAsked(const NumberPad& pad)
{
    return pad.question && (pad.question->kind == PadQuestion::Kind::KitGone ||
                            pad.question->kind == PadQuestion::Kind::OtherExercise);
}

} // namespace

FloorPad::FloorPad(FloorModel& model, FloorWriter& writer, FloorEntry& entry, Workspace& workspace)
    : m_model(model)
    , m_writer(writer)
    , m_entry(entry)
    , m_workspace(workspace)
{
    m_writer.setSpotSource([this] { return changedSpots(); });
}

void FloorPad::forgetBooks()
{
    for (auto& [key, hour] : m_hours) {
        hour.bookFor.clear();
        hour.bookColumns.clear();
    }
}

// Of the gym once, and of each person when they come: people arrive one by one.
void FloorPad::readBookFor(const FloorSheet& sheet, const FloorReference& reference)
{
    if (sheet.rows.empty()) {
        return;
    }
    if (m_hour->bookFor.empty() || m_hour->bookColumns != sheet.columns) {
        m_hour->book = readBook(m_workspace.logbook, reference, sheet);
        m_hour->bookColumns = sheet.columns;
        m_hour->holes.clear();
        m_hour->bookFor.clear();
    }
    for (const FloorRow& row : sheet.rows) {
        if (m_hour->bookFor.insert(row.member).second) {
            addPerson(m_workspace.logbook, row.member, m_hour->book, m_hour->holes);
        }
    }
}

void FloorPad::take(FloorSheet& sheet, const FloorReference& reference)
{
    const auto [place, isNew] = m_hours.try_emplace({sheet.groupClass, sheet.day});
    m_hour = &place->second;
    m_hour->stored = storedSpots(sheet);
    for (const auto& [member, spot] : m_hour->stored) {
        m_hour->places.try_emplace(member, FloorPlace{spot.bib, spot.rack, spot.turn});
    }
    m_hour->places = placesOf(sheet, reference, m_racks, m_hour->places, settingsFor(sheet));
    readBookFor(sheet, reference);
    ClassFloor read = hourOf(sheet, reference, m_hour->places, m_racks);
    dropReversedSteps();
    if (isNew) {
        ClassFloor running = read;
        for (const auto& [member, spot] : m_hour->stored) {
            running = remembering(std::move(running), spot.said);
        }
        running = rememberingPain(std::move(running), m_hour->book);
        m_hour->pad = openPad(std::move(running));
    } else {
        m_hour->pad.floor = takenOver(m_hour->pad.floor, m_hour->read, read);
    }
    m_hour->read = std::move(read);
    layHour(sheet,
            m_hour->pad.floor,
            m_eyes.pick(m_workspace.logbook, reference, m_hour->pad.floor, sheet.day));
}

// Somebody took back in another place what the pad had stored.
void FloorPad::dropReversedSteps()
{
    const auto newest = newestAction();
    while (!m_hour->marks.empty() && m_hour->marks.back().own &&
           (!newest || *newest < *m_hour->marks.back().own)) {
        m_hour->pad.floor = *m_hour->pad.steps.back().before;
        m_hour->pad.steps.pop_back();
        m_hour->marks.pop_back();
    }
}

std::optional<ActionId> FloorPad::newestAction() const
{
    return storage::lastTakeable(m_workspace.logbook);
}

std::optional<CellKey> FloorPad::cursor() const
{
    const ClassFloor& floor = pad().floor;
    return floor.cursor ? std::optional(keyOf(floor.cells[*floor.cursor].planned)) : std::nullopt;
}

void FloorPad::pointAt(const CellKey& key)
{
    ClassFloor& floor = m_hour->pad.floor;
    const PadCell* cell = padCellOf(floor, key);
    if (cell != nullptr && cell->isOpen()) {
        moveCursor(floor, static_cast<std::size_t>(cell - floor.cells.data()));
    }
}

int FloorPad::minute() const
{
    std::optional<Moment> first;
    for (const PadCell& cell : pad().floor.cells) {
        const auto keyed = cell.done ? cell.done->keyedAt : std::nullopt;
        if (keyed && (!first || *keyed < *first)) {
            first = keyed;
        }
    }
    if (!first) {
        return 0;
    }
    const std::int64_t passed = m_workspace.clock.now().milliseconds - first->milliseconds;
    return kWarmUpMinutes + static_cast<int>(passed / kMinute);
}

void FloorPad::press(const PadKey& key)
{
    if (isTakingBack(pad(), key)) {
        m_hour->pad.typed.clear();
        takeBack();
        Q_EMIT typedChanged();
        return;
    }
    obey(levelbar::press(pad(), book(), key, {m_workspace.clock.now(), minute()}));
}

void FloorPad::obey(PadOutcome outcome)
{
    if (outcome.refused) {
        m_hour->pad = std::move(outcome.pad);
        Q_EMIT typedChanged();
        Q_EMIT refused(words(*outcome.refused) + QLatin1Char('.'));
        return;
    }
    const ClassFloor before = pad().floor;
    const bool isStep = outcome.pad.steps.size() > pad().steps.size();
    const FloorBatch batch = isStep ? batchOf(before, outcome.pad.floor) : FloorBatch{};
    if (const auto reason = reasonAgainst(batch)) {
        Q_EMIT refused(*reason);
        return;
    }
    if (isStep) {
        if (!store(outcome.pad, batch)) {
            return;
        }
    } else {
        m_hour->pad = std::move(outcome.pad);
    }
    Q_EMIT typedChanged();
    if (pad().question && !outcome.said.empty()) {
        Q_EMIT said(words(outcome.said.front())); // its choices stand at the pad
    } else if (!outcome.said.empty()) {
        Q_EMIT said(words(outcome.said));
    }
    if (!isStep && pad().floor.cursor != before.cursor) {
        Q_EMIT cursorMoved();
    }
}

bool FloorPad::store(const NumberPad& after, const FloorBatch& batch)
{
    const NumberPad before = pad();
    m_hour->pad = after;
    // Reading again while it is announced must find as many marks as steps.
    m_hour->marks.push_back({});
    const auto failure = failureOf([&] {
        if (!batch.isEmpty()) {
            const auto newcomer = m_writer.write(batch, m_model.sheet().day);
            m_hour->marks.back().own = newestAction();
            if (newcomer && m_hour->pad.question) {
                m_hour->pad.question->member = *newcomer; // whom the questions are about
            }
        }
        m_hour->marks.back().newest = newestAction();
    });
    if (failure) {
        m_hour->pad = before;
        m_hour->marks.pop_back();
        Q_EMIT refused(*failure);
        return false;
    }
    if (batch.isEmpty()) {
        Q_EMIT hourChanged();
    } else {
        Q_EMIT cursorMoved(); // what was written was read again when it was announced
    }
    return true;
}

void FloorPad::takeBack()
{
    if (isOnlyAsked(pad())) {
        m_hour->pad.question.reset();
        Q_EMIT typedChanged();
        Q_EMIT said(tr("Nothing changed."));
        return;
    }
    m_hour->pad.question.reset();
    std::optional<ActionId> newest;
    if (const auto failure = failureOf([&] { newest = newestAction(); })) {
        Q_EMIT refused(*failure);
        return;
    }
    if (!m_hour->marks.empty() && m_hour->marks.back().newest == newest) {
        takeBackStep();
    } else {
        m_entry.takeBack();
    }
    Q_EMIT typedChanged();
}

void FloorPad::takeBackStep()
{
    const NumberPad before = pad();
    const std::vector<Mark> marks = m_hour->marks;
    const Phrase said = before.steps.back().said;
    const auto own = marks.back().own;
    m_hour->pad.floor = *before.steps.back().before;
    m_hour->pad.steps.pop_back();
    m_hour->marks.pop_back();
    const auto failure = failureOf([&] {
        if (own) {
            m_workspace.notifier.announce(
                storage::takeBack(m_workspace.logbook, *own, m_workspace.clock.now()));
        }
    });
    if (failure) {
        m_hour->pad = before;
        m_hour->marks = marks;
        Q_EMIT refused(*failure);
        return;
    }
    Q_EMIT hourChanged();
    Q_EMIT this->said(tr("Taken back: %1").arg(words(said)));
}

QString FloorPad::questionText() const
{
    if (!pad().question) {
        return {};
    }
    QStringList parts;
    int number = 0;
    for (const FloorChoice& choice : pad().question->choices) {
        QString part = tr("%1: %2").arg(QLocale().toString(++number), words(choice.said));
        if (choice.minutes != 0) {
            part += choice.minutes > 0 ? tr(" (%n min longer)", nullptr, choice.minutes)
                                       : tr(" (%n min shorter)", nullptr, -choice.minutes);
        }
        parts << part;
    }
    switch (pad().question->kind) {
    case PadQuestion::Kind::Pain:
        parts << tr("0: leave the sets out");
        break;
    case PadQuestion::Kind::Newcomer:
        for (const std::string_view asked : newcomerQuestions()) {
            parts << words({asked, {}});
        }
        parts << tr("Three answers, 1 yes or 0 no, like 000; Enter: not asked");
        break;
    case PadQuestion::Kind::WhyLeft:
        parts << tr("Enter: not said");
        break;
    default:
        parts << tr("0: none of these");
    }
    return parts.join(QStringLiteral("   "));
}

} // namespace levelbar::ui
