// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/table.h"

#include "core/base/utf8.h"

#include <algorithm>
#include <cassert>
#include <unicode/uchar.h>

namespace levelbar::cli {

namespace {

std::size_t widthOf(UChar32 character)
{
    const int category = u_charType(character);
    if (category == U_NON_SPACING_MARK || category == U_ENCLOSING_MARK ||
        category == U_FORMAT_CHAR) {
        return 0;
    }
    const int width = u_getIntPropertyValue(character, UCHAR_EAST_ASIAN_WIDTH);
    return width == U_EA_WIDE || width == U_EA_FULLWIDTH ? 2 : 1;
}

// Calls visit(bytes so far, width of the character) for each character.
template <typename Visit> void forEachCharacter(std::string_view text, const Visit& visit)
{
    std::string_view rest = text;
    while (!rest.empty()) {
        const auto character = takeCodePoint(rest);
        const std::size_t width = character ? widthOf(static_cast<UChar32>(*character)) : 1;
        visit(text.size() - rest.size(), width);
    }
}

std::string padded(const std::string& text, std::size_t width, Table::Align align)
{
    const std::size_t shown = shownWidth(text);
    const std::string blanks(width > shown ? width - shown : 0, ' ');
    return align == Table::Align::Right ? blanks + text : text + blanks;
}

} // namespace

std::size_t shownWidth(std::string_view text)
{
    std::size_t width = 0;
    forEachCharacter(text, [&](std::size_t, std::size_t w) { width += w; });
    return width;
}

std::string cutTo(std::string_view text, std::size_t width)
{
    if (shownWidth(text) <= width) {
        return std::string(text);
    }
    std::size_t used = 0;
    std::size_t end = 0;
    forEachCharacter(text, [&](std::size_t at, std::size_t w) {
        used += w;
        if (used < width) {
            end = at;
        }
    });
    return std::string(text.substr(0, end)) + "…";
}

Table::Table(std::vector<Column> columns)
    : m_columns(std::move(columns))
{
}

void Table::add(std::vector<std::string> cells)
{
    assert(cells.size() == m_columns.size());
    for (std::size_t i = 0; i < cells.size(); ++i) {
        cells[i] = cutTo(cells[i], m_columns[i].widest);
    }
    m_rows.push_back(std::move(cells));
}

std::string Table::text() const
{
    std::vector<std::size_t> widths;
    for (std::size_t i = 0; i < m_columns.size(); ++i) {
        std::size_t width = shownWidth(m_columns[i].title);
        for (const auto& row : m_rows) {
            width = std::max(width, shownWidth(row[i]));
        }
        widths.push_back(width);
    }
    std::string out;
    const auto line = [&](const auto& cellAt) {
        std::string row;
        for (std::size_t i = 0; i < m_columns.size(); ++i) {
            row += (i > 0 ? "  " : "") + padded(cellAt(i), widths[i], m_columns[i].align);
        }
        row.erase(row.find_last_not_of(' ') + 1);
        out += row + "\n";
    };
    line([&](std::size_t i) { return m_columns[i].title; });
    for (const auto& row : m_rows) {
        line([&](std::size_t i) { return row[i]; });
    }
    return out;
}

std::string wrapped(std::string_view text, std::size_t indent)
{
    std::string page;
    std::string line;
    const auto flush = [&] {
        page += std::string(page.empty() ? indent : indent + 2, ' ') + line + '\n';
        line.clear();
    };
    std::size_t from = 0;
    while (from < text.size()) {
        const std::size_t to = std::min(text.find(' ', from), text.size());
        const std::string word(text.substr(from, to - from));
        if (!line.empty() && indent + 2 + shownWidth(line) + 1 + shownWidth(word) > kPageWidth) {
            flush();
        }
        line += (line.empty() ? "" : " ") + word;
        from = to + 1;
    }
    flush();
    return page;
}

} // namespace levelbar::cli
