// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "storage/schema_v1.h"

namespace levelbar::storage {

const char* const kSchemaV1Roster = R"sql(
CREATE TABLE import (
    id INTEGER PRIMARY KEY AUTOINCREMENT NOT NULL,
    at INTEGER NOT NULL,
    source TEXT NOT NULL
) STRICT;

CREATE TABLE member (
    id INTEGER PRIMARY KEY AUTOINCREMENT NOT NULL,
    uid BLOB NOT NULL UNIQUE CHECK (length(uid) = 16),
    code TEXT NOT NULL UNIQUE CHECK (length(code) BETWEEN 1 AND 64),
    name TEXT NOT NULL DEFAULT '',
    sex INTEGER CHECK (sex IN (1, 2)),
    birth_day INTEGER,
    stature_tenth_mm INTEGER CHECK (stature_tenth_mm BETWEEN 5000 AND 26000),
    intake_mass INTEGER CHECK (intake_mass BETWEEN 1 AND 2204623),
    intake_mass_unit INTEGER CHECK (intake_mass_unit IN (0, 1)),
    dominant_side INTEGER CHECK (dominant_side IN (1, 2)),
    experience INTEGER CHECK (experience BETWEEN 1 AND 3),
    goal INTEGER CHECK (goal BETWEEN 1 AND 5),
    organisation TEXT NOT NULL DEFAULT '',
    note TEXT NOT NULL DEFAULT '',
    is_archived INTEGER NOT NULL DEFAULT 0 CHECK (is_archived IN (0, 1)),
    import INTEGER REFERENCES import(id),
    CHECK ((intake_mass IS NULL) = (intake_mass_unit IS NULL))
) STRICT;

CREATE TABLE member_limit (
    id INTEGER PRIMARY KEY AUTOINCREMENT NOT NULL,
    member INTEGER NOT NULL REFERENCES member(id),
    area TEXT NOT NULL,
    side INTEGER NOT NULL CHECK (side BETWEEN 0 AND 2),
    since INTEGER NOT NULL,
    until INTEGER,
    note TEXT NOT NULL DEFAULT ''
) STRICT;

CREATE TABLE consent (
    id INTEGER PRIMARY KEY AUTOINCREMENT NOT NULL,
    member INTEGER NOT NULL REFERENCES member(id),
    subject TEXT NOT NULL,
    given_on INTEGER NOT NULL,
    withdrawn_on INTEGER,
    note TEXT NOT NULL DEFAULT ''
) STRICT;

CREATE TABLE emergency_contact (
    member INTEGER NOT NULL REFERENCES member(id),
    rank INTEGER NOT NULL CHECK (rank BETWEEN 1 AND 9),
    name TEXT NOT NULL,
    relation TEXT NOT NULL DEFAULT '',
    phone TEXT NOT NULL,
    PRIMARY KEY (member, rank)
) STRICT, WITHOUT ROWID;

CREATE TABLE screening (
    id INTEGER PRIMARY KEY AUTOINCREMENT NOT NULL,
    member INTEGER NOT NULL REFERENCES member(id),
    day INTEGER NOT NULL,
    form TEXT NOT NULL,
    answers TEXT NOT NULL DEFAULT '',
    outcome TEXT NOT NULL,
    cleared_until INTEGER,
    by_whom TEXT NOT NULL DEFAULT ''
) STRICT;

CREATE TABLE setting (
    name TEXT PRIMARY KEY NOT NULL,
    value TEXT NOT NULL
) STRICT, WITHOUT ROWID;
)sql";

const char* const kSchemaV1Library = R"sql(
CREATE TABLE exercise (
    id INTEGER PRIMARY KEY AUTOINCREMENT NOT NULL,
    key TEXT NOT NULL UNIQUE,
    is_shipped INTEGER NOT NULL CHECK (is_shipped IN (0, 1)),
    library_version INTEGER NOT NULL DEFAULT 0,
    name TEXT NOT NULL,
    pattern INTEGER NOT NULL CHECK (pattern BETWEEN 1 AND 10),
    implement INTEGER NOT NULL CHECK (implement BETWEEN 1 AND 8),
    sidedness INTEGER NOT NULL CHECK (sidedness BETWEEN 1 AND 3),
    amount INTEGER NOT NULL CHECK (amount BETWEEN 1 AND 3),
    load INTEGER NOT NULL CHECK (load BETWEEN 1 AND 3),
    base_exercise_key TEXT NOT NULL DEFAULT '',
    ratio_to_base REAL,
    ratio_spread_percent REAL,
    source TEXT NOT NULL DEFAULT '',
    is_hidden INTEGER NOT NULL DEFAULT 0 CHECK (is_hidden IN (0, 1)),
    import INTEGER REFERENCES import(id)
) STRICT;

CREATE TABLE exercise_change (
    exercise INTEGER NOT NULL REFERENCES exercise(id),
    field TEXT NOT NULL,
    value TEXT NOT NULL,
    PRIMARY KEY (exercise, field)
) STRICT, WITHOUT ROWID;

CREATE TABLE exercise_name (
    exercise INTEGER NOT NULL REFERENCES exercise(id),
    language TEXT NOT NULL,
    name TEXT NOT NULL,
    PRIMARY KEY (exercise, language)
) STRICT, WITHOUT ROWID;

CREATE TABLE test_kind (
    id INTEGER PRIMARY KEY AUTOINCREMENT NOT NULL,
    key TEXT NOT NULL UNIQUE,
    is_shipped INTEGER NOT NULL CHECK (is_shipped IN (0, 1)),
    name TEXT NOT NULL,
    unit TEXT NOT NULL,
    direction INTEGER NOT NULL CHECK (direction BETWEEN 1 AND 3),
    is_sided INTEGER NOT NULL CHECK (is_sided IN (0, 1)),
    maximum_of INTEGER REFERENCES exercise(id),
    lowest INTEGER NOT NULL,
    highest INTEGER NOT NULL,
    import INTEGER REFERENCES import(id)
) STRICT;

CREATE TABLE setup_card (
    member INTEGER NOT NULL REFERENCES member(id),
    exercise INTEGER NOT NULL REFERENCES exercise(id),
    hook_hole INTEGER,
    safety_hole INTEGER,
    bench_angle INTEGER,
    grip_mark TEXT NOT NULL DEFAULT '',
    foot_position TEXT NOT NULL DEFAULT '',
    note TEXT NOT NULL DEFAULT '',
    is_confirmed INTEGER NOT NULL DEFAULT 0 CHECK (is_confirmed IN (0, 1)),
    PRIMARY KEY (member, exercise)
) STRICT, WITHOUT ROWID;
)sql";

const char* const kSchemaV1Classes = R"sql(
CREATE TABLE class (
    id INTEGER PRIMARY KEY AUTOINCREMENT NOT NULL,
    uid BLOB NOT NULL UNIQUE CHECK (length(uid) = 16),
    name TEXT NOT NULL UNIQUE,
    capacity INTEGER CHECK (capacity > 0),
    is_archived INTEGER NOT NULL DEFAULT 0 CHECK (is_archived IN (0, 1)),
    import INTEGER REFERENCES import(id)
) STRICT;

CREATE TABLE class_slot (
    id INTEGER PRIMARY KEY AUTOINCREMENT NOT NULL,
    class INTEGER NOT NULL REFERENCES class(id),
    weekday INTEGER NOT NULL CHECK (weekday BETWEEN 1 AND 7),
    start_minute INTEGER NOT NULL CHECK (start_minute BETWEEN 0 AND 1439),
    minutes INTEGER NOT NULL CHECK (minutes BETWEEN 1 AND 1440),
    room TEXT NOT NULL DEFAULT '',
    instructor TEXT NOT NULL DEFAULT '',
    since INTEGER NOT NULL,
    until INTEGER
) STRICT;

CREATE TABLE class_member (
    class INTEGER NOT NULL REFERENCES class(id),
    member INTEGER NOT NULL REFERENCES member(id),
    import INTEGER REFERENCES import(id),
    PRIMARY KEY (class, member)
) STRICT, WITHOUT ROWID;

CREATE INDEX class_member_member ON class_member(member);

CREATE TABLE class_template (
    class INTEGER NOT NULL REFERENCES class(id),
    position INTEGER NOT NULL CHECK (position >= 1),
    exercise INTEGER NOT NULL REFERENCES exercise(id),
    sets INTEGER NOT NULL CHECK (sets BETWEEN 1 AND 20),
    reps INTEGER CHECK (reps BETWEEN 1 AND 200),
    PRIMARY KEY (class, position)
) STRICT, WITHOUT ROWID;

CREATE TABLE meeting (
    id INTEGER PRIMARY KEY AUTOINCREMENT NOT NULL,
    uid BLOB NOT NULL UNIQUE CHECK (length(uid) = 16),
    class INTEGER NOT NULL REFERENCES class(id),
    day INTEGER NOT NULL,
    start_minute INTEGER CHECK (start_minute BETWEEN 0 AND 1439),
    room TEXT NOT NULL DEFAULT '',
    instructor TEXT NOT NULL DEFAULT '',
    is_cancelled INTEGER NOT NULL DEFAULT 0 CHECK (is_cancelled IN (0, 1)),
    cancelled_reason TEXT NOT NULL DEFAULT '',
    import INTEGER REFERENCES import(id)
) STRICT;

CREATE INDEX meeting_class_day ON meeting(class, day);

CREATE TABLE attendance (
    meeting INTEGER NOT NULL REFERENCES meeting(id),
    member INTEGER NOT NULL REFERENCES member(id),
    is_booked INTEGER NOT NULL DEFAULT 0 CHECK (is_booked IN (0, 1)),
    came INTEGER CHECK (came IN (0, 1)),
    late_minutes INTEGER CHECK (late_minutes >= 0),
    left_minute INTEGER CHECK (left_minute >= 0),
    left_reason TEXT NOT NULL DEFAULT '',
    import INTEGER REFERENCES import(id),
    PRIMARY KEY (meeting, member)
) STRICT, WITHOUT ROWID;

CREATE INDEX attendance_member ON attendance(member);

CREATE TABLE guest (
    id INTEGER PRIMARY KEY AUTOINCREMENT NOT NULL,
    meeting INTEGER NOT NULL REFERENCES meeting(id),
    label TEXT NOT NULL,
    has_consented INTEGER NOT NULL DEFAULT 0 CHECK (has_consented IN (0, 1)),
    note TEXT NOT NULL DEFAULT ''
) STRICT;
)sql";

const char* const kSchemaV1Sets = R"sql(
CREATE TABLE planned_set (
    id INTEGER PRIMARY KEY AUTOINCREMENT NOT NULL,
    uid BLOB NOT NULL UNIQUE CHECK (length(uid) = 16),
    meeting INTEGER NOT NULL REFERENCES meeting(id),
    member INTEGER NOT NULL REFERENCES member(id),
    exercise INTEGER NOT NULL REFERENCES exercise(id),
    side INTEGER NOT NULL CHECK (side BETWEEN 0 AND 2),
    number INTEGER NOT NULL CHECK (number BETWEEN 1 AND 999),
    load INTEGER NOT NULL CHECK (load BETWEEN 0 AND 2204623),
    load_unit INTEGER NOT NULL CHECK (load_unit IN (0, 1)),
    amount INTEGER CHECK (amount >= 0),
    reserve_tenths INTEGER CHECK (reserve_tenths BETWEEN 0 AND 500),
    kind INTEGER NOT NULL DEFAULT 2 CHECK (kind BETWEEN 1 AND 4),
    is_new INTEGER NOT NULL DEFAULT 0 CHECK (is_new IN (0, 1)),
    predicted_reps REAL,
    predicted_low REAL,
    predicted_high REAL,
    model_version INTEGER,
    given_at INTEGER,
    UNIQUE (meeting, member, exercise, side, number)
) STRICT;

CREATE INDEX planned_set_member ON planned_set(member);

CREATE TABLE done_set (
    member INTEGER NOT NULL REFERENCES member(id),
    exercise INTEGER NOT NULL REFERENCES exercise(id),
    side INTEGER NOT NULL CHECK (side BETWEEN 0 AND 2),
    day INTEGER NOT NULL,
    number INTEGER NOT NULL CHECK (number BETWEEN 1 AND 999),
    day_order INTEGER NOT NULL DEFAULT 0 CHECK (day_order >= 0),
    reps INTEGER CHECK (reps BETWEEN 0 AND 200),
    seconds_tenths INTEGER CHECK (seconds_tenths >= 0),
    metres_tenths INTEGER CHECK (metres_tenths >= 0),
    load INTEGER NOT NULL CHECK (load BETWEEN 0 AND 2204623),
    load_unit INTEGER NOT NULL CHECK (load_unit IN (0, 1)),
    reserve_tenths INTEGER CHECK (reserve_tenths BETWEEN 0 AND 500),
    known INTEGER NOT NULL CHECK (known BETWEEN 1 AND 4),
    kind INTEGER NOT NULL CHECK (kind BETWEEN 1 AND 4),
    stopped INTEGER CHECK (stopped BETWEEN 1 AND 6),
    is_clean INTEGER CHECK (is_clean IN (0, 1)),
    pain INTEGER CHECK (pain BETWEEN 0 AND 10),
    pain_area TEXT NOT NULL DEFAULT '',
    pain_side INTEGER CHECK (pain_side BETWEEN 0 AND 2),
    hook_hole INTEGER CHECK (hook_hole BETWEEN 1 AND 99),
    bench_angle INTEGER CHECK (bench_angle BETWEEN -45 AND 90),
    meeting INTEGER REFERENCES meeting(id),
    planned INTEGER REFERENCES planned_set(id),
    keyed_at INTEGER,
    keyed_by TEXT NOT NULL DEFAULT '',
    note TEXT NOT NULL DEFAULT '',
    import INTEGER REFERENCES import(id),
    PRIMARY KEY (member, exercise, side, day, number),
    CHECK (reps IS NOT NULL OR seconds_tenths IS NOT NULL OR metres_tenths IS NOT NULL)
) STRICT, WITHOUT ROWID;

CREATE INDEX done_set_meeting ON done_set(meeting) WHERE meeting IS NOT NULL;
CREATE INDEX done_set_planned ON done_set(planned) WHERE planned IS NOT NULL;

CREATE TABLE trial (
    member INTEGER NOT NULL REFERENCES member(id),
    test INTEGER NOT NULL REFERENCES test_kind(id),
    side INTEGER NOT NULL CHECK (side BETWEEN 0 AND 2),
    day INTEGER NOT NULL,
    number INTEGER NOT NULL CHECK (number BETWEEN 1 AND 99),
    value INTEGER NOT NULL,
    unit TEXT NOT NULL,
    is_valid INTEGER NOT NULL DEFAULT 1 CHECK (is_valid IN (0, 1)),
    note TEXT NOT NULL DEFAULT '',
    import INTEGER REFERENCES import(id),
    PRIMARY KEY (member, test, side, day, number)
) STRICT, WITHOUT ROWID;

CREATE TABLE action (
    id INTEGER PRIMARY KEY AUTOINCREMENT NOT NULL,
    kind INTEGER NOT NULL,
    at INTEGER NOT NULL,
    schema_version INTEGER NOT NULL,
    reverses INTEGER REFERENCES action(id),
    changeset BLOB NOT NULL
) STRICT;

CREATE TABLE action_member (
    action INTEGER NOT NULL REFERENCES action(id),
    member INTEGER NOT NULL,
    PRIMARY KEY (action, member)
) STRICT, WITHOUT ROWID;

CREATE INDEX action_member_member ON action_member(member);
)sql";

} // namespace levelbar::storage
