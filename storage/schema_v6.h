// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

namespace levelbar::storage {

// Schema version 6: rooms, racks and benches, what is gone on a day, whose rack a set-up card's
// holes are of, and readings of a bathroom scale under the hands. Lengths are tenths of a
// millimetre; angles are whole degrees between '|'. Kinds of pieces as in schema_v2.h, and 7 rack,
// 8 bench, which `station` names; else it is 0. Of a reading, height 0 is the floor. Rules as in
// schema_v1.h.
extern const char* const kSchemaV6;

} // namespace levelbar::storage
