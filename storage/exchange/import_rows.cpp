// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "storage/exchange/import_rows.h"

#include <algorithm>

namespace levelbar::storage {

std::string text(const ImportFault& fault)
{
    std::string result = fault.file + ":";
    if (fault.line > 0) {
        result += std::to_string(fault.line) + ":";
    }
    if (!fault.column.empty()) {
        result += " column '" + fault.column + "':";
    }
    return result + " " + sentence(fault.fault);
}

void ImportFile::read(std::span<const std::string_view> known,
                      std::span<const std::string_view> needed,
                      const std::function<void()>& visit)
{
    readCsv(m_source.bytes,
            {[&](const CsvHeader& header) { return takeHeader(header, known, needed); },
             [&](int line, std::span<const std::string> cells) {
                 m_line = line;
                 m_cells = cells;
                 visit();
             },
             [&](int line, const Fault& fault) {
                 m_line = line;
                 const bool isEmptyFile = fault.code == FaultCode::Empty;
                 refuse({}, isEmptyFile ? Fault{FaultCode::NoHeader, {}} : fault);
             }});
}

bool ImportFile::takeHeader(const CsvHeader& header,
                            std::span<const std::string_view> known,
                            std::span<const std::string_view> needed)
{
    m_line = 1;
    m_allowsDecimalComma = header.allowsDecimalComma();
    for (std::size_t i = 0; i < header.columns.size(); ++i) {
        const std::string& column = header.columns[i];
        if (std::find(known.begin(), known.end(), column) == known.end()) {
            m_report.passedOver.push_back(m_source.name + ":1: column '" + excerpt(column) +
                                          "' is not known and was passed over");
        } else if (!m_columns.emplace(column, i).second) {
            refuse({}, {FaultCode::RepeatedColumn, {column}});
        }
    }
    for (const std::string_view column : needed) {
        if (!hasColumn(column)) {
            refuse({}, {FaultCode::MissingColumn, {std::string(column)}});
        }
    }
    return m_faults == 0;
}

bool ImportFile::hasColumn(std::string_view column) const
{
    return m_columns.find(column) != m_columns.end();
}

std::string_view ImportFile::cell(std::string_view column) const
{
    const auto found = m_columns.find(column);
    return found == m_columns.end() ? std::string_view() : std::string_view(m_cells[found->second]);
}

std::string ImportFile::numberCell(std::string_view column) const
{
    std::string text(cell(column));
    if (m_allowsDecimalComma && std::count(text.begin(), text.end(), ',') == 1 &&
        text.find('.') == std::string::npos) {
        std::replace(text.begin(), text.end(), ',', '.');
    }
    return text;
}

void ImportFile::refuse(std::string_view column, Fault fault)
{
    ++m_faults;
    m_report.faults.push_back({m_source.name, m_line, std::string(column), std::move(fault)});
}

} // namespace levelbar::storage
