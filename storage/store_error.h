// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <stdexcept>
#include <string>

namespace levelbar::storage {

// Why the logbook could not be read or written.
enum class StoreErrorKind {
    NotFound,    // no such file
    Exists,      // would overwrite a file
    NotALogbook, // some other file
    TooNew,      // written by a newer Levelbar
    Busy,        // another program is writing
    Full,        // disk full
    ReadOnly,    // may not be written
    Corrupt,     // damaged
    Constraint,  // the values contradict each other or what is stored
    Interrupted, // asked to stop
    Other,
};

// The only exception that leaves storage. what() is one English sentence that names the file or
// the thing at fault and what to do next.
class StoreError : public std::runtime_error {
public:
    StoreError(StoreErrorKind kind, const std::string& sentence)
        : std::runtime_error(sentence)
        , m_kind(kind)
    {
    }

    [[nodiscard]] StoreErrorKind kind() const noexcept { return m_kind; }

private:
    StoreErrorKind m_kind;
};

} // namespace levelbar::storage
