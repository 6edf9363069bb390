// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "storage/schema_v8.h"

namespace levelbar::storage {

const char* const kSchemaV8 = R"sql(
CREATE TABLE strength_goal (
    member INTEGER NOT NULL REFERENCES member(id),
    exercise INTEGER NOT NULL REFERENCES exercise(id),
    side INTEGER NOT NULL CHECK (side BETWEEN 0 AND 2),
    load INTEGER NOT NULL CHECK (load BETWEEN 1 AND 2204623),
    load_unit INTEGER NOT NULL CHECK (load_unit IN (0, 1)),
    by_day INTEGER,
    set_day INTEGER NOT NULL,
    PRIMARY KEY (member, exercise, side)
) STRICT, WITHOUT ROWID;

CREATE TABLE never_together (
    member INTEGER NOT NULL REFERENCES member(id),
    other INTEGER NOT NULL REFERENCES member(id),
    PRIMARY KEY (member, other),
    CHECK (member <> other)
) STRICT, WITHOUT ROWID;

CREATE TABLE spotter (
    member INTEGER PRIMARY KEY NOT NULL REFERENCES member(id)
) STRICT, WITHOUT ROWID;

ALTER TABLE attendance ADD COLUMN bib INTEGER CHECK (bib BETWEEN 1 AND 999);
ALTER TABLE attendance ADD COLUMN rack INTEGER CHECK (rack BETWEEN 1 AND 99);
ALTER TABLE attendance ADD COLUMN turn INTEGER CHECK (turn BETWEEN 1 AND 999);
ALTER TABLE attendance ADD COLUMN easy_at INTEGER;
)sql";

} // namespace levelbar::storage
