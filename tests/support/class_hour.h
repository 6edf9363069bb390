// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/floor/number_pad.h"

#include <string>
#include <string_view>
#include <vector>

namespace levelbar::tests {

// An invented gym and class: racks 1 to 6, benches 7 to 10, 22 people with bibs 1 to 22 (member
// ids alike), three at the first two stations and two at the others. Nine rounds in three blocks;
// 5 minutes a round after 10 of warm-up.
inline const ExerciseId kBench{1};
inline const ExerciseId kBarbellRow{2};
inline const ExerciseId kSquat{3};
inline const ExerciseId kDumbbellPress{4};
inline const ExerciseId kDumbbellRow{5};
inline const ExerciseId kGoblet{6};
inline const ExerciseId kPushUp{7};
inline const ExerciseId kFloorPress{8};
inline const ExerciseId kSitToStand{9};
inline const ExerciseId kBridge{10};
inline const ExerciseId kPlankReach{11};
inline const ExerciseId kCurl{12};
inline const ExerciseId kDumbbellFloorPress{13};

[[nodiscard]] FloorBook gymBook();
[[nodiscard]] ClassFloor fullClass();

// A few people on few stations, bibs from 1, all at the bench press with 40 kg × 8 (racks) or the
// dumbbell press with 10 kg × 10 (benches). `places`: of each person the station.
[[nodiscard]] ClassFloor
smallClass(const std::vector<Station>& stations, const std::vector<int>& places, int rounds);

// Presses keys one by one and keeps count. '\n' is Enter, '\b' erases, '\x1b' abandons.
class Keyboard {
public:
    Keyboard(ClassFloor floor, FloorBook book)
        : m_pad(openPad(std::move(floor)))
        , m_book(withLoads(std::move(book)))
    {
    }

    // The outcome of the last key.
    PadOutcome type(std::string_view keys);
    PadOutcome hold(PadKey::Kind kind, int times);

    void setMinute(int minute) { m_minute = minute; }

    [[nodiscard]] const NumberPad& pad() const { return m_pad; }

    [[nodiscard]] const ClassFloor& floor() const { return m_pad.floor; }

    [[nodiscard]] const PadCell& under() const { return floor().cells[*floor().cursor]; }

    [[nodiscard]] const std::vector<DoneSet>& stored() const { return m_stored; }

    [[nodiscard]] int keys() const { return m_keys; }

private:
    PadOutcome press(const PadKey& key);

    NumberPad m_pad;
    FloorBook m_book;
    std::vector<DoneSet> m_stored; // as a store would hold them
    int m_minute = 0;
    int m_keys = 0;
};

[[nodiscard]] std::string saidText(const PadOutcome& outcome);

} // namespace levelbar::tests
