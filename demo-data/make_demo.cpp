// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "demo-data/demo_people.h"
#include "demo-data/demo_sets.h"

#include <filesystem>
#include <fstream>
#include <iostream>

namespace {

constexpr std::uint64_t kSeed = 20260223; // any number; this one is the first day

bool write(const std::filesystem::path& path, const std::string& text)
{
    std::ofstream out(path, std::ios::binary);
    out << text;
    out.flush();
    if (!out) {
        std::cerr << path.string() << " cannot be written.\n";
    }
    return static_cast<bool>(out);
}

} // namespace

// Usage: make_demo FOLDER [SEED]
int main(int argc, char** argv)
{
    if (argc < 2 || argc > 3) {
        std::cerr << "usage: make_demo FOLDER [SEED]\n";
        return 2;
    }
    const std::filesystem::path folder = argv[1];
    levelbar::tests::Random random(argc == 3 ? std::stoull(argv[2]) : kSeed);
    const auto people = levelbar::demo::makePeople(random);
    const bool isDone = write(folder / "members.csv", levelbar::demo::membersCsv(people)) &&
                        write(folder / "sets.csv", levelbar::demo::setsCsv(people, random)) &&
                        write(folder / "tests.csv", levelbar::demo::testsCsv(people, random));
    return isDone ? 0 : 1;
}
