// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later

#include "core/testing/trial.h"
#include "storage/exchange/export.h"
#include "storage/exchange/import.h"
#include "storage/trial_store.h"
#include "tests/support/logbook_fixture.h"
#include "tests/support/random.h"

#include <algorithm>
#include <sstream>

namespace levelbar::storage::round_trip_test {
namespace {

using tests::kNow;
using tests::Random;

constexpr int kSetsOfOne = 40;
const Day kFirstDay = parseDay("2026-01-01").value();

const std::array<std::string, 14> kWords = {
    "a", "B", " ", ",", ";", "\"", "'", "é", "💪", "שלום", "\t", "=1", "-", "|"};

// Names hold no tab; class names no bar, which parts them, and no blank at an end.
std::string name(Random& random, int number, bool isClass = false)
{
    std::string result = isClass ? "c" : "";
    for (int i = random.below(6); i >= 0; --i) {
        const std::string word = random.pick<std::string>(kWords);
        result += word == "\t" || (isClass && word == "|") ? "x" : word;
    }
    return result + std::to_string(number); // so that no two are the same
}

std::string note(Random& random)
{
    std::string result;
    for (int i = random.below(8); i > 0; --i) {
        result += random.chance(0.2) ? std::string("\n") : random.pick<std::string>(kWords);
    }
    return result;
}

template <typename T> std::optional<T> perhaps(Random& random, T value)
{
    return random.chance(0.6) ? std::optional(value) : std::nullopt;
}

Side oneSide(Random& random)
{
    return random.chance(0.5) ? Side::Left : Side::Right;
}

Mass load(Random& random)
{
    return Mass::ofThousandths(random.below(200'000),
                               random.chance(0.5) ? MassUnit::Kilogram : MassUnit::Pound);
}

Member person(Random& random, int number)
{
    Member member;
    member.code = name(random, number);
    member.name = random.chance(0.8) ? name(random, number) : "";
    member.sex = perhaps(random, random.chance(0.5) ? Sex::Female : Sex::Male);
    member.birthDate = perhaps(random, kFirstDay - random.below(30'000));
    member.statureTenthMillimetres = perhaps(random, 5000 + random.below(21'000));
    member.intakeMass =
        perhaps(random,
                Mass::ofThousandths(40'000 + random.below(80'000),
                                    random.chance(0.5) ? MassUnit::Kilogram : MassUnit::Pound));
    member.dominantSide = perhaps(random, oneSide(random));
    member.experience = perhaps(random, static_cast<Experience>(1 + random.below(3)));
    member.goal = perhaps(random, static_cast<Goal>(1 + random.below(5)));
    member.group = random.chance(0.5) ? name(random, 0) : "";
    member.note = note(random);
    return member;
}

DoneSet set(Random& random, MemberId member, ExerciseId exercise, Side side, int number)
{
    DoneSet set;
    set.member = member;
    set.exercise = exercise;
    set.side = side;
    PerformedSet& performed = set.performed;
    performed.day = kFirstDay + random.below(60);
    performed.number = number; // one of its own, whatever the day
    performed.order = random.below(20);
    performed.reps = perhaps(random, random.below(201));
    performed.secondsTenths = perhaps(random, random.below(6000));
    performed.metresTenths = perhaps(random, random.below(6000));
    if (!performed.reps && !performed.secondsTenths && !performed.metresTenths) {
        performed.reps = 0;
    }
    performed.load = load(random);
    performed.reserve = perhaps(random, Reserve{random.below(501)});
    performed.known = static_cast<HowKnown>(1 + random.below(4));
    performed.kind = static_cast<SetKind>(1 + random.below(4));
    performed.stopped = perhaps(random, static_cast<StopReason>(1 + random.below(6)));
    performed.isClean = perhaps(random, random.chance(0.5));
    performed.pain = perhaps(random, random.below(11));
    set.hookHole = perhaps(random, 1 + random.below(99));
    set.benchAngle = perhaps(random, random.below(136) - 45);
    set.painArea = random.chance(0.3) ? name(random, 0) : "";
    set.painSide = perhaps(random, static_cast<Side>(random.below(3)));
    set.keyedAt = perhaps(random, Moment{kNow.milliseconds - random.below(1'000'000'000)});
    set.keyedBy = random.chance(0.3) ? name(random, 0) : "";
    set.note = note(random);
    return set;
}

// Twelve people in three classes, some of which meet twice a day, with some hundred sets.
class RandomGym {
public:
    explicit RandomGym(std::uint64_t seed)
        : m_random(seed)
        , m_scope(std::make_unique<BulkWrite>(logbook, "random", kNow))
    {
        for (int i = 0; i < 3; ++i) {
            m_classes.push_back(ClassStore::add(*m_scope, name(m_random, i, true)));
        }
        const auto exercises = LibraryStore(logbook).all().exercises;
        for (int i = 12; i > 0; --i) { // in no order of codes
            addPerson(i, exercises);
        }
        m_scope->commit();
        m_scope.reset();
    }

    Logbook logbook = Logbook::inMemory(kNow);

private:
    void addPerson(int number, const std::vector<Exercise>& exercises)
    {
        const MemberId member = MemberStore::add(*m_scope, person(m_random, number));
        for (const ClassId groupClass : m_classes) {
            ClassStore::setMembership(*m_scope, groupClass, member, m_random.chance(0.4));
        }
        for (int i = 1; i <= kSetsOfOne; ++i) {
            const Exercise& exercise = m_random.pick(std::span(exercises));
            const Side side = m_random.chance(0.5) ? Side::Both : oneSide(m_random);
            DoneSet done = set(m_random, member, exercise.id, side, i);
            done.meeting = perhaps(m_random, meetingOn(done.performed.day));
            SetStore::add(*m_scope, done);
        }
        for (int i = 1; i <= 20; ++i) {
            addTrial(member, i, m_random.pick(std::span(exercises)));
        }
    }

    // Every meeting has a start, which is what keeps two of a day apart.
    MeetingId meetingOn(Day day)
    {
        const ClassId groupClass = m_random.pick(std::span(std::as_const(m_classes)));
        const TimeOfDay start{m_random.chance(0.5) ? 9 * 60 : 18 * 60 + 30};
        const auto known = ClassStore(logbook).meeting(groupClass, day, start);
        return known ? known->id : ClassStore::addMeeting(*m_scope, groupClass, day, start);
    }

    void addTrial(MemberId member, int number, const Exercise& exercise)
    {
        Trial trial;
        trial.member = member;
        trial.day = kFirstDay + m_random.below(60);
        trial.number = number;
        trial.side = oneSide(m_random);
        trial.test = m_random.chance(0.5) ? LibraryStore::oneRepMaxOf(*m_scope, exercise)
                                          : LibraryStore(logbook).findTest("Grip strength")->id;
        trial.unit = m_random.chance(0.5) ? "kg" : "lb";
        trial.valueThousandths = 2000 + m_random.below(90'000);
        trial.isValid = m_random.chance(0.9);
        trial.note = note(m_random);
        TrialStore::add(*m_scope, trial);
    }

    Random m_random;
    std::unique_ptr<BulkWrite> m_scope;
    std::vector<ClassId> m_classes;
};

std::array<std::string, 3> exported(const Logbook& logbook)
{
    std::array<std::ostringstream, 3> out;
    writeMembers(logbook, out[0]);
    writeSets(logbook, out[1]);
    writeTrials(logbook, out[2]);
    return {out[0].str(), out[1].str(), out[2].str()};
}

ImportReport import(Logbook& logbook, const std::array<std::string, 3>& files)
{
    ImportRequest request;
    request.members = {"members.csv", files[0]};
    request.sets = {"sets.csv", files[1]};
    request.tests = {"tests.csv", files[2]};
    return importCsv(logbook, request, kNow);
}

TEST(RoundTripTest, WhatIsExportedAndImportedElsewhereIsTheSameToTheByte)
{
    for (std::uint64_t seed = 1; seed <= 3; ++seed) {
        SCOPED_TRACE("seed " + std::to_string(seed));
        const RandomGym gym(seed);
        const auto first = exported(gym.logbook);
        Logbook other = Logbook::inMemory(kNow);
        const ImportReport report = import(other, first);
        ASSERT_TRUE(report.faults.empty()) << text(report.faults.front());
        EXPECT_EQ(report.sets.added, 12 * kSetsOfOne);
        const auto second = exported(other);
        for (std::size_t i = 0; i < first.size(); ++i) {
            const auto differs = std::mismatch(
                first.at(i).begin(), first.at(i).end(), second.at(i).begin(), second.at(i).end());
            EXPECT_TRUE(first.at(i) == second.at(i))
                << "file " << i << " differs from "
                << std::string(differs.first, first.at(i).end()).substr(0, 200) << "\nto\n"
                << std::string(differs.second, second.at(i).end()).substr(0, 200);
        }
        const ImportReport again = import(other, second);
        ASSERT_TRUE(again.faults.empty()) << text(again.faults.front());
        EXPECT_EQ(again.sets.unchanged, 12 * kSetsOfOne);
        EXPECT_EQ(again.members.unchanged, 12);
    }
}

} // namespace
} // namespace levelbar::storage::round_trip_test
