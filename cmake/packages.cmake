# SPDX-FileCopyrightText: 2026 The Levelbar developers
# SPDX-License-Identifier: GPL-3.0-or-later
# Every library from outside, found once for the whole tree (Debian 12 package names:
# app/install_packages).
find_package(tl-expected REQUIRED)
find_package(fmt REQUIRED)
find_package(Boost 1.74 REQUIRED)
find_package(SQLiteCpp REQUIRED)
find_package(SQLite3 REQUIRED)
find_package(ICU REQUIRED COMPONENTS uc)
find_library(CSV_LIBRARY csv REQUIRED)
find_package(Qt6 6.4 REQUIRED COMPONENTS Widgets Charts DBus PrintSupport Svg)
find_package(CLI11 REQUIRED)
find_package(nlohmann_json REQUIRED)
if(LEVELBAR_TESTS)
    find_package(GTest REQUIRED)
    find_package(Qt6 6.4 REQUIRED COMPONENTS Test)
endif()
if(LEVELBAR_BENCH)
    find_package(benchmark REQUIRED)
endif()
