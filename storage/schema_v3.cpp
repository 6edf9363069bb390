// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "storage/schema_v3.h"

namespace levelbar::storage {

const char* const kSchemaV3 = R"sql(
CREATE TABLE exercise_detail (
    exercise INTEGER PRIMARY KEY NOT NULL REFERENCES exercise(id),
    cues TEXT NOT NULL DEFAULT '',
    cautions TEXT NOT NULL DEFAULT '',
    areas TEXT NOT NULL DEFAULT '',
    bench_angle INTEGER CHECK (bench_angle BETWEEN -45 AND 90)
) STRICT, WITHOUT ROWID;

CREATE TABLE ladder (
    id INTEGER PRIMARY KEY AUTOINCREMENT NOT NULL,
    key TEXT NOT NULL,
    is_shipped INTEGER NOT NULL CHECK (is_shipped IN (0, 1)),
    name TEXT NOT NULL,
    pattern INTEGER NOT NULL CHECK (pattern BETWEEN 1 AND 10),
    UNIQUE (key, is_shipped)
) STRICT;

CREATE TABLE ladder_rung (
    ladder INTEGER NOT NULL REFERENCES ladder(id),
    place INTEGER NOT NULL CHECK (place >= 1),
    exercise INTEGER NOT NULL REFERENCES exercise(id),
    setting TEXT NOT NULL DEFAULT '',
    up_amount INTEGER NOT NULL CHECK (up_amount BETWEEN 1 AND 600),
    up_sets INTEGER NOT NULL CHECK (up_sets BETWEEN 1 AND 10),
    up_sessions INTEGER NOT NULL CHECK (up_sessions BETWEEN 1 AND 10),
    up_load_percent INTEGER NOT NULL CHECK (up_load_percent BETWEEN 0 AND 300),
    down_pain INTEGER NOT NULL CHECK (down_pain BETWEEN 1 AND 10),
    down_days_away INTEGER NOT NULL CHECK (down_days_away BETWEEN 1 AND 365),
    down_fewer_than INTEGER NOT NULL CHECK (down_fewer_than BETWEEN 1 AND 600),
    down_sessions INTEGER NOT NULL CHECK (down_sessions BETWEEN 1 AND 10),
    source TEXT NOT NULL DEFAULT '',
    PRIMARY KEY (ladder, place)
) STRICT, WITHOUT ROWID;
)sql";

} // namespace levelbar::storage
