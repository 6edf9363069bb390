// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "storage/store_error.h"
#include "ui/prompter.h"

#include <QCoreApplication>
#include <QString>

#include <utility>

namespace levelbar::ui {

// Runs an action of the person's and is the only place that catches its failure: says what
// happened and leaves the data as they were. True when it was done.
template <typename Work> bool perform(Prompter& prompter, Work&& work)
{
    try {
        std::forward<Work>(work)();
        return true;
    } catch (const storage::StoreError& error) {
        prompter.tellFailure(QString::fromUtf8(error.what()),
                             QCoreApplication::translate(
                                 "perform", "Nothing was changed. Put it right and try again."));
    }
    return false;
}

} // namespace levelbar::ui
