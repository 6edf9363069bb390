// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/base/fault.h"

#include <functional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace levelbar::storage {

// The longest record, in bytes: longer ones are refused, so that no file fills the memory.
inline constexpr std::size_t kLongestRecord = 1U << 20U;

struct CsvHeader {
    std::vector<std::string> columns;
    char separator = ',';

    // With ; or tab, numbers may carry a decimal comma.
    [[nodiscard]] bool allowsDecimalComma() const { return separator != ','; }
};

// Who takes what the reader finds. `line`: where the record starts, from 1.
struct CsvHandlers {
    // False: the header is of no use, stop.
    std::function<bool(const CsvHeader& header)> header;
    std::function<void(int line, std::span<const std::string> cells)> record;
    std::function<void(int line, const Fault& fault)> fault;
};

// Reads RFC 4180 text: UTF-8 with or without a byte-order mark; separator , ; or tab, found from
// the header; LF, CRLF or CR. Blanks around an unquoted cell are dropped. Missing cells at the
// end of a record are empty; more cells than the header are a fault. A record with NUL or other
// broken text is a fault and passed over; a broken quote is a fault and ends the reading.
void readCsv(std::string_view bytes, const CsvHandlers& handlers);

} // namespace levelbar::storage
