// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "storage/schema_v6.h"

namespace levelbar::storage {

const char* const kSchemaV6 = R"sql(
CREATE TABLE room (
    id INTEGER PRIMARY KEY AUTOINCREMENT NOT NULL,
    name TEXT NOT NULL UNIQUE CHECK (length(name) BETWEEN 1 AND 60)
) STRICT;

CREATE TABLE rack (
    id INTEGER PRIMARY KEY AUTOINCREMENT NOT NULL,
    room INTEGER REFERENCES room(id),
    name TEXT NOT NULL UNIQUE CHECK (length(name) BETWEEN 1 AND 60),
    lowest_tenth_mm INTEGER NOT NULL CHECK (lowest_tenth_mm BETWEEN 0 AND 20000),
    pitch_tenth_mm INTEGER NOT NULL CHECK (pitch_tenth_mm BETWEEN 50 AND 3000),
    holes INTEGER NOT NULL CHECK (holes BETWEEN 1 AND 99),
    count INTEGER NOT NULL CHECK (count BETWEEN 0 AND 99)
) STRICT;

CREATE TABLE bench (
    id INTEGER PRIMARY KEY AUTOINCREMENT NOT NULL,
    room INTEGER REFERENCES room(id),
    name TEXT NOT NULL UNIQUE CHECK (length(name) BETWEEN 1 AND 60),
    angles TEXT NOT NULL,
    count INTEGER NOT NULL CHECK (count BETWEEN 0 AND 99)
) STRICT;

CREATE TABLE gone_piece (
    day INTEGER NOT NULL,
    kind INTEGER NOT NULL CHECK (kind IN (1, 2, 3, 4, 7, 8)),
    name TEXT NOT NULL,
    mass INTEGER NOT NULL CHECK (mass BETWEEN 0 AND 2204623),
    mass_unit INTEGER NOT NULL CHECK (mass_unit IN (0, 1)),
    station INTEGER NOT NULL,
    count INTEGER NOT NULL CHECK (count BETWEEN 1 AND 999),
    PRIMARY KEY (day, kind, name, mass, mass_unit, station)
) STRICT, WITHOUT ROWID;

CREATE TABLE scale_reading (
    member INTEGER NOT NULL REFERENCES member(id),
    day INTEGER NOT NULL,
    hands_tenth_mm INTEGER NOT NULL CHECK (hands_tenth_mm BETWEEN 0 AND 20000),
    locked_out INTEGER NOT NULL CHECK (locked_out BETWEEN 1 AND 2204623),
    locked_out_unit INTEGER NOT NULL CHECK (locked_out_unit IN (0, 1)),
    at_chest INTEGER NOT NULL CHECK (at_chest BETWEEN 1 AND 2204623),
    at_chest_unit INTEGER NOT NULL CHECK (at_chest_unit IN (0, 1)),
    PRIMARY KEY (member, day, hands_tenth_mm)
) STRICT, WITHOUT ROWID;

ALTER TABLE setup_card ADD COLUMN rack INTEGER REFERENCES rack(id);
)sql";

} // namespace levelbar::storage
