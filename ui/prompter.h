// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>

namespace levelbar::ui {

// Asks people and tells them things: the one seam through which pages open dialogs, so that
// tests can answer.
class Prompter {
public:
    virtual ~Prompter() = default;

    // Something failed; the data are as they were. `whatNext`: what the person can do.
    virtual void tellFailure(const QString& what, const QString& whatNext) = 0;

    // True when the person wants it. `action`: the label of the button that does it.
    [[nodiscard]] virtual bool confirm(const QString& question, const QString& action) = 0;
};

} // namespace levelbar::ui
