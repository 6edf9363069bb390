// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "storage/member_store.h"

#include "storage/random_uid.h"
#include "storage/row_binder.h"
#include "storage/row_columns.h"
#include "storage/sqlite_errors.h"

namespace levelbar::storage {

namespace {

constexpr const char* kSelectMember = R"sql(
SELECT id, code, name, sex, birth_day, stature_tenth_mm, intake_mass, intake_mass_unit, dominant_side,
       experience, goal, organisation, note, is_archived
FROM member
)sql";

Member read(SQLite::Statement& row)
{
    Columns columns(row);
    Member member;
    member.id = columns.id<MemberId>();
    member.code = columns.text();
    member.name = columns.text();
    member.sex = columns.maybeWord<Sex>();
    member.birthDate = columns.maybeDay();
    member.statureTenthMillimetres = columns.maybeWhole();
    const auto mass = columns.maybeWhole();
    const auto unit = columns.maybeWord<MassUnit>();
    if (mass && unit) {
        member.intakeMass = Mass::ofThousandths(*mass, *unit);
    }
    member.dominantSide = columns.maybeWord<Side>();
    member.experience = columns.maybeWord<Experience>();
    member.goal = columns.maybeWord<Goal>();
    member.group = columns.text();
    member.note = columns.text();
    member.isArchived = columns.flag();
    return member;
}

// The columns from `code` on, in the order of the statements below.
void bindFields(Binder& binder, const Member& member)
{
    binder.add(member.code)
        .add(member.name)
        .add(member.sex)
        .add(member.birthDate)
        .add(member.statureTenthMillimetres)
        .add(member.intakeMass ? std::optional(member.intakeMass->thousandths()) : std::nullopt)
        .add(member.intakeMass ? std::optional(member.intakeMass->unit()) : std::nullopt)
        .add(member.dominantSide)
        .add(member.experience)
        .add(member.goal)
        .add(member.group)
        .add(member.note)
        .add(member.isArchived);
}

std::optional<Member> one(SQLite::Statement& select)
{
    return select.executeStep() ? std::optional(read(select)) : std::nullopt;
}

} // namespace

std::vector<Member> MemberStore::all(bool withArchived) const
{
    return translateErrors(m_logbook.path(), [&] {
        SQLite::Statement select(m_logbook.database(),
                                 std::string(kSelectMember) +
                                     " WHERE is_archived = 0 OR ? ORDER BY code");
        select.bind(1, withArchived ? 1 : 0);
        std::vector<Member> members;
        while (select.executeStep()) {
            members.push_back(read(select));
        }
        return members;
    });
}

std::optional<Member> MemberStore::find(std::string_view code) const
{
    return translateErrors(m_logbook.path(), [&] {
        SQLite::Statement select(m_logbook.database(),
                                 std::string(kSelectMember) + " WHERE code = ?");
        select.bind(1, std::string(code));
        return one(select);
    });
}

std::optional<Member> MemberStore::byId(MemberId id) const
{
    return translateErrors(m_logbook.path(), [&] {
        SQLite::Statement select(m_logbook.database(),
                                 std::string(kSelectMember) + " WHERE id = ?");
        select.bind(1, id.value);
        return one(select);
    });
}

MemberId MemberStore::add(WriteScope& scope, const Member& member)
{
    return translateErrors(scope.logbook().path(), [&] {
        SQLite::Database& database = scope.logbook().database();
        SQLite::Statement insert(database, R"sql(
INSERT INTO member (uid, code, name, sex, birth_day, stature_tenth_mm, intake_mass, intake_mass_unit,
                    dominant_side, experience, goal, organisation, note, is_archived, import)
VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)
)sql");
        Binder binder(insert);
        binder.addBytes(randomUid());
        bindFields(binder, member);
        binder.add(scope.import());
        insert.exec();
        return MemberId{database.getLastInsertRowid()};
    });
}

void MemberStore::update(WriteScope& scope, const Member& member)
{
    const auto stored = MemberStore(scope.logbook()).byId(member.id);
    if (!stored) {
        throw StoreError(StoreErrorKind::Constraint, "There is no such person to change.");
    }
    if (*stored == member) {
        return;
    }
    translateErrors(scope.logbook().path(), [&] {
        SQLite::Statement change(scope.logbook().database(), R"sql(
UPDATE member SET code = ?, name = ?, sex = ?, birth_day = ?, stature_tenth_mm = ?, intake_mass = ?,
                  intake_mass_unit = ?, dominant_side = ?, experience = ?, goal = ?,
                  organisation = ?, note = ?, is_archived = ?, import = NULL
WHERE id = ?
)sql");
        Binder binder(change);
        bindFields(binder, member);
        binder.add(member.id);
        change.exec();
    });
}

} // namespace levelbar::storage
