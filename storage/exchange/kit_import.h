// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/gym/kit.h"
#include "storage/exchange/import.h"

#include <optional>

namespace levelbar::storage {

// Reads what a gym owns from CSV: kind,mass,unit,count,name. kind: bar, plate, dumbbell,
// kettlebell, collars (both of a bar together), step (of machines and cables); unit: kg or lb,
// empty = kg; count: 0 to 999, empty = 1; the first bar is the usual one. Without a step 2.5 kg
// are taken. Nothing when the report holds faults.
[[nodiscard]] std::optional<Kit> readKit(const ImportSource& source, ImportReport& report);

} // namespace levelbar::storage
