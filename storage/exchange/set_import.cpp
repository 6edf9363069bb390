// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/base/number.h"
#include "core/member/member.h"
#include "storage/done_set_row.h"
#include "storage/exchange/import_context.h"
#include "storage/exchange/import_rows.h"
#include "storage/set_store.h"
#include "storage/sqlite_errors.h"

#include <sqlite3.h>

namespace levelbar::storage {

namespace {

constexpr std::array<std::string_view, 25> kColumns = {
    "date",      "member_id", "exercise", "set",       "side",        "load",   "unit",
    "reps",      "rir",       "class",    "order",     "seconds",     "metres", "known",
    "kind",      "stopped",   "clean",    "hook_hole", "bench_angle", "pain",   "pain_area",
    "pain_side", "start",     "keyed_at", "keyed_by"};
constexpr std::array<std::string_view, 4> kNeeded = {"date", "member_id", "exercise", "set"};

constexpr std::int64_t kMostTenths = 1'000'000; // 100,000 seconds or metres
constexpr int kLongestWord = 100;
constexpr int kLongestNote = 10000;

Result<bool> parseYesNo(std::string_view text)
{
    if (text == "yes" || text == "no") {
        return text == "yes";
    }
    return refuse(FaultCode::NotOneOf, {excerpt(text), "yes, no"});
}

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

struct KeyHash {
    std::size_t operator()(const SetKey& key) const
    {
        std::size_t hash = 0;
        for (const std::int64_t part : {key.member.value,
                                        key.exercise.value,
                                        static_cast<std::int64_t>(key.side),
                                        std::int64_t{key.day.sinceEpoch},
                                        std::int64_t{key.number}}) {
            hash ^= std::hash<std::int64_t>{}(part) + 0x9E3779B97F4A7C15ULL + (hash << 6U) +
                    (hash >> 2U);
        }
        return hash;
    }
};

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
        std::vector<std::string_view> known(kColumns.begin(), kColumns.end());
        known.push_back("note");
        m_file.read(known, kNeeded, [this] { takeRecord(); });
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
        const auto [seen, isNew] = m_lines.emplace(keyOf(set), m_file.line());
        if (!isNew) {
            m_file.refuse({}, {FaultCode::RepeatedKey, {std::to_string(seen->second)}});
            return;
        }
        takeMeeting(set);
        apply(set);
    }

    template <typename T, typename Parse>
    void maybe(std::string_view column, std::optional<T>& target, const Parse& parse)
    {
        const std::string text = m_file.numberCell(column);
        if (text.empty()) {
            return;
        }
        auto value = parse(std::string_view(text));
        if (value) {
            target = std::move(*value);
        } else {
            m_file.refuse(column, value.error());
        }
    }

    void takeIdentity(DoneSet& set)
    {
        PerformedSet& performed = set.performed;
        if (const auto day = m_file.take("date", parseDay(m_file.cell("date")))) {
            performed.day = *day;
        }
        const std::string_view code = m_file.cell("member_id");
        if (const auto member = m_context.member(code)) {
            set.member = *member;
        } else {
            m_file.refuse("member_id", {FaultCode::UnknownMember, {excerpt(code)}});
        }
        m_file.takeOr("side", set.side, Side::Both, &parseSide);
        if (const auto number = m_file.take("set", whole(1, 999)(m_file.cell("set")))) {
            performed.number = *number;
        }
        AmountKind amount = AmountKind::Reps;
        if (m_file.cell("reps").empty()) {
            amount = m_file.cell("seconds").empty() ? AmountKind::Metres : AmountKind::Seconds;
        }
        const auto exercise =
            m_file.take("exercise", m_context.exercise(m_file.cell("exercise"), set.side, amount));
        set.exercise = exercise.value_or(ExerciseId{});
    }

    void takeEffort(PerformedSet& performed)
    {
        maybe("reps", performed.reps, whole(0, 200));
        maybe("seconds", performed.secondsTenths, &parseTenths);
        maybe("metres", performed.metresTenths, &parseTenths);
        if (m_file.cell("reps").empty() && m_file.cell("seconds").empty() &&
            m_file.cell("metres").empty()) {
            m_file.refuse("reps", {FaultCode::NeedsAmount, {}});
        }
        MassUnit unit = MassUnit::Kilogram;
        m_file.takeOr("unit", unit, MassUnit::Kilogram, &parseMassUnit);
        performed.load = Mass::ofThousandths(0, unit);
        std::optional<Mass> load;
        maybe("load", load, [unit](std::string_view text) { return parseMass(text, unit); });
        performed.load = load.value_or(performed.load);
        maybe("rir", performed.reserve, &parseReserve);
        m_file.takeOr("known", performed.known, HowKnown::Counted, &parseHowKnown);
        m_file.takeOr("kind", performed.kind, SetKind::Work, &parseSetKind);
        maybe("stopped", performed.stopped, &parseStopReason);
        maybe("clean", performed.isClean, &parseYesNo);
        maybe("pain", performed.pain, whole(0, 10));
        std::optional<int> order;
        maybe("order", order, whole(0, 9999));
        performed.order = order.value_or(0);
    }

    void takeContext(DoneSet& set)
    {
        maybe("hook_hole", set.hookHole, whole(1, 99));
        maybe("bench_angle", set.benchAngle, whole(-45, 90));
        maybe("pain_side", set.painSide, &parseSide);
        maybe("keyed_at", set.keyedAt, &parseMoment);
        const auto words = [&](std::string_view column, std::string& target, int longest) {
            m_file.takeOr(column, target, std::string(), [longest](std::string_view text) {
                return checkText(text, longest);
            });
        };
        words("pain_area", set.painArea, kLongestWord);
        words("keyed_by", set.keyedBy, kLongestWord);
        words("note", set.note, kLongestNote);
        m_start.reset();
        maybe("start", m_start, &parseTimeOfDay);
        m_class.clear();
        words("class", m_class, kLongestWord);
        if (m_start && m_class.empty()) {
            m_file.refuse("class", {FaultCode::Empty, {}});
        }
    }

    void takeMeeting(DoneSet& set)
    {
        if (!m_class.empty()) {
            set.meeting =
                m_context.meeting(m_context.groupClass(m_class), set.performed.day, m_start);
            m_context.noteCame(*set.meeting, set.member);
        }
    }

    void apply(const DoneSet& set)
    {
        bindDoneSet(m_insert, set, m_context.scope().import());
        const int code = m_insert.tryExecuteStep();
        const int extended = m_context.scope().logbook().database().getExtendedErrorCode();
        m_insert.tryReset();
        if (code == SQLITE_DONE) {
            ++m_context.report().sets.added;
        } else if (extended == SQLITE_CONSTRAINT_PRIMARYKEY) {
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
    std::unordered_map<SetKey, int, KeyHash> m_lines; // where each key stood first
    std::string m_class;
    std::optional<TimeOfDay> m_start;
};

} // namespace

void importSets(ImportContext& context, const ImportSource& source)
{
    SetImport(context, source).run();
}

} // namespace levelbar::storage
