// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/base/fault.h"
#include "storage/exchange/csv_reader.h"
#include "storage/exchange/import.h"

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace levelbar::storage {

// "yes" or "no"; NotOneOf for anything else.
[[nodiscard]] Result<bool> parseYesNo(std::string_view text);

// One file being imported: where its columns are, and what was found wrong so far.
class ImportFile {
public:
    ImportFile(const ImportSource& source, ImportReport& report)
        : m_source(source)
        , m_report(report)
    {
    }

    // Reads the file: `needed` columns must be there, `known` ones (which must outlive this) are
    // looked at, others are reported and passed over. `visit` gets each record; use cell() inside
    // it.
    void read(std::span<const std::string_view> known,
              std::span<const std::string_view> needed,
              const std::function<void()>& visit);

    [[nodiscard]] int line() const { return m_line; }

    // Columns go by name or, where a million rows are read, by their place among the known ones.
    [[nodiscard]] bool hasColumn(std::string_view column) const;

    // The record's cell; empty when the column is not there.
    [[nodiscard]] std::string_view cell(std::string_view column) const;
    [[nodiscard]] std::string_view cell(std::size_t column) const;

    // The same with a decimal comma turned into a point, where the file may have one; good until
    // the next call.
    template <typename Column> [[nodiscard]] std::string_view numberCell(Column column)
    {
        return m_allowsDecimalComma ? withPoint(cell(column)) : cell(column);
    }

    void refuse(std::string_view column, Fault fault);

    void refuse(std::size_t column, Fault fault) { refuse(m_known[column], std::move(fault)); }

    // The value, or nothing and a fault in the report.
    template <typename T, typename Column> std::optional<T> take(Column column, Result<T> result)
    {
        if (!result) {
            refuse(column, result.error());
            return std::nullopt;
        }
        return std::move(*result);
    }

    // An empty cell gives `fallback`; otherwise what `parse` makes of the text. False and a fault
    // in the report when it makes nothing of it.
    template <typename T, typename Column, typename Parse>
    bool takeOr(Column column, T& target, T fallback, const Parse& parse)
    {
        const std::string_view text = cell(column);
        if (text.empty()) {
            target = std::move(fallback);
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
    bool takeHeader(const CsvHeader& header, std::span<const std::string_view> needed);
    [[nodiscard]] std::string_view withPoint(std::string_view text);

    const ImportSource& m_source;
    ImportReport& m_report;
    std::span<const std::string_view> m_known;
    std::vector<std::optional<std::size_t>> m_places; // of the known columns in the file
    std::span<const std::string> m_cells;
    std::string m_number; // of numberCell
    bool m_allowsDecimalComma = false;
    int m_line = 0;
    std::size_t m_faults = 0;
};

} // namespace levelbar::storage
