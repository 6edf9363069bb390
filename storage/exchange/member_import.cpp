// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/base/number.h"
#include "core/member/member.h"
#include "storage/exchange/import_context.h"
#include "storage/exchange/import_rows.h"
#include "storage/member_store.h"

#include <algorithm>

namespace levelbar::storage {

namespace {

constexpr std::array<std::string_view, 12> kMemberColumns = {"member_id",
                                                             "name",
                                                             "sex",
                                                             "birth_date",
                                                             "height_cm",
                                                             "body_mass_kg",
                                                             "dominant_side",
                                                             "level",
                                                             "goal",
                                                             "group",
                                                             "classes",
                                                             "note"};
constexpr std::array<std::string_view, 1> kMemberNeeded = {"member_id"};

std::vector<std::string> parted(std::string_view text)
{
    std::vector<std::string> parts;
    while (!text.empty()) {
        const std::size_t bar = text.find('|');
        std::string_view part = text.substr(0, bar);
        while (part.starts_with(' ')) {
            part.remove_prefix(1);
        }
        while (part.ends_with(' ')) {
            part.remove_suffix(1);
        }
        if (!part.empty()) {
            parts.emplace_back(part);
        }
        text = bar == std::string_view::npos ? std::string_view() : text.substr(bar + 1);
    }
    return parts;
}

// What is stored, for the sentence that says it differs.
std::string storedText(const std::string& value)
{
    return excerpt(value);
}

std::string storedText(const std::optional<Sex>& value)
{
    return value ? std::string(sexWord(*value)) : "";
}

std::string storedText(const std::optional<Experience>& value)
{
    return value ? std::string(experienceWord(*value)) : "";
}

std::string storedText(const std::optional<Goal>& value)
{
    return value ? std::string(goalWord(*value)) : "";
}

std::string storedText(const std::optional<Side>& value)
{
    return value ? std::string(sideWord(*value)) : "";
}

std::string storedText(const std::optional<Day>& value)
{
    return value ? isoText(*value) : "";
}

std::string storedText(const std::optional<Mass>& value)
{
    return value ? value->number() : "";
}

std::string storedText(const std::optional<int>& hundredths)
{
    return hundredths ? decimalText(*hundredths, 2) : "";
}

class MemberImport {
public:
    MemberImport(ImportContext& context, const ImportSource& source)
        : m_context(context)
        , m_file(source, context.report())
    {
    }

    void run()
    {
        m_file.read(kMemberColumns, kMemberNeeded, [this] { takeRecord(); });
    }

private:
    void takeRecord()
    {
        const std::size_t faultsBefore = m_file.faults();
        const auto code = m_file.take("member_id", checkMemberCode(m_file.cell("member_id")));
        if (code) {
            const auto [seen, isNew] = m_lines.emplace(*code, m_file.line());
            if (!isNew) {
                m_file.refuse("member_id",
                              {FaultCode::RepeatedKey, {std::to_string(seen->second)}});
                return;
            }
        }
        const auto id = code ? m_context.member(*code) : std::nullopt;
        Member stored;
        if (id) {
            stored = *MemberStore(m_context.scope().logbook()).byId(*id);
        }
        Member member = stored;
        member.code = code.value_or("");
        takeCells(member, id.has_value());
        const std::vector<std::string> classes = parted(m_file.cell("classes"));
        for (const std::string& name : classes) {
            m_file.take("classes", checkName(name, kLongestMemberText));
        }
        if (m_file.faults() == faultsBefore) {
            apply(member, stored, id, classes);
        }
    }

    // Takes a cell into `target`; an empty one leaves what is stored, another value than the
    // stored one needs --update.
    template <typename T, typename Parse>
    void takeCell(std::string_view column, T& target, bool isStored, const Parse& parse)
    {
        takeParsed(column, target, isStored, m_file.numberCell(column), parse);
    }

    template <typename T, typename Parse>
    void takeParsed(std::string_view column,
                    T& target,
                    bool isStored,
                    std::string_view text,
                    const Parse& parse)
    {
        if (text.empty()) {
            return;
        }
        auto parsed = parse(text);
        if (!parsed) {
            m_file.refuse(column, parsed.error());
            return;
        }
        const T value(std::move(*parsed));
        if (isStored && !(target == value) && !m_context.request().update) {
            m_file.refuse(column,
                          {FaultCode::DiffersFromStored, {excerpt(text), storedText(target)}});
            return;
        }
        target = value;
    }

    // Text keeps its commas, whatever the file's decimal mark.
    void takeText(std::string_view column,
                  std::string& target,
                  bool isStored,
                  Result<std::string> (*check)(std::string_view, int),
                  int longest)
    {
        takeParsed(column, target, isStored, m_file.cell(column), [&](std::string_view text) {
            return check(text, longest);
        });
    }

    void takeCells(Member& member, bool isStored)
    {
        takeText("name", member.name, isStored, &checkName, kLongestMemberText);
        takeCell("sex", member.sex, isStored, &parseSex);
        takeCell("birth_date", member.birthDate, isStored, &parseDay);
        takeCell("height_cm", member.statureTenthMillimetres, isStored, &parseStature);
        takeCell("body_mass_kg", member.intakeMass, isStored, &parseBodyMass);
        takeCell("dominant_side", member.dominantSide, isStored, &parseDominantSide);
        takeCell("level", member.experience, isStored, &parseExperience);
        takeCell("goal", member.goal, isStored, &parseGoal);
        takeText("group", member.group, isStored, &checkName, kLongestMemberText);
        takeText("note", member.note, isStored, &checkText, kLongestNote);
    }

    void apply(Member& member,
               const Member& stored,
               std::optional<MemberId> id,
               const std::vector<std::string>& classes)
    {
        ImportCounts& counts = m_context.report().members;
        WriteScope& scope = m_context.scope();
        if (!id) {
            member.id = MemberStore::add(scope, member);
            m_context.addMember(member.code, member.id);
            for (const std::string& name : classes) {
                ClassStore::setMembership(scope, m_context.groupClass(name), member.id, true);
            }
            ++counts.added;
            return;
        }
        const bool isChanged = !(member == stored);
        if (isChanged) {
            MemberStore::update(scope, member);
        }
        const bool hasJoined = join(*id, classes);
        ++(isChanged || hasJoined ? counts.updated : counts.unchanged);
    }

    // Whether the person was not yet in one of the classes; joining a stored person is a change.
    bool join(MemberId member, const std::vector<std::string>& classes)
    {
        WriteScope& scope = m_context.scope();
        const auto known = ClassStore(scope.logbook()).classesOf(member);
        bool hasJoined = false;
        for (const std::string& name : classes) {
            const bool isIn = std::any_of(
                known.begin(), known.end(), [&](const GroupClass& c) { return c.name == name; });
            if (isIn) {
                continue;
            }
            if (!m_context.request().update) {
                m_file.refuse("classes",
                              {FaultCode::DiffersFromStored, {excerpt(name), "not in it"}});
                continue;
            }
            ClassStore::setMembership(scope, m_context.groupClass(name), member, true);
            hasJoined = true;
        }
        return hasJoined;
    }

    ImportContext& m_context;
    ImportFile m_file;
    ByText<int> m_lines; // where each code stood first
};

} // namespace

void importMembers(ImportContext& context, const ImportSource& source)
{
    MemberImport(context, source).run();
}

} // namespace levelbar::storage
