// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/base/day.h"
#include "core/base/id.h"
#include "core/base/mass.h"
#include "core/base/side.h"

#include <SQLiteCpp/SQLiteCpp.h>

#include <array>
#include <cstdint>
#include <optional>
#include <random>
#include <string>

// How core's values become columns and come back; inside storage only.
namespace levelbar::storage {

template <typename T> std::int64_t columnOf(Id<T> id)
{
    return id.value;
}

inline std::int64_t columnOf(Day day)
{
    return day.sinceEpoch;
}

inline std::int64_t columnOf(Moment moment)
{
    return moment.milliseconds;
}

inline std::int64_t columnOf(int value)
{
    return value;
}

inline std::int64_t columnOf(std::int64_t value)
{
    return value;
}

inline std::int64_t columnOf(bool value)
{
    return value ? 1 : 0;
}

template <typename T>

requires std::is_enum_v<T> std::int64_t columnOf(T value)
{
    return static_cast<std::int64_t>(value);
}

// Binds values one after the other, empty optionals as NULL.
class Binder {
public:
    explicit Binder(SQLite::Statement& statement)
        : m_statement(statement)
    {
    }

    template <typename T> Binder& add(const T& value)
    {
        m_statement.bind(++m_place, columnOf(value));
        return *this;
    }

    template <typename T> Binder& add(const std::optional<T>& value)
    {
        ++m_place;
        if (value) {
            m_statement.bind(m_place, columnOf(*value));
        } else {
            m_statement.bind(m_place);
        }
        return *this;
    }

    Binder& add(const std::string& value)
    {
        m_statement.bind(++m_place, value);
        return *this;
    }

    Binder& addReal(const std::optional<double>& value)
    {
        ++m_place;
        if (value) {
            m_statement.bind(m_place, *value);
        } else {
            m_statement.bind(m_place);
        }
        return *this;
    }

    Binder& addBytes(const std::array<unsigned char, 16>& bytes)
    {
        m_statement.bind(++m_place, bytes.data(), static_cast<int>(bytes.size()));
        return *this;
    }

private:
    SQLite::Statement& m_statement;
    int m_place = 0;
};

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

// A random 128-bit id, so that rows of two logbooks can be told apart. Ids are not secrets.
inline std::array<unsigned char, 16> randomUid()
{
    thread_local std::random_device source;
    std::array<unsigned char, 16> bytes{};
    for (unsigned char& byte : bytes) {
        byte = static_cast<unsigned char>(source() & 0xFFU);
    }
    return bytes;
}

} // namespace levelbar::storage
