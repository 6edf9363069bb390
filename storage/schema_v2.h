// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

namespace levelbar::storage {

// Schema version 2: what the gym owns to lift. Kinds: 1 bar, 2 plate, 3 dumbbell, 4 kettlebell,
// 5 both collars of a bar together, 6 the step of machines and cables. Places count from 1; the
// first bar is the usual one. Rules as in schema_v1.h.
inline constexpr const char* kSchemaV2 = R"sql(
CREATE TABLE kit_piece (
    kind INTEGER NOT NULL CHECK (kind BETWEEN 1 AND 6),
    place INTEGER NOT NULL CHECK (place >= 1),
    name TEXT NOT NULL DEFAULT '',
    mass INTEGER NOT NULL CHECK (mass BETWEEN 0 AND 2204623),
    mass_unit INTEGER NOT NULL CHECK (mass_unit IN (0, 1)),
    count INTEGER NOT NULL CHECK (count BETWEEN 0 AND 999),
    PRIMARY KEY (kind, place)
) STRICT, WITHOUT ROWID;
)sql";

} // namespace levelbar::storage
