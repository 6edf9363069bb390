// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/member/member.h"
#include "storage/action.h"

#include <optional>
#include <string_view>
#include <vector>

namespace levelbar::storage {

// The roster.
class MemberStore {
public:
    explicit MemberStore(const Logbook& logbook)
        : m_logbook(logbook)
    {
    }

    // By code.
    [[nodiscard]] std::vector<Member> all(bool withArchived = false) const;
    [[nodiscard]] std::optional<Member> find(std::string_view code) const;
    [[nodiscard]] std::optional<Member> byId(MemberId id) const;

    // Constraint when the code is taken. Returns the new id.
    static MemberId add(WriteScope& scope, const Member& member);
    static void update(WriteScope& scope, const Member& member);

private:
    const Logbook& m_logbook;
};

} // namespace levelbar::storage
