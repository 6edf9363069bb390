// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstdint>
#include <filesystem>
#include <string>

namespace levelbar::tests {

// A SQLite VFS over the ordinary one that remembers of each file only what was on the disk at its
// last sync. When the power is cut, writes after that are gone: everything fails from then on, and
// restore() puts the remembered bytes into another folder. One at a time.
class PowerCutVfs {
public:
    PowerCutVfs();
    ~PowerCutVfs();

    PowerCutVfs(const PowerCutVfs&) = delete;
    PowerCutVfs& operator=(const PowerCutVfs&) = delete;

    [[nodiscard]] static std::string name() { return "levelbar-power-cut"; }

    // Forgets all files (none may be open) and cuts at the n-th write, truncation, sync or deletion
    // from now (1 = the next one).
    void cutAt(std::int64_t operation);
    [[nodiscard]] bool isCut() const;
    // Operations counted so far since the last cutAt().
    [[nodiscard]] std::int64_t operations() const;

    // The files as they would be found after the cut, under their own names in `folder`.
    void restore(const std::filesystem::path& folder) const;
};

} // namespace levelbar::tests
