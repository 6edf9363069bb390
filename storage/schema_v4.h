// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

namespace levelbar::storage {

// Schema version 4: what the instructor laid down about left/right differences. A measure is an
// exercise or a test: of its two columns one is NULL. Rules as in schema_v1.h.
extern const char* const kSchemaV4;

} // namespace levelbar::storage
