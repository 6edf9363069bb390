// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/base/day.h"
#include "core/base/mass.h"

#include <SQLiteCpp/SQLiteCpp.h>

#include <cstdint>
#include <optional>
#include <string>

// How columns become core's values again; inside storage only.
namespace levelbar::storage {

// Reads columns one after the other.
class Columns {
public:
    explicit Columns(SQLite::Statement& statement, int first = 0)
        : m_statement(statement)
        , m_place(first)
    {
    }

    std::int64_t number() { return m_statement.getColumn(m_place++).getInt64(); }

    int whole() { return m_statement.getColumn(m_place++).getInt(); }

    bool flag() { return whole() != 0; }

    std::string text() { return m_statement.getColumn(m_place++).getString(); }

    Day day() { return Day{whole()}; }

    template <typename T> T word() { return static_cast<T>(whole()); }

    template <typename T> T id() { return T{number()}; }

    std::optional<int> maybeWhole()
    {
        const SQLite::Column column = m_statement.getColumn(m_place++);
        return column.isNull() ? std::nullopt : std::optional(column.getInt());
    }

    std::optional<double> maybeReal()
    {
        const SQLite::Column column = m_statement.getColumn(m_place++);
        return column.isNull() ? std::nullopt : std::optional(column.getDouble());
    }

    std::optional<bool> maybeFlag()
    {
        const auto value = maybeWhole();
        return value ? std::optional(*value != 0) : std::nullopt;
    }

    std::optional<Day> maybeDay()
    {
        const auto value = maybeWhole();
        return value ? std::optional(Day{*value}) : std::nullopt;
    }

    template <typename T> std::optional<T> maybeWord()
    {
        const auto value = maybeWhole();
        return value ? std::optional(static_cast<T>(*value)) : std::nullopt;
    }

    template <typename T> std::optional<T> maybeId()
    {
        const SQLite::Column column = m_statement.getColumn(m_place++);
        return column.isNull() ? std::nullopt : std::optional(T{column.getInt64()});
    }

    std::optional<Moment> maybeMoment()
    {
        const SQLite::Column column = m_statement.getColumn(m_place++);
        return column.isNull() ? std::nullopt : std::optional(Moment{column.getInt64()});
    }

    Mass mass()
    {
        const std::int64_t thousandths = number();
        return Mass::ofThousandths(thousandths, word<MassUnit>());
    }

private:
    SQLite::Statement& m_statement;
    int m_place;
};

} // namespace levelbar::storage
