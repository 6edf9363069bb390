// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "storage/gym_store.h"

#include "storage/row_binder.h"
#include "storage/row_columns.h"
#include "storage/sqlite_errors.h"
#include "storage/station_store.h"

#include <map>

namespace levelbar::storage {

namespace {

// The numbers are stored; do not change them.
enum class PieceKind {
    Bar = 1,
    Plate = 2,
    Dumbbell = 3,
    Kettlebell = 4,
    Collars = 5,
    StackStep = 6,
};

constexpr const char* kEffortSetting = "effort_scale";
constexpr const char* kRpe = "rpe";
constexpr const char* kReserve = "reserve";

void addPiece(Kit& kit, PieceKind kind, Columns& columns)
{
    std::string name = columns.text();
    const Mass mass = columns.mass();
    const int count = columns.whole();
    switch (kind) {
    case PieceKind::Bar:
        kit.bars.push_back({std::move(name), mass, count});
        break;
    case PieceKind::Plate:
        kit.plates.push_back({mass, count});
        break;
    case PieceKind::Dumbbell:
        kit.handWeights.push_back({Implement::Dumbbell, mass, count});
        break;
    case PieceKind::Kettlebell:
        kit.handWeights.push_back({Implement::Kettlebell, mass, count});
        break;
    case PieceKind::Collars:
        kit.collars = mass;
        break;
    case PieceKind::StackStep:
        kit.stackStep = mass;
        break;
    }
}

// Writes pieces, counting the places of each kind.
class PieceWriter {
public:
    explicit PieceWriter(SQLite::Database& database)
        : m_insert(database, "INSERT INTO kit_piece VALUES (?, ?, ?, ?, ?, ?)")
    {
    }

    void add(PieceKind kind, const std::string& name, const Mass& mass, int count)
    {
        m_insert.reset();
        Binder(m_insert)
            .add(kind)
            .add(++m_places[kind])
            .add(name)
            .add(mass.thousandths())
            .add(mass.unit())
            .add(count);
        m_insert.exec();
    }

private:
    SQLite::Statement m_insert;
    std::map<PieceKind, int> m_places;
};

} // namespace

Kit GymStore::kit() const
{
    return translateErrors(m_logbook.path(), [&] {
        SQLite::Statement select(
            m_logbook.database(),
            "SELECT kind, name, mass, mass_unit, count FROM kit_piece ORDER BY kind, place");
        Kit kit;
        while (select.executeStep()) {
            Columns columns(select);
            const auto kind = columns.word<PieceKind>();
            addPiece(kit, kind, columns);
        }
        return kit.bars.empty() ? assumedKit() : kit;
    });
}

Kit GymStore::kitOn(Day day) const
{
    return without(kit(), StationStore(m_logbook).goneOn(day));
}

void GymStore::setKit(WriteScope& scope, const Kit& kit)
{
    SQLite::Database& database = scope.logbook().database();
    translateErrors(scope.logbook().path(), [&] {
        database.exec("DELETE FROM kit_piece");
        if (kit.isAssumed) {
            return;
        }
        PieceWriter writer(database);
        for (const BarKind& bar : kit.bars) {
            writer.add(PieceKind::Bar, bar.name, bar.mass, bar.count);
        }
        for (const PlateKind& plate : kit.plates) {
            writer.add(PieceKind::Plate, {}, plate.mass, plate.count);
        }
        for (const HandWeight& piece : kit.handWeights) {
            const bool isDumbbell = piece.implement == Implement::Dumbbell;
            writer.add(isDumbbell ? PieceKind::Dumbbell : PieceKind::Kettlebell,
                       {},
                       piece.mass,
                       piece.count);
        }
        writer.add(PieceKind::Collars, {}, kit.collars, 2);
        writer.add(PieceKind::StackStep, {}, kit.stackStep, 1);
    });
}

EffortScale GymStore::effortScale() const
{
    return translateErrors(m_logbook.path(), [&] {
        SQLite::Statement select(m_logbook.database(), "SELECT value FROM setting WHERE name = ?");
        select.bind(1, kEffortSetting);
        const bool isRpe = select.executeStep() && select.getColumn(0).getString() == kRpe;
        return isRpe ? EffortScale::Rpe : EffortScale::Reserve;
    });
}

void GymStore::setEffortScale(WriteScope& scope, EffortScale scale)
{
    translateErrors(scope.logbook().path(), [&] {
        SQLite::Statement write(scope.logbook().database(),
                                "INSERT INTO setting VALUES (?, ?) ON CONFLICT (name) DO UPDATE "
                                "SET value = excluded.value");
        write.bind(1, kEffortSetting);
        write.bind(2, scale == EffortScale::Rpe ? kRpe : kReserve);
        write.exec();
    });
}

} // namespace levelbar::storage
