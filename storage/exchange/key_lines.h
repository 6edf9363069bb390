// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "storage/set_store.h"

#include <cstdint>
#include <deque>
#include <optional>
#include <vector>

namespace levelbar::storage {

// In which line of a file each set stood first. Two million sets take about 100 MB: the keys one
// after the other, and an open-addressing table of their places that is at most half full.
class KeyLines {
public:
    // The line where the key stood before; nothing when it is new, and then it is noted.
    std::optional<int> noteFirst(const SetKey& key, int line)
    {
        if (2 * (m_entries.size() + 1) > m_places.size()) {
            grow();
        }
        std::uint32_t& place = m_places[placeOf(key)];
        if (place != kFree) {
            return m_entries[place - 1].line;
        }
        m_entries.push_back({key, line});
        place = static_cast<std::uint32_t>(m_entries.size());
        return std::nullopt;
    }

private:
    struct Entry {
        SetKey key;
        int line = 0;
    };

    static constexpr std::uint32_t kFree = 0; // otherwise the entry's number, from 1
    static constexpr std::size_t kFewest = 1024;

    static std::size_t hashOf(const SetKey& key)
    {
        std::uint64_t hash = 0;
        for (const std::int64_t part : {key.member.value,
                                        key.exercise.value,
                                        static_cast<std::int64_t>(key.side),
                                        std::int64_t{key.day.sinceEpoch},
                                        std::int64_t{key.number}}) {
            // The finishing steps of MurmurHash3 (public domain), so that keys that differ in
            // few bits spread over the table.
            hash ^= static_cast<std::uint64_t>(part);
            hash *= 0xFF51AFD7ED558CCDULL;
            hash ^= hash >> 33U;
        }
        return hash;
    }

    // Where the key is, or the free place where it belongs.
    [[nodiscard]] std::size_t placeOf(const SetKey& key) const
    {
        const std::size_t mask = m_places.size() - 1;
        std::size_t at = hashOf(key) & mask;
        while (m_places[at] != kFree && m_entries[m_places[at] - 1].key != key) {
            at = (at + 1) & mask;
        }
        return at;
    }

    void grow()
    {
        m_places.assign(m_places.empty() ? kFewest : 2 * m_places.size(), kFree);
        std::uint32_t number = 0;
        for (const Entry& entry : m_entries) {
            m_places[placeOf(entry.key)] = ++number;
        }
    }

    std::deque<Entry> m_entries;         // never moved, so that growing needs no second copy
    std::vector<std::uint32_t> m_places; // a power of two
};

} // namespace levelbar::storage
