// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later

#include "storage/integrity.h"
#include "storage/store_error.h"
#include "tests/support/logbook_fixture.h"
#include "tests/support/power_cut_vfs.h"
#include "tests/support/random.h"

#include <SQLiteCpp/SQLiteCpp.h>

#include <array>
#include <csignal>
#include <set>
#include <sys/wait.h>
#include <unistd.h>

namespace levelbar::storage::power_cut_test {
namespace {

using tests::benchSet;
using tests::kNow;
using tests::logSet;
using tests::PowerCutVfs;
using tests::TemporaryFolder;

constexpr int kSets = 25;
const Day kDay{20600};

// A logbook with one person, made before the power matters.
void prepare(const std::filesystem::path& path)
{
    Logbook logbook = Logbook::create(path, kNow);
    tests::addMember(logbook, "M1");
}

// Logs sets, now and then takes one back; returns the numbers of the sets that were confirmed and
// stand. Ends at the cut.
std::set<int> script(const std::filesystem::path& path, bool isCareless)
{
    std::set<int> confirmed;
    OpenOptions options;
    options.vfs = PowerCutVfs::name();
    try {
        Logbook logbook = Logbook::open(path, kNow, options);
        if (isCareless) {
            logbook.database().exec("PRAGMA synchronous = OFF");
        }
        const MemberId member = MemberStore(logbook).find("M1")->id;
        for (int number = 1; number <= kSets; ++number) {
            logSet(logbook, benchSet(logbook, member, kDay, number, 8));
            confirmed.insert(number);
            if (number % 7 == 0) {
                const auto last = lastTakeable(logbook);
                confirmed.erase(number); // either way is right until it is confirmed
                takeBack(logbook, last.value(), kNow);
            }
        }
    } catch (const StoreError&) {
        // The power is gone.
    }
    return confirmed;
}

// How many confirmed sets are missing after cuts at random points.
int lostAfterCuts(int cuts, bool isCareless)
{
    PowerCutVfs vfs;
    tests::Random random(42);
    std::int64_t operations = 0;
    {
        const TemporaryFolder folder;
        prepare(folder / "gym.levelbar");
        vfs.cutAt(0);
        EXPECT_EQ(script(folder / "gym.levelbar", isCareless).size(),
                  std::size_t{kSets - kSets / 7});
        operations = vfs.operations();
        EXPECT_GT(operations, kSets);
    }
    int lost = 0;
    for (int i = 0; i < cuts; ++i) {
        const TemporaryFolder folder;
        const TemporaryFolder after;
        const auto path = folder / "gym.levelbar";
        prepare(path);
        vfs.cutAt(1 + random.below(static_cast<int>(operations)));
        const std::set<int> confirmed = script(path, isCareless);
        EXPECT_TRUE(vfs.isCut());
        vfs.restore(after.path());
        const Logbook found = Logbook::open(after / "gym.levelbar", kNow);
        EXPECT_TRUE(checkIntegrity(found).isSound());
        const MemberId member = MemberStore(found).find("M1")->id;
        std::set<int> there;
        for (const DoneSet& set : SetStore(found).ofMember(member)) {
            there.insert(set.performed.number);
        }
        for (const int number : confirmed) {
            lost += there.contains(number) ? 0 : 1;
        }
    }
    return lost;
}

TEST(PowerCutTest, NoConfirmedSetIsLostAtTwoHundredCuts)
{
    EXPECT_EQ(lostAfterCuts(200, false), 0);
}

TEST(PowerCutTest, TheSameTestFailsWithoutSyncing)
{
    // Proof that the test can fail: with synchronous=OFF confirmed sets do vanish.
    EXPECT_GT(lostAfterCuts(20, true), 0);
}

TEST(KillTest, TheFileIsSoundWheneverTheProgramDies)
{
    tests::Random random(7);
    for (int round = 0; round < 20; ++round) {
        const TemporaryFolder folder;
        const auto path = folder / "gym.levelbar";
        prepare(path);
        std::array<int, 2> pipe{};
        ASSERT_EQ(::pipe(pipe.data()), 0);
        const pid_t child = ::fork();
        if (child == 0) {
            Logbook logbook = Logbook::open(path, kNow);
            const MemberId member = MemberStore(logbook).find("M1")->id;
            for (int number = 1; number <= 999; ++number) {
                logSet(logbook, benchSet(logbook, member, kDay, number, 8));
                if (::write(pipe[1], &number, sizeof number) != sizeof number) {
                    break;
                }
            }
            ::_exit(0);
        }
        ::close(pipe[1]);
        ::usleep(static_cast<useconds_t>(5000 + random.below(120000)));
        ::kill(child, SIGKILL);
        ::waitpid(child, nullptr, 0);
        int confirmed = 0;
        int last = 0;
        while (::read(pipe[0], &last, sizeof last) == sizeof last) {
            confirmed = last;
        }
        ::close(pipe[0]);
        const Logbook found = Logbook::open(path, kNow);
        EXPECT_TRUE(checkIntegrity(found).isSound());
        const auto sets = SetStore(found).ofMember(MemberStore(found).find("M1")->id);
        EXPECT_GE(static_cast<int>(sets.size()), confirmed);
    }
}

} // namespace
} // namespace levelbar::storage::power_cut_test
