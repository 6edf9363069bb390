// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

namespace levelbar::storage {

// Schema version 5: what the instructor said to the lines of the day, follow-ups, and how
// experienced a person was when a planned set was given (the range that was expected has stood in
// planned_set since version 1). settled.kind: AttentionKind. A row has an end (not before that day)
// or a reason (settled), and the newest evidence that was known then. Rules as in schema_v1.h.
extern const char* const kSchemaV5;

} // namespace levelbar::storage
