// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/exercise/exercise_detail.h"

#include "core/base/utf8.h"

#include <algorithm>
#include <array>

namespace levelbar {

namespace {

constexpr std::array<std::string_view, 15> kAreas = {"neck",
                                                     "shoulder",
                                                     "elbow",
                                                     "wrist",
                                                     "chest",
                                                     "upper back",
                                                     "lower back",
                                                     "abdomen",
                                                     "hip",
                                                     "groin",
                                                     "thigh",
                                                     "knee",
                                                     "calf",
                                                     "ankle",
                                                     "foot"};
constexpr int kSteepestDecline = -45;
constexpr int kUpright = 90;

std::string_view trimmed(std::string_view text)
{
    constexpr std::string_view kBlanks = " \t\r\n";
    const std::size_t first = text.find_first_not_of(kBlanks);
    if (first == std::string_view::npos) {
        return {};
    }
    return text.substr(first, text.find_last_not_of(kBlanks) - first + 1);
}

std::optional<Fault> faultOf(const std::string& part)
{
    const auto length = codePoints(part);
    if (!length) {
        return Fault{FaultCode::NotUtf8, {}};
    }
    if (*length > kLongestPart) {
        return Fault{FaultCode::TooLong, {excerpt(part), std::to_string(kLongestPart)}};
    }
    if (holdsControl(part, false)) {
        return Fault{FaultCode::ControlCharacter, {}};
    }
    return std::nullopt;
}

std::optional<Fault> faultOf(const std::vector<std::string>& parts)
{
    if (parts.size() > kMostParts) {
        return Fault{FaultCode::OutOfRange,
                     {std::to_string(parts.size()), "0", std::to_string(kMostParts)}};
    }
    for (auto part = parts.begin(); part != parts.end(); ++part) {
        if (auto fault = faultOf(*part)) {
            return fault;
        }
        if (std::find(parts.begin(), part, *part) != part) {
            return Fault{FaultCode::RepeatedPiece, {excerpt(*part)}};
        }
    }
    return std::nullopt;
}

std::optional<Fault> faultOfAreas(const std::vector<std::string>& areas)
{
    for (const std::string& area : areas) {
        if (std::find(kAreas.begin(), kAreas.end(), area) == kAreas.end()) {
            std::string all;
            for (const std::string_view known : kAreas) {
                all += (all.empty() ? "" : ", ") + std::string(known);
            }
            return Fault{FaultCode::NotOneOf, {excerpt(area), all}};
        }
    }
    return std::nullopt;
}

} // namespace

std::span<const std::string_view> bodyAreas()
{
    return kAreas;
}

std::vector<std::string> partsOf(std::string_view text)
{
    std::vector<std::string> parts;
    while (true) {
        const std::size_t mark = text.find('|');
        if (const std::string_view part = trimmed(text.substr(0, mark)); !part.empty()) {
            parts.emplace_back(part);
        }
        if (mark == std::string_view::npos) {
            return parts;
        }
        text.remove_prefix(mark + 1);
    }
}

std::string joinedParts(const std::vector<std::string>& parts)
{
    std::string text;
    for (const std::string& part : parts) {
        text += (text.empty() ? "" : "|") + part;
    }
    return text;
}

Result<ExerciseDetail> checkDetail(ExerciseDetail detail)
{
    for (std::vector<std::string>* parts : {&detail.cues, &detail.cautions, &detail.areas}) {
        *parts = partsOf(joinedParts(*parts));
        if (const auto fault = faultOf(*parts)) {
            return tl::unexpected(*fault);
        }
    }
    if (const auto fault = faultOfAreas(detail.areas)) {
        return tl::unexpected(*fault);
    }
    if (detail.benchAngle &&
        (*detail.benchAngle < kSteepestDecline || *detail.benchAngle > kUpright)) {
        return refuse(FaultCode::OutOfRange,
                      {std::to_string(*detail.benchAngle),
                       std::to_string(kSteepestDecline),
                       std::to_string(kUpright)});
    }
    return detail;
}

} // namespace levelbar
