// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QIcon>

namespace levelbar::ui {

enum class RailIcon { Today, People, Timetable, Floor, Plan, Sides, Exercises, Gym, Reports };

// Drawn, not loaded: plain shapes in the window's ink.
[[nodiscard]] QIcon railIcon(RailIcon icon, const QColor& ink);

} // namespace levelbar::ui
