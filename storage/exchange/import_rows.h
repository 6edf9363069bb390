// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/base/fault.h"
#include "storage/exchange/csv_reader.h"
#include "storage/exchange/import.h"

#include <map>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace levelbar::storage {

// One file being imported: where its columns are, and what was found wrong so far.
class ImportFile {
public:
    ImportFile(const ImportSource& source, ImportReport& report)
        : m_source(source)
        , m_report(report)
    {
    }

    // Reads the file: `needed` columns must be there, `known` ones are looked at, others are
    // reported and passed over. `visit` gets each record; use cell() inside it.
    void read(std::span<const std::string_view> known,
              std::span<const std::string_view> needed,
              const std::function<void()>& visit);

    [[nodiscard]] int line() const { return m_line; }

    [[nodiscard]] bool hasColumn(std::string_view column) const;

    // The record's cell; empty when the column is not there.
    [[nodiscard]] std::string_view cell(std::string_view column) const;

    // The same with a decimal comma turned into a point, where the file may have one.
    [[nodiscard]] std::string numberCell(std::string_view column) const;

    void refuse(std::string_view column, Fault fault);

    // The value, or nothing and a fault in the report.
    template <typename T> std::optional<T> take(std::string_view column, Result<T> result)
    {
        if (!result) {
            refuse(column, result.error());
            return std::nullopt;
        }
        return std::move(*result);
    }

    // An empty cell gives `fallback`; otherwise what `parse` makes of the text. False and a fault
    // in the report when it makes nothing of it.
    template <typename T, typename Parse>
    bool takeOr(std::string_view column, T& target, T fallback, const Parse& parse)
    {
        const std::string_view text = cell(column);
        if (text.empty()) {
            target = fallback;
            return true;
        }
        auto result = parse(text);
        if (!result) {
            refuse(column, result.error());
            return false;
        }
        target = std::move(*result);
        return true;
    }

    // How many faults this file has so far.
    [[nodiscard]] std::size_t faults() const { return m_faults; }

private:
    bool takeHeader(const CsvHeader& header,
                    std::span<const std::string_view> known,
                    std::span<const std::string_view> needed);

    const ImportSource& m_source;
    ImportReport& m_report;
    std::map<std::string, std::size_t, std::less<>> m_columns;
    std::span<const std::string> m_cells;
    bool m_allowsDecimalComma = false;
    int m_line = 0;
    std::size_t m_faults = 0;
};

} // namespace levelbar::storage
