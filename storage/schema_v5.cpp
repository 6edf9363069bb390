// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "storage/schema_v5.h"

namespace levelbar::storage {

const char* const kSchemaV5 = R"sql(
CREATE TABLE settled (
    member INTEGER NOT NULL REFERENCES member(id),
    kind INTEGER NOT NULL CHECK (kind BETWEEN 0 AND 8),
    until INTEGER,
    because TEXT NOT NULL DEFAULT '',
    day INTEGER NOT NULL,
    evidence_day INTEGER NOT NULL,
    evidence_amount INTEGER NOT NULL,
    PRIMARY KEY (member, kind)
) STRICT, WITHOUT ROWID;

CREATE TABLE follow_up (
    id INTEGER PRIMARY KEY AUTOINCREMENT NOT NULL,
    uid BLOB NOT NULL UNIQUE CHECK (length(uid) = 16),
    text TEXT NOT NULL CHECK (length(text) BETWEEN 1 AND 500),
    owner TEXT NOT NULL DEFAULT '',
    written_day INTEGER NOT NULL,
    due_day INTEGER NOT NULL,
    done_day INTEGER,
    member INTEGER REFERENCES member(id),
    meeting INTEGER REFERENCES meeting(id)
) STRICT;

CREATE INDEX follow_up_member ON follow_up(member) WHERE member IS NOT NULL;

ALTER TABLE planned_set ADD COLUMN experience INTEGER CHECK (experience BETWEEN 1 AND 3);
)sql";

} // namespace levelbar::storage
