// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/base/number.h"
#include "core/member/member.h"
#include "storage/exchange/import_context.h"
#include "storage/exchange/import_rows.h"
#include "storage/trial_store.h"

#include <tuple>

namespace levelbar::storage {

namespace {

constexpr std::array<std::string_view, 9> kTrialColumns = {
    "date", "member_id", "test", "side", "trial", "value", "unit", "valid", "note"};
constexpr std::array<std::string_view, 4> kTrialNeeded = {"date", "member_id", "test", "value"};

constexpr int kDecimals = 3;
constexpr int kLongestTrialNote = 10000;

class TrialImport {
public:
    TrialImport(ImportContext& context, const ImportSource& source)
        : m_context(context)
        , m_file(source, context.report())
    {
    }

    void run()
    {
        m_file.read(kTrialColumns, kTrialNeeded, [this] { takeRecord(); });
        m_context.finishExercises();
    }

private:
    void takeRecord()
    {
        const std::size_t faultsBefore = m_file.faults();
        Trial trial;
        if (const auto day = m_file.take("date", parseDay(m_file.cell("date")))) {
            trial.day = *day;
        }
        const std::string_view code = m_file.cell("member_id");
        if (const auto member = m_context.member(code)) {
            trial.member = *member;
        } else {
            m_file.refuse("member_id", {FaultCode::UnknownMember, {excerpt(code)}});
        }
        m_file.takeOr("side", trial.side, Side::Both, &parseSide);
        m_file.takeOr("trial", trial.number, 1, [](std::string_view text) {
            return parseWhole(text, 1, 99).map([](std::int64_t n) { return static_cast<int>(n); });
        });
        m_file.takeOr("valid", trial.isValid, true, &parseYesNo);
        m_file.takeOr("note", trial.note, std::string(), [](std::string_view text) {
            return checkText(text, kLongestTrialNote);
        });
        const auto test = m_file.take("test", m_context.test(m_file.cell("test"), trial.side));
        if (test) {
            takeValue(trial, **test);
        }
        if (m_file.faults() == faultsBefore) {
            apply(trial);
        }
    }

    void takeValue(Trial& trial, const TestKind& test)
    {
        trial.test = test.id;
        const bool isOneSided = trial.side != Side::Both;
        if (!test.maximumOf && test.isSided != isOneSided) {
            m_file.refuse("side",
                          {FaultCode::WrongSide,
                           {test.name,
                            test.isSided ? "left or right" : "both",
                            std::string(sideWord(trial.side))}});
        }
        const std::string_view unit = m_file.cell("unit");
        const bool mayBePounds = test.unit == unitWord(MassUnit::Kilogram);
        const bool isPounds = mayBePounds && unit == unitWord(MassUnit::Pound);
        trial.unit = isPounds ? std::string(unit) : test.unit;
        if (!unit.empty() && !isPounds && unit != test.unit) {
            m_file.refuse(
                "unit", {FaultCode::NotOneOf, {excerpt(unit), mayBePounds ? "kg, lb" : test.unit}});
        }
        const auto inUnit = [&](std::int64_t thousandths) {
            return isPounds ? static_cast<std::int64_t>(static_cast<double>(thousandths) /
                                                        kKilogramsPerPound)
                            : thousandths;
        };
        const auto value = m_file.take("value",
                                       parseDecimal(m_file.numberCell("value"),
                                                    kDecimals,
                                                    inUnit(test.lowestThousandths),
                                                    inUnit(test.highestThousandths)));
        trial.valueThousandths = value.value_or(0);
    }

    void apply(const Trial& trial)
    {
        const auto key = std::tuple(trial.member, trial.test, trial.side, trial.day, trial.number);
        const auto [seen, isNew] = m_lines.emplace(key, m_file.line());
        if (!isNew) {
            m_file.refuse(std::string_view(),
                          {FaultCode::RepeatedKey, {std::to_string(seen->second)}});
            return;
        }
        ImportCounts& counts = m_context.report().tests;
        const auto stored =
            TrialStore(m_context.scope().logbook())
                .find(trial.member, trial.test, trial.side, trial.day, trial.number);
        if (!stored) {
            TrialStore::add(m_context.scope(), trial);
            ++counts.added;
            return;
        }
        Trial wanted = trial;
        wanted.note = m_file.hasColumn("note") ? trial.note : stored->note;
        wanted.isValid = m_file.hasColumn("valid") ? trial.isValid : stored->isValid;
        if (wanted == *stored) {
            ++counts.unchanged;
        } else if (m_context.request().update) {
            TrialStore::update(m_context.scope(), wanted);
            ++counts.updated;
        } else {
            const bool isValue = wanted.valueThousandths != stored->valueThousandths;
            m_file.refuse(
                isValue ? "value" : std::string_view(),
                {FaultCode::DiffersFromStored,
                 {isValue ? decimalText(wanted.valueThousandths, kDecimals) : "this row",
                  isValue ? decimalText(stored->valueThousandths, kDecimals) : "other values"}});
        }
    }

    ImportContext& m_context;
    ImportFile m_file;
    std::map<std::tuple<MemberId, TestId, Side, Day, int>, int> m_lines;
};

} // namespace

void importTrials(ImportContext& context, const ImportSource& source)
{
    TrialImport(context, source).run();
}

} // namespace levelbar::storage
