# SPDX-FileCopyrightText: 2026 The Levelbar developers
# SPDX-License-Identifier: GPL-3.0-or-later
# The class floor's tests; part of the ui test program.
target_sources(levelbar_ui_tests PRIVATE
    class_floor_closing_test.cpp
    class_floor_fixture.h
    class_floor_log_test.cpp
    class_floor_opening_test.cpp
    class_floor_pad_test.cpp
    class_floor_plan_test.cpp
    class_floor_sides_test.cpp
    class_floor_targets_test.cpp
    wall_window_test.cpp
    ../support/class_hour.cpp)
