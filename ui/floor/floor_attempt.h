// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "ui/perform.h"

#include <optional>

namespace levelbar::ui {

// Listens to a failure instead of opening a window over the grid: the instructor's hand stays on
// the number pad.
class HeardFailure : public Prompter {
public:
    void tellFailure(const QString& what, const QString& /*whatNext*/) override { m_what = what; }

    [[nodiscard]] bool confirm(const QString& /*question*/, const QString& /*action*/) override
    {
        return false;
    }

    [[nodiscard]] const QString& what() const { return m_what; }

private:
    QString m_what;
};

// Runs what reads or writes the logbook. Nothing when it went well, else the sentence that says
// what happened; the data are as they were.
template <typename Work> [[nodiscard]] std::optional<QString> failureOf(const Work& work)
{
    HeardFailure heard;
    if (perform(heard, work)) {
        return std::nullopt;
    }
    return heard.what();
}

} // namespace levelbar::ui
