// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later

#include "storage/backup.h"
#include "storage/integrity.h"
#include "storage/migrations.h"
#include "storage/store_error.h"
#include "storage/whole_file.h"
#include "tests/support/logbook_fixture.h"

#include <SQLiteCpp/SQLiteCpp.h>

#include <atomic>
#include <fstream>
#include <sys/stat.h>
#include <thread>

namespace levelbar::storage::backup_test {
namespace {

using tests::addMember;
using tests::kNow;
using tests::TemporaryFolder;

// The modes that a file of this name has while the work runs, all together.
template <typename Work> mode_t modesOf(const std::filesystem::path& path, const Work& work)
{
    std::atomic<bool> isDone = false;
    mode_t seen = 0;
    std::thread watch([&] {
        struct stat status {};
        while (!isDone) {
            if (::stat(path.c_str(), &status) == 0) {
                seen |= status.st_mode & 0777U;
            }
        }
    });
    work();
    isDone = true;
    watch.join();
    return seen;
}

TEST(BackupModeTest, NobodyElseMayReadTheCopyFromTheFirstMomentOn)
{
    const TemporaryFolder folder;
    Logbook logbook = Logbook::create(folder / "gym.levelbar", kNow);
    const mode_t old = ::umask(0);
    mode_t seen = 0;
    for (int i = 0; i < 20; ++i) {
        std::filesystem::remove(folder / "copy.levelbar");
        seen |= modesOf(folder / "copy.levelbar.part",
                        [&] { backUp(logbook, folder / "copy.levelbar"); });
    }
    ::umask(old);
    EXPECT_EQ(seen, 0600U) << std::oct << seen;
}

TEST(WholeFileTest, IsItsOwnersFromTheFirstMomentOnAndLeavesNothingWhenWritingFails)
{
    const TemporaryFolder folder;
    const mode_t old = ::umask(0);
    const mode_t seen = modesOf(folder / "a.csv.part", [&] {
        writeWholeFile(folder / "a.csv", [](std::ostream& out) {
            for (int i = 0; i < 100'000; ++i) {
                out << i << "\n";
            }
        });
    });
    ::umask(old);
    EXPECT_EQ(seen, 0600U) << std::oct << seen;
    EXPECT_THROW(writeWholeFile(folder / "b.csv",
                                [](std::ostream& out) {
                                    out << "half";
                                    throw StoreError(StoreErrorKind::Corrupt, "damaged");
                                }),
                 StoreError);
    EXPECT_FALSE(std::filesystem::exists(folder / "b.csv"));
    EXPECT_FALSE(std::filesystem::exists(folder / "b.csv.part"));
}

TEST(BackupTest, OfAnOlderSchemaIsTakenAndRestoredAsItIs)
{
    const TemporaryFolder folder;
    const std::filesystem::path older =
        std::filesystem::path(LEVELBAR_SOURCE_DIR) / "tests/storage/data";
    for (const auto& entry : std::filesystem::directory_iterator(older)) {
        if (entry.path().extension() != ".levelbar") {
            continue;
        }
        const auto target = folder.path() / entry.path().filename();
        restoreBackup(entry.path(), target, kNow);
        OpenOptions asItIs;
        asItIs.mode = OpenMode::ReadOnly;
        asItIs.takesOlder = true;
        EXPECT_LT(Logbook::open(target, kNow, asItIs).schemaVersion(), currentSchemaVersion());
        EXPECT_EQ(Logbook::open(target, kNow).schemaVersion(), currentSchemaVersion());
    }
    EXPECT_FALSE(std::filesystem::is_empty(folder.path()));
}

TEST(ScratchCopyTest, TakesWhatIsDoneToItWithItself)
{
    const TemporaryFolder folder;
    const auto path = folder / "gym.levelbar";
    Logbook logbook = Logbook::create(path, kNow);
    addMember(logbook, "M1"); // lies in the log beside the file so far
    {
        Logbook scratch = Logbook::scratchCopy(path, kNow);
        EXPECT_TRUE(MemberStore(scratch).find("M1"));
        addMember(scratch, "M2");
        EXPECT_TRUE(MemberStore(scratch).find("M2"));
        EXPECT_EQ(scratch.path(), path) << "for sentences";
    }
    EXPECT_FALSE(MemberStore(logbook).find("M2"));
}

} // namespace
} // namespace levelbar::storage::backup_test
