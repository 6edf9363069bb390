// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <array>
#include <random>

namespace levelbar::storage {

// A random 128-bit id, so that rows of two logbooks can be told apart. Ids are not secrets.
inline std::array<unsigned char, 16> randomUid()
{
    thread_local std::random_device source;
    std::array<unsigned char, 16> bytes{};
    for (unsigned char& byte : bytes) {
        byte = static_cast<unsigned char>(source() & 0xFFU);
    }
    return bytes;
}

} // namespace levelbar::storage
