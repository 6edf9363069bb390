// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/floor/floor_change.h"
#include "core/floor/pad_entry.h"
#include "core/floor/substitutes.h"

#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace levelbar {

struct PadKey {
    enum class Kind { Character, Enter, Erase, Abandon };

    Kind kind = Kind::Enter;
    char character = ' ';
    bool isRepeat = false; // the key is being held
};

struct PadTime {
    Moment at;      // when the key was pressed
    int minute = 0; // of the hour
};

// A question that waits for 1, 2, 3 or 0; of a newcomer for three answers, 1 yes and 0 no; why
// somebody left for 1 to 4, and Enter alone or another word leaves it open.
struct PadQuestion {
    enum class Kind { Pain, OtherExercise, KitGone, Newcomer, WhyLeft };

    Kind kind = Kind::Pain;
    MemberId member;
    std::vector<FloorChoice> choices;
};

// What taking back needs of one entry.
struct PadStep {
    std::shared_ptr<const ClassFloor> before;
    std::vector<DoneSet> recorded;
    Phrase said;
};

// The pad and the hour it writes: the whole state between two keys.
struct NumberPad {
    ClassFloor floor;
    std::string typed;      // not entered yet
    bool isRefused = false; // it was entered and refused: the next character begins anew
    std::optional<PadQuestion> question;
    std::vector<PadStep> steps; // oldest first
};

// The state after a key and what follows from it.
struct PadOutcome {
    NumberPad pad;
    std::vector<DoneSet> recorded;  // to be stored; replaces the set of the same key
    std::vector<DoneSet> takenBack; // to be removed,
    std::vector<DoneSet> restored;  // and what stood there before
    std::vector<Phrase> said;       // in order, one line each
    std::optional<Fault> refused;   // then nothing changed but the key itself; the text stays
};

// An hour about to begin: cells sorted, the cursor on the first open one.
[[nodiscard]] NumberPad openPad(ClassFloor floor);

// One key. A held key does nothing but erase, so that a held Enter does not run on. After every
// entry the cursor is on an open cell, if there is one. Abandon drops what is typed, then the
// question.
[[nodiscard]] PadOutcome
press(NumberPad pad, const FloorBook& book, const PadKey& key, const PadTime& time);

} // namespace levelbar
