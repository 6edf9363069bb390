// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "storage/schema_v7.h"

namespace levelbar::storage {

const char* const kSchemaV7Timetable = R"sql(
CREATE TABLE calendar_days (
    id INTEGER PRIMARY KEY AUTOINCREMENT NOT NULL,
    kind INTEGER NOT NULL CHECK (kind IN (1, 2)),
    name TEXT NOT NULL CHECK (length(name) BETWEEN 1 AND 100),
    first_day INTEGER NOT NULL,
    last_day INTEGER NOT NULL,
    CHECK (last_day >= first_day)
) STRICT;

ALTER TABLE class ADD COLUMN room TEXT NOT NULL DEFAULT '';
ALTER TABLE class_slot ADD COLUMN capacity INTEGER CHECK (capacity > 0);
ALTER TABLE meeting ADD COLUMN minutes INTEGER CHECK (minutes BETWEEN 1 AND 1440);
ALTER TABLE meeting ADD COLUMN capacity INTEGER CHECK (capacity > 0);
ALTER TABLE meeting ADD COLUMN is_extra INTEGER NOT NULL DEFAULT 0 CHECK (is_extra IN (0, 1));
ALTER TABLE attendance ADD COLUMN booking INTEGER CHECK (booking BETWEEN 1 AND 4);
ALTER TABLE attendance ADD COLUMN place_order INTEGER NOT NULL DEFAULT 0 CHECK (place_order >= 0);
ALTER TABLE attendance ADD COLUMN rating INTEGER CHECK (rating BETWEEN 0 AND 10);

CREATE INDEX meeting_day ON meeting(day);
)sql";

const char* const kSchemaV7Plan = R"sql(
ALTER TABLE class_template ADD COLUMN block INTEGER NOT NULL DEFAULT 1
    CHECK (block BETWEEN 1 AND 20);
ALTER TABLE class_template ADD COLUMN reserve_tenths INTEGER
    CHECK (reserve_tenths BETWEEN 0 AND 500);
ALTER TABLE class_template ADD COLUMN work_seconds INTEGER CHECK (work_seconds BETWEEN 1 AND 3600);
ALTER TABLE class_template ADD COLUMN rest_seconds INTEGER CHECK (rest_seconds BETWEEN 0 AND 3600);

CREATE TABLE class_block (
    class INTEGER NOT NULL REFERENCES class(id),
    block INTEGER NOT NULL CHECK (block BETWEEN 1 AND 20),
    minutes INTEGER NOT NULL CHECK (minutes BETWEEN 1 AND 1440),
    halves INTEGER NOT NULL DEFAULT 1 CHECK (halves IN (1, 2)),
    PRIMARY KEY (class, block)
) STRICT, WITHOUT ROWID;

CREATE TABLE class_week (
    class INTEGER NOT NULL REFERENCES class(id),
    week INTEGER NOT NULL,
    kind INTEGER NOT NULL DEFAULT 1 CHECK (kind IN (1, 2)),
    note TEXT NOT NULL DEFAULT '',
    PRIMARY KEY (class, week)
) STRICT, WITHOUT ROWID;

CREATE TABLE class_week_item (
    class INTEGER NOT NULL,
    week INTEGER NOT NULL,
    position INTEGER NOT NULL CHECK (position >= 1),
    exercise INTEGER NOT NULL REFERENCES exercise(id),
    sets INTEGER NOT NULL CHECK (sets BETWEEN 1 AND 20),
    reps INTEGER CHECK (reps BETWEEN 1 AND 200),
    block INTEGER NOT NULL DEFAULT 1 CHECK (block BETWEEN 1 AND 20),
    reserve_tenths INTEGER CHECK (reserve_tenths BETWEEN 0 AND 500),
    work_seconds INTEGER CHECK (work_seconds BETWEEN 1 AND 3600),
    rest_seconds INTEGER CHECK (rest_seconds BETWEEN 0 AND 3600),
    PRIMARY KEY (class, week, position),
    FOREIGN KEY (class, week) REFERENCES class_week(class, week)
) STRICT, WITHOUT ROWID;
)sql";

const char* const kSchemaV7Hour = R"sql(
ALTER TABLE done_set ADD COLUMN is_at_least INTEGER NOT NULL DEFAULT 0
    CHECK (is_at_least IN (0, 1));

CREATE TABLE incident (
    id INTEGER PRIMARY KEY AUTOINCREMENT NOT NULL,
    uid BLOB NOT NULL UNIQUE CHECK (length(uid) = 16),
    day INTEGER NOT NULL,
    minute INTEGER CHECK (minute BETWEEN 0 AND 1439),
    member INTEGER REFERENCES member(id),
    guest INTEGER REFERENCES guest(id),
    who TEXT NOT NULL DEFAULT '',
    meeting INTEGER REFERENCES meeting(id),
    what TEXT NOT NULL CHECK (length(what) BETWEEN 1 AND 10000),
    first_aid TEXT NOT NULL DEFAULT '',
    witness TEXT NOT NULL DEFAULT '',
    follow_up TEXT NOT NULL DEFAULT '',
    written_at INTEGER NOT NULL,
    written_by TEXT NOT NULL DEFAULT '',
    CHECK (member IS NULL OR guest IS NULL)
) STRICT;

CREATE INDEX incident_member ON incident(member) WHERE member IS NOT NULL;

CREATE TABLE printed_sheet (
    id INTEGER PRIMARY KEY AUTOINCREMENT NOT NULL,
    meeting INTEGER NOT NULL REFERENCES meeting(id),
    printed_at INTEGER NOT NULL
) STRICT;

CREATE INDEX printed_sheet_meeting ON printed_sheet(meeting);

CREATE TABLE printed_row (
    sheet INTEGER NOT NULL REFERENCES printed_sheet(id),
    row INTEGER NOT NULL CHECK (row >= 1),
    member INTEGER NOT NULL REFERENCES member(id),
    station INTEGER NOT NULL CHECK (station >= 1),
    PRIMARY KEY (sheet, row)
) STRICT, WITHOUT ROWID;

CREATE INDEX printed_row_member ON printed_row(member);
)sql";

} // namespace levelbar::storage
