// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "storage/schema_v4.h"

namespace levelbar::storage {

const char* const kSchemaV4 = R"sql(
CREATE TABLE side_reason (
    id INTEGER PRIMARY KEY AUTOINCREMENT NOT NULL,
    member INTEGER NOT NULL REFERENCES member(id),
    exercise INTEGER REFERENCES exercise(id),
    test INTEGER REFERENCES test_kind(id),
    reason TEXT NOT NULL CHECK (length(reason) BETWEEN 1 AND 200),
    since INTEGER NOT NULL,
    ended INTEGER,
    agreed_percent REAL NOT NULL,
    CHECK ((exercise IS NULL) <> (test IS NULL)),
    CHECK (ended >= since)
) STRICT;

CREATE UNIQUE INDEX side_reason_of_exercise ON side_reason(member, exercise, since)
    WHERE exercise IS NOT NULL;
CREATE UNIQUE INDEX side_reason_of_test ON side_reason(member, test, since)
    WHERE test IS NOT NULL;

CREATE TABLE side_threshold (
    id INTEGER PRIMARY KEY AUTOINCREMENT NOT NULL,
    exercise INTEGER UNIQUE REFERENCES exercise(id),
    test INTEGER UNIQUE REFERENCES test_kind(id),
    percent_tenths INTEGER NOT NULL CHECK (percent_tenths BETWEEN 10 AND 500),
    CHECK ((exercise IS NULL) <> (test IS NULL))
) STRICT;

CREATE TABLE side_prescription (
    member INTEGER NOT NULL REFERENCES member(id),
    exercise INTEGER NOT NULL REFERENCES exercise(id),
    started INTEGER NOT NULL,
    ended INTEGER,
    why_ended INTEGER CHECK (why_ended BETWEEN 1 AND 5),
    wants_extra_set INTEGER NOT NULL DEFAULT 0 CHECK (wants_extra_set IN (0, 1)),
    PRIMARY KEY (member, exercise, started),
    CHECK ((ended IS NULL) = (why_ended IS NULL)),
    CHECK (ended >= started)
) STRICT, WITHOUT ROWID;

CREATE TABLE surgery (
    id INTEGER PRIMARY KEY AUTOINCREMENT NOT NULL,
    member INTEGER NOT NULL REFERENCES member(id),
    area TEXT NOT NULL DEFAULT '',
    exercise INTEGER REFERENCES exercise(id),
    test INTEGER REFERENCES test_kind(id),
    side INTEGER NOT NULL CHECK (side IN (1, 2)),
    day INTEGER NOT NULL,
    CHECK ((area <> '') + (exercise IS NOT NULL) + (test IS NOT NULL) = 1)
) STRICT;

CREATE INDEX surgery_member ON surgery(member);
)sql";

} // namespace levelbar::storage
