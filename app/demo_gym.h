// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "storage/exchange/import.h"
#include "storage/logbook.h"

namespace levelbar {

// Fills a new logbook with the invented gym: its people, sets and tests from the CSV that is
// compiled in, its racks, its weekly classes and its emergency card. With faults in the report
// nothing was imported; the logbook is then of no use.
[[nodiscard]] storage::ImportReport addDemoGym(storage::Logbook& logbook, Moment now);

} // namespace levelbar
