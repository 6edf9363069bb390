// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/floor/class_floor.h"

#include <algorithm>

namespace levelbar {

const FloorExercise* FloorBook::find(ExerciseId id) const
{
    const auto found = std::find_if(exercises.begin(), exercises.end(), [id](const auto& one) {
        return one.exercise.id == id;
    });
    return found == exercises.end() ? nullptr : &*found;
}

const FloorPerson* personWithBib(const ClassFloor& floor, int bib)
{
    const auto found = std::find_if(floor.people.begin(),
                                    floor.people.end(),
                                    [bib](const FloorPerson& one) { return one.bib == bib; });
    return found == floor.people.end() ? nullptr : &*found;
}

FloorPerson* person(ClassFloor& floor, MemberId member)
{
    const auto found =
        std::find_if(floor.people.begin(), floor.people.end(), [member](const FloorPerson& one) {
            return one.member == member;
        });
    return found == floor.people.end() ? nullptr : &*found;
}

const FloorPerson* person(const ClassFloor& floor, MemberId member)
{
    const auto found =
        std::find_if(floor.people.begin(), floor.people.end(), [member](const FloorPerson& one) {
            return one.member == member;
        });
    return found == floor.people.end() ? nullptr : &*found;
}

const Station* station(const ClassFloor& floor, int number)
{
    const auto found = std::find_if(floor.stations.begin(),
                                    floor.stations.end(),
                                    [number](const Station& one) { return one.number == number; });
    return found == floor.stations.end() ? nullptr : &*found;
}

bool hasLifted(const ClassFloor& floor, MemberId member)
{
    return std::any_of(floor.cells.begin(), floor.cells.end(), [member](const PadCell& cell) {
        return cell.done && cell.planned.member == member;
    });
}

FloorBook withLoads(FloorBook book)
{
    for (FloorExercise& one : book.exercises) {
        one.loads = std::make_shared<const AvailableLoads>(book.kit, one.exercise);
    }
    return book;
}

} // namespace levelbar
