// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace levelbar::cli {

// A plain table: columns aligned by what a terminal shows, not by bytes.
class Table {
public:
    enum class Align { Left, Right };

    struct Column {
        std::string title;
        Align align = Align::Left;
        std::size_t widest = 40; // longer cells are cut with an ellipsis
    };

    explicit Table(std::vector<Column> columns);

    void add(std::vector<std::string> cells); // as many as there are columns
    [[nodiscard]] std::string text() const;

    [[nodiscard]] bool isEmpty() const { return m_rows.empty(); }

private:
    std::vector<Column> m_columns;
    std::vector<std::vector<std::string>> m_rows;
};

// How wide a printed page may be.
inline constexpr std::size_t kPageWidth = 100;

// Breaks a sentence between words so that it fits the page; later lines are indented by two more.
[[nodiscard]] std::string wrapped(std::string_view text, std::size_t indent);

// Columns that a terminal takes for UTF-8 text: wide East Asian characters and emoji take two,
// combining marks none.
[[nodiscard]] std::size_t shownWidth(std::string_view text);

// The text cut to a width, with an ellipsis when something was cut.
[[nodiscard]] std::string cutTo(std::string_view text, std::size_t width);

} // namespace levelbar::cli
