// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/gym/stations.h"

#include "core/base/number.h"
#include "core/member/member.h"

#include <algorithm>

namespace levelbar {

namespace {

constexpr int kLongestName = 60;
constexpr int kSteepestDecline = -45;
constexpr int kUpright = 90;
constexpr std::size_t kMostAngles = 12;
constexpr Length kMostLowest = Length::ofMillimetres(2000);
constexpr Length kLeastPitch = Length::ofMillimetres(5);
constexpr Length kMostPitch = Length::ofMillimetres(300);

std::optional<Fault> faultOfName(const std::string& name)
{
    if (name.empty()) {
        return Fault{FaultCode::Empty, {}};
    }
    const auto checked = checkName(name, kLongestName);
    return checked ? std::nullopt : std::optional(checked.error());
}

std::optional<Fault> faultOfNumber(int value, int least, int most)
{
    if (value >= least && value <= most) {
        return std::nullopt;
    }
    return Fault{FaultCode::OutOfRange,
                 {std::to_string(value), std::to_string(least), std::to_string(most)}};
}

// In millimetres, which is how people type it.
std::optional<Fault> faultOfLength(Length value, Length least, Length most)
{
    if (value >= least && value <= most) {
        return std::nullopt;
    }
    return faultOfNumber(
        value.tenthMillimetres / 10, least.tenthMillimetres / 10, most.tenthMillimetres / 10);
}

} // namespace

const Room* Stations::room(RoomId id) const
{
    const auto found =
        std::find_if(rooms.begin(), rooms.end(), [id](const Room& r) { return r.id == id; });
    return found == rooms.end() ? nullptr : &*found;
}

const Rack* Stations::rack(RackId id) const
{
    const auto found =
        std::find_if(racks.begin(), racks.end(), [id](const Rack& r) { return r.id == id; });
    return found == racks.end() ? nullptr : &*found;
}

Rack assumedRack()
{
    Rack rack;
    rack.name = "Rack";
    return rack;
}

Result<Room> checkRoom(Room room)
{
    if (const auto fault = faultOfName(room.name)) {
        return tl::unexpected(*fault);
    }
    return room;
}

Result<Rack> checkRack(Rack rack)
{
    for (const auto& fault : {faultOfName(rack.name),
                              faultOfLength(rack.holes.lowest, {}, kMostLowest),
                              faultOfLength(rack.holes.pitch, kLeastPitch, kMostPitch),
                              faultOfNumber(rack.holes.count, 1, kMostHoles),
                              faultOfNumber(rack.count, 0, kMostStations)}) {
        if (fault) {
            return tl::unexpected(*fault);
        }
    }
    return rack;
}

Result<Bench> checkBench(Bench bench)
{
    std::sort(bench.angles.begin(), bench.angles.end());
    bench.angles.erase(std::unique(bench.angles.begin(), bench.angles.end()), bench.angles.end());
    for (const auto& fault :
         {faultOfName(bench.name),
          faultOfNumber(static_cast<int>(bench.angles.size()), 1, static_cast<int>(kMostAngles)),
          faultOfNumber(bench.count, 0, kMostStations)}) {
        if (fault) {
            return tl::unexpected(*fault);
        }
    }
    for (const int angle : bench.angles) {
        if (const auto fault = faultOfNumber(angle, kSteepestDecline, kUpright)) {
            return tl::unexpected(*fault);
        }
    }
    return bench;
}

Result<std::vector<int>> parseAngles(std::string_view text)
{
    std::vector<int> angles;
    std::string word;
    for (std::size_t i = 0; i <= text.size(); ++i) {
        const bool isBreak = i == text.size() || text[i] == ' ' || text[i] == ',' || text[i] == ';';
        if (!isBreak) {
            word += text[i];
        } else if (!word.empty()) {
            const auto angle = parseWhole(word, kSteepestDecline, kUpright);
            if (!angle) {
                return tl::unexpected(angle.error());
            }
            angles.push_back(static_cast<int>(*angle));
            word.clear();
        }
    }
    if (angles.empty()) {
        return refuse(FaultCode::Empty);
    }
    return angles;
}

std::string anglesText(const std::vector<int>& angles)
{
    std::string text;
    for (const int angle : angles) {
        text += (text.empty() ? "" : ", ") + std::to_string(angle);
    }
    return text;
}

int nearestHole(const RackHoles& holes, Length height)
{
    const int above = height.tenthMillimetres - holes.lowest.tenthMillimetres;
    const int pitch = holes.pitch.tenthMillimetres;
    // Ceiling of above/pitch - 1/2, so that a tie goes down.
    const int steps = above <= 0 ? 0 : (2 * above + pitch - 1) / (2 * pitch);
    return std::clamp(1 + steps, 1, holes.count);
}

} // namespace levelbar
