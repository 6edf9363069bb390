// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "storage/scale_store.h"

#include "storage/row_binder.h"
#include "storage/row_columns.h"
#include "storage/sqlite_errors.h"

namespace levelbar::storage {

std::vector<DatedReading> ScaleStore::ofMember(MemberId member) const
{
    return translateErrors(m_logbook.path(), [&] {
        SQLite::Statement select(m_logbook.database(),
                                 "SELECT day, hands_tenth_mm, locked_out, locked_out_unit, "
                                 "at_chest, at_chest_unit FROM scale_reading WHERE member = ? "
                                 "ORDER BY day, hands_tenth_mm");
        Binder(select).add(member);
        std::vector<DatedReading> readings;
        while (select.executeStep()) {
            Columns columns(select);
            DatedReading dated;
            dated.day = columns.day();
            const Length hands{columns.whole()};
            dated.reading.pushUp.kind =
                hands == Length{} ? PushUpKind::Floor : PushUpKind::HandsRaised;
            dated.reading.pushUp.height = hands;
            dated.reading.lockedOut = columns.mass();
            dated.reading.atChest = columns.mass();
            readings.push_back(dated);
        }
        return readings;
    });
}

void ScaleStore::put(WriteScope& scope, MemberId member, const DatedReading& dated)
{
    translateErrors(scope.logbook().path(), [&] {
        SQLite::Statement upsert(scope.logbook().database(), R"sql(
INSERT INTO scale_reading VALUES (?, ?, ?, ?, ?, ?, ?)
ON CONFLICT DO UPDATE SET
    locked_out = excluded.locked_out, locked_out_unit = excluded.locked_out_unit,
    at_chest = excluded.at_chest, at_chest_unit = excluded.at_chest_unit
)sql");
        const ScaleReading& reading = dated.reading;
        Binder(upsert)
            .add(member)
            .add(dated.day)
            .add(reading.pushUp.height.tenthMillimetres)
            .add(reading.lockedOut.thousandths())
            .add(reading.lockedOut.unit())
            .add(reading.atChest.thousandths())
            .add(reading.atChest.unit());
        upsert.exec();
    });
}

void ScaleStore::remove(WriteScope& scope, MemberId member, Day day, Length hands)
{
    translateErrors(scope.logbook().path(), [&] {
        SQLite::Statement remove(
            scope.logbook().database(),
            "DELETE FROM scale_reading WHERE member = ? AND day = ? AND hands_tenth_mm = ?");
        Binder(remove).add(member).add(day).add(hands.tenthMillimetres);
        remove.exec();
    });
}

} // namespace levelbar::storage
