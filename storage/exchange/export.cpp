// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "storage/exchange/export.h"

#include "core/base/number.h"
#include "core/exercise/done_set.h"
#include "storage/library_store.h"
#include "storage/member_store.h"
#include "storage/row_columns.h"
#include "storage/set_store.h"
#include "storage/sqlite_errors.h"
#include "storage/trial_store.h"
#include "storage/whole_file.h"

#include <SQLiteCpp/Savepoint.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <ostream>
#include <sstream>
#include <tuple>

namespace levelbar::storage {

namespace {

// One record, cell by cell; quoted where RFC 4180 asks for it, and where blanks at either end
// would otherwise be dropped.
class Record {
public:
    explicit Record(std::ostream& out)
        : m_out(out)
    {
    }

    Record& cell(std::string_view text)
    {
        m_out << (m_isFirst ? "" : ",");
        m_isFirst = false;
        const auto isBlank = [](char c) { return c == ' ' || c == '\t'; };
        const bool needsQuotes = text.find_first_of(",;\t\"\r\n") != std::string_view::npos ||
                                 (!text.empty() && (isBlank(text.front()) || isBlank(text.back())));
        if (!needsQuotes) {
            m_out << text;
            return *this;
        }
        m_out << '"';
        for (const char c : text) {
            m_out << (c == '"' ? "\"\"" : std::string_view(&c, 1));
        }
        m_out << '"';
        return *this;
    }

    Record& cell(std::optional<int> value)
    {
        return cell(value ? std::to_string(*value) : std::string());
    }

    Record& tenths(std::optional<int> value)
    {
        return cell(value ? decimalText(*value, 1) : std::string());
    }

    void end() { m_out << "\n"; }

private:
    std::ostream& m_out;
    bool m_isFirst = true;
};

// The names that ids stand for, looked up once.
struct Names {
    explicit Names(const Logbook& logbook)
    {
        const LibraryStore store(logbook);
        const Library library = store.all();
        for (const Exercise& exercise : library.exercises) {
            exercises[exercise.id] = exercise.name;
        }
        for (const TestKind& test : library.tests) {
            tests[test.id] = test.name;
        }
        for (const Member& member : MemberStore(logbook).all(true)) {
            members[member.id] = member.code;
        }
    }

    std::map<ExerciseId, std::string> exercises;
    std::map<TestId, std::string> tests;
    std::map<MemberId, std::string> members;
};

[[noreturn]] void throwBroken()
{
    throw StoreError(StoreErrorKind::Corrupt,
                     "The logbook is damaged: a row names another that is not there; restore a "
                     "backup.");
}

// Foreign keys promise that it is there; a damaged file may break the promise.
template <typename Id> const std::string& nameOf(const std::map<Id, std::string>& names, Id id)
{
    const auto found = names.find(id);
    if (found == names.end()) {
        throwBroken();
    }
    return found->second;
}

struct MeetingNames {
    std::string className;
    std::string start;
};

std::map<MeetingId, MeetingNames> meetingsIn(const Logbook& logbook)
{
    std::map<MeetingId, MeetingNames> meetings;
    SQLite::Statement select(
        logbook.database(),
        "SELECT m.id, c.name, m.start_minute FROM meeting m JOIN class c ON c.id = m.class");
    while (select.executeStep()) {
        Columns columns(select);
        const auto id = columns.id<MeetingId>();
        MeetingNames names{columns.text(), ""};
        if (const auto minutes = columns.maybeWhole()) {
            names.start = text(TimeOfDay{*minutes});
        }
        meetings[id] = std::move(names);
    }
    return meetings;
}

std::string classesOf(const Logbook& logbook, MemberId member)
{
    std::string all;
    SQLite::Statement select(logbook.database(),
                             "SELECT c.name FROM class_member m JOIN class c ON c.id = m.class "
                             "WHERE m.member = ? ORDER BY c.name");
    select.bind(1, member.value);
    while (select.executeStep()) {
        all += (all.empty() ? "" : "|") + select.getColumn(0).getString();
    }
    return all;
}

void writeSet(std::ostream& out,
              const DoneSet& set,
              const Names& names,
              const std::map<MeetingId, MeetingNames>& meetings)
{
    const PerformedSet& performed = set.performed;
    const auto meeting = set.meeting ? meetings.find(*set.meeting) : meetings.end();
    const bool hasMeeting = meeting != meetings.end();
    Record record(out);
    record.cell(isoText(performed.day))
        .cell(nameOf(names.members, set.member))
        .cell(nameOf(names.exercises, set.exercise))
        .cell(std::optional(performed.number))
        .cell(sideWord(set.side))
        .cell(performed.load.number())
        .cell(unitWord(performed.load.unit()))
        .cell(performed.reps)
        .cell(performed.reserve ? text(*performed.reserve) : std::string())
        .cell(hasMeeting ? meeting->second.className : std::string())
        .cell(performed.order > 0 ? std::optional(performed.order) : std::nullopt)
        .tenths(performed.secondsTenths)
        .tenths(performed.metresTenths)
        .cell(howKnownWord(performed.known))
        .cell(setKindWord(performed.kind))
        .cell(performed.stopped ? stopReasonWord(*performed.stopped) : std::string_view())
        .cell(performed.isClean ? (*performed.isClean ? "yes" : "no") : "")
        .cell(set.hookHole)
        .cell(set.benchAngle)
        .cell(performed.pain)
        .cell(set.painArea)
        .cell(set.painSide ? sideWord(*set.painSide) : std::string_view())
        .cell(hasMeeting ? meeting->second.start : std::string())
        .cell(set.keyedAt ? isoText(*set.keyedAt) : std::string())
        .cell(set.keyedBy)
        .cell(set.note)
        .cell(performed.isAtLeast ? "yes" : "");
    record.end();
}

// What `text` makes of the value; empty when there is none.
template <typename T, typename Text>
std::string orEmpty(const std::optional<T>& value, const Text& text)
{
    return value ? std::string(text(*value)) : std::string();
}

// The column is in kilograms, whatever unit was typed.
std::string kilogramText(const Mass& mass)
{
    return mass.unit() == MassUnit::Kilogram
               ? mass.number()
               : decimalText(std::llround(1000 * mass.kilograms()), 3);
}

void writeMember(std::ostream& out, const Member& member, const std::string& classes)
{
    Record record(out);
    record.cell(member.code)
        .cell(member.name)
        .cell(orEmpty(member.sex, &sexWord))
        .cell(orEmpty(member.birthDate, [](Day day) { return isoText(day); }))
        .cell(orEmpty(member.statureTenthMillimetres, [](int v) { return decimalText(v, 2); }))
        .cell(orEmpty(member.intakeMass, &kilogramText))
        .cell(orEmpty(member.dominantSide, &sideWord))
        .cell(orEmpty(member.experience, &experienceWord))
        .cell(orEmpty(member.goal, &goalWord))
        .cell(member.group)
        .cell(classes)
        .cell(member.note);
    record.end();
}

void writeTrial(std::ostream& out, const Trial& trial, const Names& names)
{
    Record record(out);
    record.cell(isoText(trial.day))
        .cell(nameOf(names.members, trial.member))
        .cell(nameOf(names.tests, trial.test))
        .cell(sideWord(trial.side))
        .cell(std::optional(trial.number))
        .cell(decimalText(trial.valueThousandths, 3))
        .cell(trial.unit)
        .cell(trial.isValid ? "yes" : "no")
        .cell(trial.note);
    record.end();
}

// Writes the rows of a table person by person by code, and of each by `isBefore`: an order that
// does not hang on local ids, so that it is the same in every logbook with the same rows.
template <typename RowsOf, typename IsBefore, typename Write>
void writeByPerson(const Logbook& logbook,
                   const std::string& table,
                   const RowsOf& rowsOf,
                   const IsBefore& isBefore,
                   const Write& write)
{
    std::int64_t count = 0;
    for (const Member& member : MemberStore(logbook).all(true)) {
        auto rows = rowsOf(member.id);
        std::sort(rows.begin(), rows.end(), isBefore);
        std::for_each(rows.begin(), rows.end(), write);
        count += static_cast<std::int64_t>(rows.size());
    }
    if (logbook.database().execAndGet("SELECT count(*) FROM " + table).getInt64() != count) {
        throwBroken(); // rows of nobody would be passed over
    }
}

} // namespace

void writeMembers(const Logbook& logbook, std::ostream& out)
{
    translateErrors(logbook.path(), [&] {
        out << "member_id,name,sex,birth_date,height_cm,body_mass_kg,dominant_side,level,goal,"
               "group,"
               "classes,note\n";
        for (const Member& member : MemberStore(logbook).all(true)) {
            writeMember(out, member, classesOf(logbook, member.id));
        }
    });
}

void writeSets(const Logbook& logbook, std::ostream& out)
{
    translateErrors(logbook.path(), [&] {
        const Names names(logbook);
        const auto meetings = meetingsIn(logbook);
        out << "date,member_id,exercise,set,side,load,unit,reps,rir,class,order,seconds,metres,"
               "known,"
               "kind,stopped,clean,hook_hole,bench_angle,pain,pain_area,pain_side,start,keyed_at,"
               "keyed_by,note,easy\n";
        const auto keyOfSet = [&](const DoneSet& set) {
            return std::tuple(std::string_view(nameOf(names.exercises, set.exercise)),
                              set.side,
                              set.performed.day,
                              set.performed.number);
        };
        writeByPerson(
            logbook,
            "done_set",
            [&](MemberId member) { return SetStore(logbook).ofMember(member); },
            [&](const DoneSet& a, const DoneSet& b) { return keyOfSet(a) < keyOfSet(b); },
            [&](const DoneSet& set) { writeSet(out, set, names, meetings); });
    });
}

void writeTrials(const Logbook& logbook, std::ostream& out)
{
    translateErrors(logbook.path(), [&] {
        const Names names(logbook);
        out << "date,member_id,test,side,trial,value,unit,valid,note\n";
        const auto keyOfTrial = [&](const Trial& trial) {
            return std::tuple(std::string_view(nameOf(names.tests, trial.test)),
                              trial.side,
                              trial.day,
                              trial.number);
        };
        writeByPerson(
            logbook,
            "trial",
            [&](MemberId member) { return TrialStore(logbook).ofMember(member); },
            [&](const Trial& a, const Trial& b) { return keyOfTrial(a) < keyOfTrial(b); },
            [&](const Trial& trial) { writeTrial(out, trial, names); });
    });
}

void exportCsv(const Logbook& logbook, const std::filesystem::path& folder)
{
    makeFolder(folder);
    // One state of the logbook in all three files.
    std::optional<SQLite::Savepoint> reading;
    translateErrors(logbook.path(), [&] { reading.emplace(logbook.database(), "exporting"); });
    const auto write = [&](const char* name, void (*writer)(const Logbook&, std::ostream&)) {
        writeWholeFile(folder / name, [&](std::ostream& out) { writer(logbook, out); });
    };
    write("members.csv", &writeMembers);
    write("sets.csv", &writeSets);
    write("tests.csv", &writeTrials);
    translateErrors(logbook.path(), [&] { reading->release(); });
}

} // namespace levelbar::storage
