// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
// What the floor shows before anything is chosen.
#include "storage/station_store.h"
#include "storage/timetable_store.h"
#include "tests/ui/class_floor_fixture.h"

#include <QComboBox>
#include <QDateEdit>
#include <QSpinBox>

namespace levelbar::ui::class_floor_opening_test {

TEST_F(ClassFloorTest, TheClassOfTodayComesFirst)
{
    {
        storage::BulkWrite write(*m_logbook, "test", kClassMoment);
        storage::ClassStore::add(write, "A class of another day");
        WeeklySlot slot;
        slot.groupClass = evening;
        slot.weekday = 3; // 25 November 2026 is a Wednesday
        slot.start = TimeOfDay{18 * 60};
        storage::TimetableStore::add(write, slot);
        write.commit();
    }
    openPage();
    EXPECT_EQ(part<QComboBox>("floorClass")->currentText().toStdString(), "Evening bars");
}

TEST_F(ClassFloorTest, TheRacksAreThoseOfTheGymUntilOthersAreChosen)
{
    {
        storage::BulkWrite write(*m_logbook, "test", kClassMoment);
        Room hall;
        hall.name = "Hall";
        hall.id = storage::StationStore::put(write, hall);
        Rack racks;
        racks.room = hall.id;
        racks.name = "Racks";
        racks.count = 2;
        storage::StationStore::put(write, racks);
        write.commit();
    }
    openPage();
    auto* racks = part<QSpinBox>("floorRacks");
    EXPECT_EQ(racks->value(), 2);
    racks->setValue(1);
    markPeople(2);
    EXPECT_EQ(racks->value(), 1) << "what was chosen by hand stands";
    part<QDateEdit>("floorDay")->setDate(QDate(2026, 11, 24));
    EXPECT_EQ(racks->value(), 2);
}

} // namespace levelbar::ui::class_floor_opening_test
