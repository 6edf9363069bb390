# SPDX-FileCopyrightText: 2026 The Levelbar developers
# SPDX-License-Identifier: GPL-3.0-or-later
# Flags that every target of ours takes; nothing is handed on to those who link us.
add_library(levelbar_options INTERFACE)
add_library(levelbar::options ALIAS levelbar_options)

# Not -Wnull-dereference: GCC 12 finds it in its own vectors and heaps once they are inlined;
# clang-tidy's analyzer and the sanitizers look for the real thing.
target_compile_options(levelbar_options INTERFACE
    -Wall -Wextra -Wpedantic -Wshadow -Wconversion -Wnon-virtual-dtor -Woverloaded-virtual
    -Wold-style-cast)
if(CMAKE_CXX_COMPILER_ID STREQUAL "GNU")
    # -Wrestrict reports std::string's own operator+ (GCC bug 105651).
    target_compile_options(levelbar_options INTERFACE -Wduplicated-cond -Wlogical-op -Wno-restrict)
    # Classes hidden in a source (m_working) hold types of its unnamed namespace; rooms compiled
    # together make that look like a header's doing.
    target_compile_options(levelbar_options INTERFACE
        $<$<BOOL:${LEVELBAR_BY_ROOM}>:-Wno-subobject-linkage>)
    # Likewise in optimised builds: GCC 12 finds these three in its own strings and optionals once they
    # are inlined; the sanitizers and clang-tidy look for the real thing.
    target_compile_options(levelbar_options INTERFACE
        $<$<CONFIG:Release>:-Wno-stringop-overflow -Wno-maybe-uninitialized -Wno-array-bounds>)
endif()
if(LEVELBAR_WERROR)
    target_compile_options(levelbar_options INTERFACE -Werror)
endif()
# __FILE__ and debug info carry paths inside the tree, never the builder's own.
target_compile_options(levelbar_options INTERFACE "-ffile-prefix-map=${CMAKE_SOURCE_DIR}/=")

if(LEVELBAR_SANITIZE)
    target_compile_options(levelbar_options INTERFACE
        -O0 -g1 -fsanitize=address,undefined -fno-sanitize-recover=all -fno-omit-frame-pointer)
    target_link_options(levelbar_options INTERFACE -fsanitize=address,undefined)
endif()
if(LEVELBAR_COVERAGE)
    target_compile_options(levelbar_options INTERFACE --coverage -O0)
    target_link_options(levelbar_options INTERFACE --coverage)
endif()
