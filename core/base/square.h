// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

namespace levelbar {

[[nodiscard]] constexpr double square(double x)
{
    return x * x;
}

} // namespace levelbar
