// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/base/day.h"
#include "core/base/id.h"

#include <SQLiteCpp/SQLiteCpp.h>

#include <array>
#include <cstdint>
#include <optional>
#include <string>
#include <type_traits>

// How core's values become columns; inside storage only.
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

    // For statements of many columns that are run many times: everything is NULL at first, and
    // empty optionals cost nothing.
    static Binder onCleared(SQLite::Statement& statement)
    {
        statement.clearBindings();
        Binder binder(statement);
        binder.m_isCleared = true;
        return binder;
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
        } else if (!m_isCleared) {
            m_statement.bind(m_place);
        }
        return *this;
    }

    // Text that outlives the next step of the statement, without a copy.
    Binder& addLasting(const std::string& value)
    {
        m_statement.bindNoCopy(++m_place, value);
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
    bool m_isCleared = false;
};

} // namespace levelbar::storage
