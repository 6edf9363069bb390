// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

namespace levelbar::storage {

// Schema version 3: how exercises are taught, and ladders. Parts of a text stand between '|'.
// What a gym changed of a shipped exercise lies in exercise_change (fields cues, cautions, areas,
// bench_angle); its own version of a shipped ladder is a ladder of the same key that is not
// shipped. So a library update may overwrite what is shipped. Places count from 1, the easiest.
// Rules as in schema_v1.h.
extern const char* const kSchemaV3;

} // namespace levelbar::storage
