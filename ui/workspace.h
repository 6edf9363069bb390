// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "storage/logbook.h"
#include "ui/change_notifier.h"
#include "ui/clock.h"
#include "ui/prompter.h"

namespace levelbar::ui {

// What every page is built with: the open logbook, the notifier, the clock and the prompter. All
// of it outlives the pages.
struct Workspace {
    storage::Logbook& logbook;
    ChangeNotifier& notifier;
    Clock clock;
    Prompter& prompter;
};

} // namespace levelbar::ui
