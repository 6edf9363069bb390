# SPDX-FileCopyrightText: 2026 The Levelbar developers
# SPDX-License-Identifier: GPL-3.0-or-later
# Run as a script: writes OUTPUT, a C++ file that holds the bytes of INPUT.
file(READ ${INPUT} hex HEX)
string(LENGTH "${hex}" hex_length)
math(EXPR size "${hex_length} / 2")
string(REGEX REPLACE "(................................)" "\\1\n" lines "${hex}")
string(REGEX REPLACE "([0-9a-f][0-9a-f])" "0x\\1," bytes "${lines}")
file(WRITE ${OUTPUT} "// Generated from a file of the source tree; do not edit.
#include \"resources/embedded.h\"

namespace levelbar::resources {

namespace {
constexpr unsigned char kBytes[] = {
${bytes}
0x00};
} // namespace

std::string_view ${FUNCTION}() {
    // Bytes of text: reading unsigned char as char is what the language allows.
    return {reinterpret_cast<const char*>(kBytes), ${size}};
}

} // namespace levelbar::resources
")
