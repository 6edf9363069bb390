// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/base/number.h"
#include "core/member/member.h"
#include "storage/done_set_row.h"
#include "storage/exchange/import_context.h"
#include "storage/exchange/import_rows.h"
#include "storage/exchange/key_lines.h"
#include "storage/set_store.h"
#include "storage/sqlite_errors.h"

#include <sqlite3.h>

#include <algorithm>

namespace levelbar::storage {

namespace {

constexpr std::array<std::string_view, 27> kSetColumns = {
    "date",      "member_id", "exercise", "set",       "side",        "load",   "unit",
    "reps",      "rir",       "class",    "order",     "seconds",     "metres", "known",
    "kind",      "stopped",   "clean",    "hook_hole", "bench_angle", "pain",   "pain_area",
    "pain_side", "start",     "keyed_at", "keyed_by",  "note",        "easy"};

// Their places in it.
enum Column : std::size_t {
    DateCell,
    MemberIdCell,
    ExerciseCell,
    SetCell,
    SideCell,
    LoadCell,
    UnitCell,
    RepsCell,
    RirCell,
    ClassCell,
    OrderCell,
    SecondsCell,
    MetresCell,
    KnownCell,
    KindCell,
    StoppedCell,
    CleanCell,
    HookHoleCell,
    BenchAngleCell,
    PainCell,
    PainAreaCell,
    PainSideCell,
    StartCell,
    KeyedAtCell,
    KeyedByCell,
    NoteCell,
    EasyCell,
};

constexpr std::array<std::string_view, 4> kSetNeeded = {"date", "member_id", "exercise", "set"};

constexpr std::int64_t kMostTenths = 1'000'000; // 100,000 seconds or metres
constexpr int kLongestWord = 100;
constexpr int kLongestClass = 200; // as in members.csv
constexpr int kLongestSetNote = 10000;

auto whole(int lowest, int highest)
{
    return [lowest, highest](std::string_view text) {
        return parseWhole(text, lowest, highest).map([](std::int64_t value) {
            return static_cast<int>(value);
        });
    };
}

Result<int> parseTenths(std::string_view text)
{
    return parseDecimal(text, 1, 0, kMostTenths).map([](std::int64_t tenths) {
        return static_cast<int>(tenths);
    });
}

class SetImport {
public:
    SetImport(ImportContext& context, const ImportSource& source)
        : m_context(context)
        , m_file(source, context.report())
        , m_insert(context.scope().logbook().database(), kInsertDoneSet)
    {
    }

    void run()
    {
        m_file.read(kSetColumns, kSetNeeded, [this] { takeRecord(); });
        m_context.finishExercises();
    }

private:
    void takeRecord()
    {
        const std::size_t faultsBefore = m_file.faults();
        DoneSet set;
        takeIdentity(set);
        takeEffort(set.performed);
        takeContext(set);
        if (m_file.faults() != faultsBefore) {
            return;
        }
        if (const auto seen = m_lines.noteFirst(keyOf(set), m_file.line())) {
            m_file.refuse(std::string_view(), {FaultCode::RepeatedKey, {std::to_string(*seen)}});
            return;
        }
        takeMeeting(set);
        apply(set);
    }

    template <typename T, typename Parse>
    void maybe(Column column, std::optional<T>& target, const Parse& parse)
    {
        const std::string_view text = m_file.numberCell(column);
        if (text.empty()) {
            return;
        }
        auto value = parse(text);
        if (value) {
            target = std::move(*value);
        } else {
            m_file.refuse(column, value.error());
        }
    }

    void takeIdentity(DoneSet& set)
    {
        PerformedSet& performed = set.performed;
        if (const auto day = m_file.take(DateCell, parseDay(m_file.cell(DateCell)))) {
            performed.day = *day;
        }
        const std::string_view code = m_file.cell(MemberIdCell);
        if (const auto member = m_context.member(code)) {
            set.member = *member;
        } else {
            m_file.refuse(MemberIdCell, {FaultCode::UnknownMember, {excerpt(code)}});
        }
        m_file.takeOr(SideCell, set.side, Side::Both, &parseSide);
        if (const auto number = m_file.take(SetCell, whole(1, 999)(m_file.cell(SetCell)))) {
            performed.number = *number;
        }
        AmountKind amount = AmountKind::Reps;
        if (m_file.cell(RepsCell).empty()) {
            amount = m_file.cell(SecondsCell).empty() ? AmountKind::Metres : AmountKind::Seconds;
        }
        const auto exercise = m_file.take(
            ExerciseCell, m_context.exercise(m_file.cell(ExerciseCell), set.side, amount));
        set.exercise = exercise.value_or(ExerciseId{});
    }

    void takeEffort(PerformedSet& performed)
    {
        maybe(RepsCell, performed.reps, whole(0, 200));
        maybe(SecondsCell, performed.secondsTenths, &parseTenths);
        maybe(MetresCell, performed.metresTenths, &parseTenths);
        if (m_file.cell(RepsCell).empty() && m_file.cell(SecondsCell).empty() &&
            m_file.cell(MetresCell).empty()) {
            m_file.refuse(RepsCell, {FaultCode::NeedsAmount, {}});
        }
        MassUnit unit = MassUnit::Kilogram;
        m_file.takeOr(UnitCell, unit, MassUnit::Kilogram, &parseMassUnit);
        performed.load = Mass::ofThousandths(0, unit);
        std::optional<Mass> load;
        maybe(LoadCell, load, [unit](std::string_view text) { return parseMass(text, unit); });
        performed.load = load.value_or(performed.load);
        maybe(RirCell, performed.reserve, &parseReserve);
        m_file.takeOr(KnownCell, performed.known, HowKnown::Counted, &parseHowKnown);
        m_file.takeOr(KindCell, performed.kind, SetKind::Work, &parseSetKind);
        maybe(StoppedCell, performed.stopped, &parseStopReason);
        maybe(CleanCell, performed.isClean, &parseYesNo);
        maybe(PainCell, performed.pain, whole(0, 10));
        std::optional<int> order;
        maybe(OrderCell, order, whole(0, 9999));
        performed.order = order.value_or(0);
        m_file.takeOr(EasyCell, performed.isAtLeast, false, &parseYesNo);
    }

    void takeContext(DoneSet& set)
    {
        maybe(HookHoleCell, set.hookHole, whole(1, 99));
        maybe(BenchAngleCell, set.benchAngle, whole(-45, 90));
        maybe(PainSideCell, set.painSide, &parseSide);
        maybe(KeyedAtCell, set.keyedAt, &parseMoment);
        const auto word = [&](Column column, std::string& target, int longest) {
            m_file.takeOr(column, target, std::string(), [longest](std::string_view text) {
                return checkName(text, longest);
            });
        };
        word(PainAreaCell, set.painArea, kLongestWord);
        word(KeyedByCell, set.keyedBy, kLongestWord);
        m_file.takeOr(NoteCell, set.note, std::string(), [](std::string_view text) {
            return checkText(text, kLongestSetNote);
        });
        m_start.reset();
        maybe(StartCell, m_start, &parseTimeOfDay);
        m_class.clear();
        word(ClassCell, m_class, kLongestClass);
        if (m_start && m_class.empty()) {
            m_file.refuse(ClassCell, {FaultCode::Empty, {}});
        }
    }

    void takeMeeting(DoneSet& set)
    {
        if (m_class.empty()) {
            return;
        }
        const ClassId groupClass = m_context.groupClass(m_class);
        set.meeting = m_start ? std::nullopt : storedMeeting(set, groupClass);
        if (!set.meeting) {
            set.meeting = m_context.meeting(groupClass, set.performed.day, m_start);
        }
        m_context.noteCame(*set.meeting, set.member);
    }

    // Where a class meets twice on a day, a row without a start means the meeting in which the set
    // stands already.
    std::optional<MeetingId> storedMeeting(const DoneSet& set, ClassId groupClass) const
    {
        const auto meetings = m_context.meetingsOf(groupClass, set.performed.day);
        if (meetings.size() < 2) {
            return std::nullopt;
        }
        const auto stored = SetStore(m_context.scope().logbook()).find(keyOf(set));
        const bool isOne =
            stored && std::any_of(meetings.begin(), meetings.end(), [&](const Meeting& meeting) {
                return stored->meeting == meeting.id;
            });
        return isOne ? stored->meeting : std::nullopt;
    }

    void apply(const DoneSet& set)
    {
        bindDoneSet(m_insert, set, m_context.scope().import());
        const int code = m_insert.tryExecuteStep();
        if (code == SQLITE_DONE) {
            m_insert.tryReset();
            ++m_context.report().sets.added;
            return;
        }
        const int extended = m_context.scope().logbook().database().getExtendedErrorCode();
        m_insert.tryReset();
        if (extended == SQLITE_CONSTRAINT_PRIMARYKEY) {
            meetStored(set);
        } else {
            throw SQLite::Exception(m_context.scope().logbook().database().getHandle(), code);
        }
    }

    // The key is stored already: the same values are passed over, others need --update. What the
    // file has no column for is left as it is.
    void meetStored(DoneSet set)
    {
        const DoneSet stored = *SetStore(m_context.scope().logbook()).find(keyOf(set));
        set.planned = stored.planned;
        keepWithoutColumn(set, stored);
        if (set == stored) {
            ++m_context.report().sets.unchanged;
        } else if (m_context.request().update) {
            SetStore::update(m_context.scope(), set);
            ++m_context.report().sets.updated;
        } else {
            refuseDifference(set, stored);
        }
    }

    void keepWithoutColumn(DoneSet& set, const DoneSet& stored) const
    {
        PerformedSet& now = set.performed;
        const PerformedSet& was = stored.performed;
        const auto keep = [this](const char* column, auto& target, const auto& value) {
            if (!m_file.hasColumn(column)) {
                target = value;
            }
        };
        keep("load", now.load, was.load);
        keep("reps", now.reps, was.reps);
        keep("rir", now.reserve, was.reserve);
        keep("class", set.meeting, stored.meeting);
        keep("order", now.order, was.order);
        keep("seconds", now.secondsTenths, was.secondsTenths);
        keep("metres", now.metresTenths, was.metresTenths);
        keep("known", now.known, was.known);
        keep("kind", now.kind, was.kind);
        keep("stopped", now.stopped, was.stopped);
        keep("clean", now.isClean, was.isClean);
        keep("hook_hole", set.hookHole, stored.hookHole);
        keep("bench_angle", set.benchAngle, stored.benchAngle);
        keep("pain", now.pain, was.pain);
        keep("pain_area", set.painArea, stored.painArea);
        keep("pain_side", set.painSide, stored.painSide);
        keep("keyed_at", set.keyedAt, stored.keyedAt);
        keep("keyed_by", set.keyedBy, stored.keyedBy);
        keep("note", set.note, stored.note);
        keep("easy", now.isAtLeast, was.isAtLeast);
    }

    // Names the first column that differs.
    void refuseDifference(const DoneSet& set, const DoneSet& stored)
    {
        const PerformedSet& now = set.performed;
        const PerformedSet& was = stored.performed;
        const auto number = [](std::optional<int> value) {
            return value ? std::to_string(*value) : std::string();
        };
        if (now.reps != was.reps) {
            refuseAs("reps", number(now.reps), number(was.reps));
        } else if (now.load != was.load) {
            refuseAs("load",
                     now.load.number() + " " + std::string(unitWord(now.load.unit())),
                     was.load.number() + " " + std::string(unitWord(was.load.unit())));
        } else if (now.reserve != was.reserve) {
            refuseAs("rir",
                     now.reserve ? text(*now.reserve) : "",
                     was.reserve ? text(*was.reserve) : "");
        } else if (now.known != was.known) {
            refuseAs("known",
                     std::string(howKnownWord(now.known)),
                     std::string(howKnownWord(was.known)));
        } else {
            refuseAs({}, "this row", "other values");
        }
    }

    void refuseAs(std::string_view column, std::string now, std::string was)
    {
        m_file.refuse(column, {FaultCode::DiffersFromStored, {std::move(now), std::move(was)}});
    }

    ImportContext& m_context;
    ImportFile m_file;
    SQLite::Statement m_insert;
    KeyLines m_lines;
    std::string m_class;
    std::optional<TimeOfDay> m_start;
};

} // namespace

void importSets(ImportContext& context, const ImportSource& source)
{
    SetImport(context, source).run();
}

} // namespace levelbar::storage
