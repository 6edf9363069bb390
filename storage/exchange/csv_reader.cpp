// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "storage/exchange/csv_reader.h"

#include "core/base/utf8.h"

#include <csv.h>

#include <algorithm>
#include <array>
#include <optional>

namespace levelbar::storage {

namespace {

constexpr std::string_view kByteOrderMark = "\xEF\xBB\xBF";

// One physical line with its ending.
std::string_view takeLine(std::string_view& rest)
{
    std::size_t end = 0;
    while (end < rest.size() && rest[end] != '\r' && rest[end] != '\n') {
        ++end;
    }
    if (end < rest.size()) {
        const bool isPair = rest[end] == '\r' && end + 1 < rest.size() && rest[end + 1] == '\n';
        end += isPair ? 2 : 1;
    }
    const std::string_view line = rest.substr(0, end);
    rest.remove_prefix(end);
    return line;
}

// Found from the first line that is not empty.
char separatorOf(std::string_view text)
{
    text.remove_prefix(std::min(text.find_first_not_of("\r\n"), text.size()));
    const std::string_view header = text.substr(0, text.find_first_of("\r\n"));
    std::array<int, 3> counts{};
    constexpr std::array kSeparators = {',', ';', '\t'};
    bool isQuoted = false;
    for (const char c : header) {
        isQuoted = c == '"' ? !isQuoted : isQuoted;
        for (std::size_t i = 0; i < kSeparators.size() && !isQuoted; ++i) {
            counts.at(i) += c == kSeparators.at(i) ? 1 : 0;
        }
    }
    const auto most = std::max_element(counts.begin(), counts.end()) - counts.begin();
    return kSeparators.at(static_cast<std::size_t>(most));
}

// libcsv behind a record at a time.
class Parser {
public:
    explicit Parser(char separator)
    {
        // Empty lines are passed over by libcsv itself; strict: a quote inside an unquoted cell
        // or one that is never closed is an error.
        csv_init(&m_parser, CSV_STRICT | CSV_STRICT_FINI);
        csv_set_delim(&m_parser, static_cast<unsigned char>(separator));
        if (separator == '\t') {
            csv_set_space_func(&m_parser, [](unsigned char c) { return c == ' ' ? 1 : 0; });
        }
    }

    Parser(const Parser&) = delete;
    Parser& operator=(const Parser&) = delete;

    ~Parser() { csv_free(&m_parser); }

    // False on a broken quote.
    bool feed(std::string_view line)
    {
        return csv_parse(&m_parser, line.data(), line.size(), &Parser::cell, &Parser::end, this) ==
               line.size();
    }

    bool finish() { return csv_fini(&m_parser, &Parser::cell, &Parser::end, this) == 0; }

    [[nodiscard]] bool hasRecord() const { return m_hasRecord; }

    [[nodiscard]] bool isBetweenRecords() const { return m_parser.pstate == 0 && m_count == 0; }

    std::span<const std::string> takeRecord()
    {
        m_hasRecord = false;
        const std::size_t count = m_count;
        m_count = 0;
        return {m_cells.data(), count};
    }

private:
    static void cell(void* text, std::size_t size, void* self)
    {
        auto& parser = *static_cast<Parser*>(self);
        if (parser.m_count == parser.m_cells.size()) {
            parser.m_cells.emplace_back();
        }
        parser.m_cells[parser.m_count++].assign(static_cast<const char*>(text), size);
    }

    static void end(int /*character*/, void* self)
    {
        static_cast<Parser*>(self)->m_hasRecord = true;
    }

    csv_parser m_parser{};
    std::vector<std::string> m_cells; // reused, so that a record costs no allocation
    std::size_t m_count = 0;
    bool m_hasRecord = false;
};

// What is wrong with the bytes themselves.
std::optional<Fault> textFault(std::string_view line)
{
    if (line.size() > kLongestRecord) {
        return Fault{FaultCode::LineTooLong, {std::to_string(kLongestRecord)}};
    }
    if (!codePoints(line)) { // first: text in UTF-16 is full of NUL bytes
        return Fault{FaultCode::NotUtf8, {}};
    }
    if (line.find('\0') != std::string_view::npos) {
        return Fault{FaultCode::ControlCharacter, {}};
    }
    return std::nullopt;
}

class Reading {
public:
    Reading(std::string_view bytes, const CsvHandlers& handlers)
        : m_rest(bytes.substr(0, kByteOrderMark.size()) == kByteOrderMark
                     ? bytes.substr(kByteOrderMark.size())
                     : bytes)
        , m_handlers(handlers)
        , m_parser(separatorOf(m_rest))
    {
        m_header.separator = separatorOf(m_rest);
    }

    void run()
    {
        bool goesOn = true;
        while (goesOn && !m_rest.empty()) {
            if (m_parser.isBetweenRecords()) {
                m_start = m_line;
                m_size = 0;
            }
            const std::string_view line = takeLine(m_rest);
            ++m_line;
            goesOn = takeIn(line);
        }
        if (goesOn) {
            if (!m_parser.finish()) {
                m_handlers.fault(m_start, {FaultCode::BrokenQuote, {}});
            } else if (m_parser.hasRecord()) {
                deliver();
            }
        }
        if (!m_hasHeader && !m_hasFault) {
            m_handlers.fault(1, {FaultCode::Empty, {}});
        }
    }

private:
    bool takeIn(std::string_view line)
    {
        m_size += line.size();
        const auto fault = textFault(line);
        const bool isLong = m_size > kLongestRecord;
        if (fault || isLong) {
            m_hasFault = true;
            m_handlers.fault(
                m_start,
                fault.value_or(Fault{FaultCode::LineTooLong, {std::to_string(kLongestRecord)}}));
            // Inside a quoted cell nobody knows where the next record begins; without a header
            // nobody knows what it means.
            return m_parser.isBetweenRecords() && m_hasHeader;
        }
        if (!m_parser.feed(line)) {
            m_hasFault = true;
            m_handlers.fault(m_start, {FaultCode::BrokenQuote, {}});
            return false;
        }
        return !m_parser.hasRecord() || deliver();
    }

    // False: the header was refused.
    bool deliver()
    {
        const auto cells = m_parser.takeRecord();
        if (!m_hasHeader) {
            m_hasHeader = true;
            m_header.columns.assign(cells.begin(), cells.end());
            return m_handlers.header(m_header);
        }
        const std::size_t width = m_header.columns.size();
        if (cells.size() > width) {
            m_handlers.fault(
                m_start,
                {FaultCode::TooManyCells, {std::to_string(cells.size()), std::to_string(width)}});
            return true;
        }
        if (cells.size() == width) {
            m_handlers.record(m_start, cells);
            return true;
        }
        m_padded.assign(cells.begin(), cells.end());
        m_padded.resize(width);
        m_handlers.record(m_start, m_padded);
        return true;
    }

    std::string_view m_rest;
    const CsvHandlers& m_handlers;
    Parser m_parser;
    CsvHeader m_header;
    std::vector<std::string> m_padded;
    int m_line = 1;  // of the next physical line
    int m_start = 1; // of the record being read
    std::size_t m_size = 0;
    bool m_hasHeader = false;
    bool m_hasFault = false;
};

} // namespace

void readCsv(std::string_view bytes, const CsvHandlers& handlers)
{
    Reading(bytes, handlers).run();
}

} // namespace levelbar::storage
