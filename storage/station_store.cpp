// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "storage/station_store.h"

#include "core/base/number.h"
#include "core/exercise/exercise_detail.h"
#include "storage/row_binder.h"
#include "storage/row_columns.h"
#include "storage/sqlite_errors.h"

#include <initializer_list>

namespace levelbar::storage {

namespace {

std::string joinedAngles(const std::vector<int>& angles)
{
    std::vector<std::string> parts;
    for (const int angle : angles) {
        parts.push_back(std::to_string(angle));
    }
    return joinedParts(parts);
}

std::vector<int> anglesOf(const std::string& text)
{
    constexpr std::int64_t kWidest = 360;
    std::vector<int> angles;
    for (const std::string& part : partsOf(text)) {
        if (const auto angle = parseWhole(part, -kWidest, kWidest)) {
            angles.push_back(static_cast<int>(*angle));
        }
    }
    return angles;
}

std::vector<Room> readRooms(SQLite::Database& database)
{
    std::vector<Room> rooms;
    SQLite::Statement select(database, "SELECT id, name FROM room ORDER BY id");
    while (select.executeStep()) {
        Columns columns(select);
        Room room;
        room.id = columns.id<RoomId>();
        room.name = columns.text();
        rooms.push_back(std::move(room));
    }
    return rooms;
}

std::vector<Rack> readRacks(SQLite::Database& database)
{
    std::vector<Rack> racks;
    SQLite::Statement select(database,
                             "SELECT id, room, name, lowest_tenth_mm, pitch_tenth_mm, holes, count "
                             "FROM rack ORDER BY id");
    while (select.executeStep()) {
        Columns columns(select);
        Rack rack;
        rack.id = columns.id<RackId>();
        rack.room = columns.maybeId<RoomId>();
        rack.name = columns.text();
        rack.holes.lowest = {columns.whole()};
        rack.holes.pitch = {columns.whole()};
        rack.holes.count = columns.whole();
        rack.count = columns.whole();
        racks.push_back(std::move(rack));
    }
    return racks;
}

std::vector<Bench> readBenches(SQLite::Database& database)
{
    std::vector<Bench> benches;
    SQLite::Statement select(database,
                             "SELECT id, room, name, angles, count FROM bench ORDER BY id");
    while (select.executeStep()) {
        Columns columns(select);
        Bench bench;
        bench.id = columns.id<BenchId>();
        bench.room = columns.maybeId<RoomId>();
        bench.name = columns.text();
        bench.angles = anglesOf(columns.text());
        bench.count = columns.whole();
        benches.push_back(std::move(bench));
    }
    return benches;
}

// A stored one keeps its id, a new one gets the next.
template <typename T> std::optional<T> idOrNew(T id)
{
    return id.isStored() ? std::optional(id) : std::nullopt;
}

// Each statement names the id once.
void runAll(WriteScope& scope, std::int64_t id, std::initializer_list<const char*> statements)
{
    translateErrors(scope.logbook().path(), [&] {
        for (const char* sql : statements) {
            SQLite::Statement statement(scope.logbook().database(), sql);
            statement.bind(1, id);
            statement.exec();
        }
    });
}

template <typename T> T inserted(SQLite::Database& database, T id)
{
    return id.isStored() ? id : T{database.getLastInsertRowid()};
}

} // namespace

Stations StationStore::all() const
{
    return translateErrors(m_logbook.path(), [&] {
        SQLite::Database& database = m_logbook.database();
        return Stations{readRooms(database), readRacks(database), readBenches(database)};
    });
}

std::vector<GonePieces> StationStore::goneOn(Day day) const
{
    return translateErrors(m_logbook.path(), [&] {
        SQLite::Statement select(m_logbook.database(),
                                 "SELECT kind, name, mass, mass_unit, station, count FROM "
                                 "gone_piece WHERE day = ? ORDER BY kind, mass, station");
        Binder(select).add(day);
        std::vector<GonePieces> gone;
        while (select.executeStep()) {
            Columns columns(select);
            GonePieces pieces;
            pieces.key.type = columns.word<PieceType>();
            pieces.key.name = columns.text();
            pieces.key.mass = columns.mass();
            pieces.key.station = columns.number();
            pieces.count = columns.whole();
            gone.push_back(std::move(pieces));
        }
        return gone;
    });
}

RoomId StationStore::put(WriteScope& scope, const Room& room)
{
    return translateErrors(scope.logbook().path(), [&] {
        SQLite::Statement upsert(scope.logbook().database(),
                                 "INSERT INTO room VALUES (?, ?) ON CONFLICT (id) DO UPDATE SET "
                                 "name = excluded.name");
        Binder(upsert).add(idOrNew(room.id)).add(room.name);
        upsert.exec();
        return inserted(scope.logbook().database(), room.id);
    });
}

RackId StationStore::put(WriteScope& scope, const Rack& rack)
{
    return translateErrors(scope.logbook().path(), [&] {
        SQLite::Statement upsert(scope.logbook().database(), R"sql(
INSERT INTO rack (id, room, name, lowest_tenth_mm, pitch_tenth_mm, holes, count)
VALUES (?, ?, ?, ?, ?, ?, ?)
ON CONFLICT (id) DO UPDATE SET
    room = excluded.room, name = excluded.name, lowest_tenth_mm = excluded.lowest_tenth_mm,
    pitch_tenth_mm = excluded.pitch_tenth_mm, holes = excluded.holes, count = excluded.count
)sql");
        Binder(upsert)
            .add(idOrNew(rack.id))
            .add(rack.room)
            .add(rack.name)
            .add(rack.holes.lowest.tenthMillimetres)
            .add(rack.holes.pitch.tenthMillimetres)
            .add(rack.holes.count)
            .add(rack.count);
        upsert.exec();
        return inserted(scope.logbook().database(), rack.id);
    });
}

BenchId StationStore::put(WriteScope& scope, const Bench& bench)
{
    return translateErrors(scope.logbook().path(), [&] {
        SQLite::Statement upsert(scope.logbook().database(), R"sql(
INSERT INTO bench (id, room, name, angles, count) VALUES (?, ?, ?, ?, ?)
ON CONFLICT (id) DO UPDATE SET
    room = excluded.room, name = excluded.name, angles = excluded.angles, count = excluded.count
)sql");
        Binder(upsert)
            .add(idOrNew(bench.id))
            .add(bench.room)
            .add(bench.name)
            .add(joinedAngles(bench.angles))
            .add(bench.count);
        upsert.exec();
        return inserted(scope.logbook().database(), bench.id);
    });
}

void StationStore::remove(WriteScope& scope, RoomId room)
{
    runAll(scope,
           room.value,
           {"UPDATE rack SET room = NULL WHERE room = ?",
            "UPDATE bench SET room = NULL WHERE room = ?",
            "DELETE FROM room WHERE id = ?"});
}

void StationStore::remove(WriteScope& scope, RackId rack)
{
    runAll(scope,
           rack.value,
           {"UPDATE setup_card SET rack = NULL, is_confirmed = 0 WHERE rack = ?",
            "DELETE FROM gone_piece WHERE kind = 7 AND station = ?",
            "DELETE FROM rack WHERE id = ?"});
}

void StationStore::remove(WriteScope& scope, BenchId bench)
{
    runAll(scope,
           bench.value,
           {"DELETE FROM gone_piece WHERE kind = 8 AND station = ?",
            "DELETE FROM bench WHERE id = ?"});
}

void StationStore::setGone(WriteScope& scope, Day day, const PieceKey& key, int count)
{
    translateErrors(scope.logbook().path(), [&] {
        SQLite::Database& database = scope.logbook().database();
        const auto bindKey = [&](Binder binder) {
            binder.add(day)
                .add(key.type)
                .add(key.name)
                .add(key.mass.thousandths())
                .add(key.mass.unit())
                .add(key.station);
            return binder;
        };
        if (count <= 0) {
            SQLite::Statement remove(database,
                                     "DELETE FROM gone_piece WHERE day = ? AND kind = ? AND name = "
                                     "? AND mass = ? AND mass_unit = ? AND station = ?");
            bindKey(Binder(remove));
            remove.exec();
            return;
        }
        SQLite::Statement upsert(database,
                                 "INSERT INTO gone_piece VALUES (?, ?, ?, ?, ?, ?, ?) ON CONFLICT "
                                 "DO UPDATE SET count = excluded.count");
        bindKey(Binder(upsert)).add(count);
        upsert.exec();
    });
}

} // namespace levelbar::storage
