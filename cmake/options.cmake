# SPDX-FileCopyrightText: 2026 The Levelbar developers
# SPDX-License-Identifier: GPL-3.0-or-later
# Flags that every target of ours takes; nothing is handed on to those who link us.
add_library(levelbar_options INTERFACE)
add_library(levelbar::options ALIAS levelbar_options)

target_compile_options(levelbar_options INTERFACE
    -Wall -Wextra -Wpedantic -Wshadow -Wconversion -Wnon-virtual-dtor -Woverloaded-virtual
    -Wold-style-cast -Wnull-dereference)
if(CMAKE_CXX_COMPILER_ID STREQUAL "GNU")
    # -Wrestrict reports std::string's own operator+ (GCC bug 105651).
    target_compile_options(levelbar_options INTERFACE -Wduplicated-cond -Wlogical-op -Wno-restrict)
endif()
if(LEVELBAR_WERROR)
    target_compile_options(levelbar_options INTERFACE -Werror)
endif()
# __FILE__ and debug info carry paths inside the tree, never the builder's own.
target_compile_options(levelbar_options INTERFACE "-ffile-prefix-map=${CMAKE_SOURCE_DIR}/=")

if(LEVELBAR_SANITIZE)
    target_compile_options(levelbar_options INTERFACE
        -O0 -fsanitize=address,undefined -fno-sanitize-recover=all -fno-omit-frame-pointer)
    target_link_options(levelbar_options INTERFACE -fsanitize=address,undefined)
    # -Wnull-dereference reports the sanitizer's own branches.
    target_compile_options(levelbar_options INTERFACE -Wno-null-dereference)
endif()
if(LEVELBAR_COVERAGE)
    target_compile_options(levelbar_options INTERFACE --coverage -O0)
    target_link_options(levelbar_options INTERFACE --coverage)
endif()
