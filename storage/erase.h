// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/base/id.h"
#include "storage/logbook.h"

namespace levelbar::storage {

// Removes a person for good: every row that is theirs and every action that names them, so that
// it cannot be taken back; then the file is rewritten, so that no trace stays in it. Busy when a
// reader keeps old pages alive. Copies made before (backups, exports) still hold the person.
void eraseMember(Logbook& logbook, MemberId member);

} // namespace levelbar::storage
