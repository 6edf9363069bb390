// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "storage/store_error.h"

#include <filesystem>
#include <utility>

namespace SQLite {
class Exception;
}

namespace levelbar::storage {

// The one place where SQLite's codes become kinds and sentences. `path` is named in the sentence.
[[nodiscard]] StoreError asStoreError(const SQLite::Exception& error,
                                      const std::filesystem::path& path);

// Throws what is in flight on as a StoreError: for use inside a catch block only.
[[noreturn]] void rethrowAsStoreError(const std::filesystem::path& path);

// Runs the work; any SQLite::Exception in it leaves as a StoreError.
template <typename Work> auto translateErrors(const std::filesystem::path& path, Work&& work)
{
    try {
        return std::forward<Work>(work)();
    } catch (...) {
        rethrowAsStoreError(path);
    }
}

} // namespace levelbar::storage
