// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "storage/exchange/import_rows.h"

#include "core/base/utf8.h"

#include <algorithm>

namespace levelbar::storage {

std::string text(const ImportFault& fault)
{
    std::string result = oneLine(fault.file) + ":";
    if (fault.line > 0) {
        result += std::to_string(fault.line) + ":";
    }
    if (!fault.column.empty()) {
        result += " column '" + fault.column + "':";
    }
    return result + " " + sentence(fault.fault);
}

Result<bool> parseYesNo(std::string_view text)
{
    if (text == "yes" || text == "no") {
        return text == "yes";
    }
    return refuse(FaultCode::NotOneOf, {excerpt(text), "yes, no"});
}

void ImportFile::read(std::span<const std::string_view> known,
                      std::span<const std::string_view> needed,
                      const std::function<void()>& visit)
{
    m_known = known;
    m_places.assign(known.size(), std::nullopt);
    readCsv(m_source.bytes,
            {[&](const CsvHeader& header) { return takeHeader(header, needed); },
             [&](int line, std::span<const std::string> cells) {
                 m_line = line;
                 m_cells = cells;
                 visit();
             },
             [&](int line, const Fault& fault) {
                 m_line = line;
                 const bool isEmptyFile = fault.code == FaultCode::Empty;
                 refuse(std::string_view(), isEmptyFile ? Fault{FaultCode::NoHeader, {}} : fault);
             }});
}

bool ImportFile::takeHeader(const CsvHeader& header, std::span<const std::string_view> needed)
{
    m_line = 1;
    m_allowsDecimalComma = header.allowsDecimalComma();
    for (std::size_t i = 0; i < header.columns.size(); ++i) {
        const std::string& column = header.columns[i];
        const auto name = std::find(m_known.begin(), m_known.end(), column);
        if (name == m_known.end()) {
            m_report.passedOver.push_back(oneLine(m_source.name) + ":1: column '" +
                                          excerpt(column) + "' is not known and was passed over");
            continue;
        }
        std::optional<std::size_t>& place =
            m_places[static_cast<std::size_t>(name - m_known.begin())];
        if (place) {
            refuse(std::string_view(), {FaultCode::RepeatedColumn, {column}});
        } else {
            place = i;
        }
    }
    for (const std::string_view column : needed) {
        if (!hasColumn(column)) {
            refuse(std::string_view(), {FaultCode::MissingColumn, {std::string(column)}});
        }
    }
    return m_faults == 0;
}

std::string_view ImportFile::cell(std::size_t column) const
{
    const std::optional<std::size_t>& place = m_places[column];
    return place ? std::string_view(m_cells[*place]) : std::string_view();
}

std::string_view ImportFile::cell(std::string_view column) const
{
    const auto name = std::find(m_known.begin(), m_known.end(), column);
    return cell(static_cast<std::size_t>(name - m_known.begin()));
}

bool ImportFile::hasColumn(std::string_view column) const
{
    const auto name = std::find(m_known.begin(), m_known.end(), column);
    return m_places[static_cast<std::size_t>(name - m_known.begin())].has_value();
}

std::string_view ImportFile::withPoint(std::string_view text)
{
    if (std::count(text.begin(), text.end(), ',') != 1 ||
        text.find('.') != std::string_view::npos) {
        return text;
    }
    m_number = text;
    std::replace(m_number.begin(), m_number.end(), ',', '.');
    return m_number;
}

void ImportFile::refuse(std::string_view column, Fault fault)
{
    ++m_faults;
    m_report.faults.push_back({m_source.name, m_line, std::string(column), std::move(fault)});
}

} // namespace levelbar::storage
