// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "storage/store_error.h"

#include <QString>

#include <optional>

namespace levelbar::ui {

// Runs what reads or writes the logbook: the one place of the class floor where a failing store
// is caught. Nothing when it went well, else the sentence that says what happened; the data are
// as they were. A sentence on the page and not a question in a window: the instructor's hand
// stays on the number pad.
template <typename Work> [[nodiscard]] std::optional<QString> failureOf(const Work& work)
{
    try {
        work();
    } catch (const storage::StoreError& error) {
        return QString::fromUtf8(error.what());
    }
    return std::nullopt;
}

} // namespace levelbar::ui
