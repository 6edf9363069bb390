// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/floor/floor_words.h"

#include <QCoreApplication>

namespace levelbar::ui {

namespace {

struct FloorWords {
    Q_DECLARE_TR_FUNCTIONS(FloorWords)
};

QString byLocale(QString number)
{
    return number.replace(QLatin1Char('.'), QLocale().decimalPoint());
}

QString tenthsText(int tenths)
{
    return byLocale(tenths % 10 == 0 ? QString::number(tenths / 10)
                                     : QString::number(tenths / 10.0, 'f', 1));
}

AmountKind amountOf(const Exercise* exercise)
{
    return exercise == nullptr ? AmountKind::Reps : exercise->amount;
}

// What is typed as a load is all of it, comes on top of the body, or is not there.
QString loadPart(const Mass& load, const QString& written, const Exercise* exercise)
{
    const LoadKind kind = exercise == nullptr ? LoadKind::External : exercise->load;
    if (load.thousandths() == 0 && kind != LoadKind::External) {
        return {};
    }
    return kind == LoadKind::Added ? QLatin1Char('+') + written : written;
}

QString amountPart(std::optional<int> amount, AmountKind kind, bool hasLoad)
{
    const QString unknown = QStringLiteral("?");
    switch (kind) {
    case AmountKind::Seconds:
        return FloorWords::tr("%1 s").arg(amount ? tenthsText(*amount) : unknown);
    case AmountKind::Metres:
        return FloorWords::tr("%1 m").arg(amount ? tenthsText(*amount) : unknown);
    case AmountKind::Reps:
        break;
    }
    const QString reps = amount ? QLocale().toString(*amount) : unknown;
    return hasLoad ? reps : FloorWords::tr("%1 reps").arg(reps);
}

QString joined(const QString& load, std::optional<int> amount, AmountKind kind)
{
    const QString rest = amountPart(amount, kind, !load.isEmpty());
    return load.isEmpty() ? rest : FloorWords::tr("%1 × %2").arg(load, rest);
}

struct Amount {
    std::optional<int> value;
    AmountKind kind = AmountKind::Reps;
};

// What was written down, even when the exercise is now counted otherwise.
Amount amountOf(const PerformedSet& performed)
{
    if (performed.secondsTenths) {
        return {performed.secondsTenths, AmountKind::Seconds};
    }
    if (performed.metresTenths) {
        return {performed.metresTenths, AmountKind::Metres};
    }
    return {performed.reps, AmountKind::Reps};
}

// Why a set ended, where that matters for the other side.
QString stoppedPart(const DoneSet& done, const QString& text)
{
    if (done.performed.stopped == StopReason::Capped) {
        return FloorWords::tr("%1, capped by the other side").arg(text);
    }
    if (done.performed.stopped == StopReason::Pain) {
        return done.performed.pain ? FloorWords::tr("%1, stopped by pain (%2 of 10)")
                                         .arg(text, QLocale().toString(*done.performed.pain))
                                   : FloorWords::tr("%1, stopped by pain").arg(text);
    }
    return text;
}

} // namespace

QString personName(const FloorReference& reference, MemberId member)
{
    const auto found = reference.people.find(member);
    if (found == reference.people.end()) {
        return FloorWords::tr("Unknown person");
    }
    return QString::fromStdString(found->second.name.empty() ? found->second.code
                                                             : found->second.name);
}

QString exerciseName(const FloorReference& reference, ExerciseId exercise)
{
    const Exercise* found = reference.library.exercise(exercise);
    return found == nullptr ? FloorWords::tr("Unknown exercise")
                            : QString::fromStdString(found->name);
}

QString loadText(const Mass& load)
{
    const QString number = byLocale(QString::fromStdString(load.number()));
    return load.unit() == MassUnit::Pound ? FloorWords::tr("%1 lb").arg(number)
                                          : FloorWords::tr("%1 kg").arg(number);
}

QString plannedText(const PlannedSet& planned, const Exercise* exercise)
{
    const bool hasNoLoad = planned.load.thousandths() == 0;
    if (planned.isNew && hasNoLoad &&
        (exercise == nullptr || exercise->load == LoadKind::External)) {
        return joined(FloorWords::tr("new"), planned.amount, amountOf(exercise));
    }
    return joined(loadPart(planned.load, loadText(planned.load), exercise),
                  planned.amount,
                  amountOf(exercise));
}

QString doneText(const DoneSet& done, const Exercise* exercise, EffortScale effort)
{
    const Amount amount = amountOf(done.performed);
    const Mass& load = done.performed.load;
    QString text = joined(loadPart(load, loadText(load), exercise), amount.value, amount.kind);
    if (amount.kind == AmountKind::Reps && amount.value == 0) {
        text = FloorWords::tr("%1, tried and failed").arg(text);
    }
    if (done.performed.reserve) {
        const Reserve reserve = *done.performed.reserve;
        const bool isRpe = effort == EffortScale::Rpe && isOnScale(reserve, effort);
        text = (isRpe ? FloorWords::tr("%1 at RPE %2") : FloorWords::tr("%1, %2 in reserve"))
                   .arg(text, tenthsText(isRpe ? 100 - reserve.tenths : reserve.tenths));
    }
    return stoppedPart(done, text);
}

QString doneCellText(const DoneSet& done, const Exercise* exercise, EffortScale effort)
{
    const Amount amount = amountOf(done.performed);
    const Mass& load = done.performed.load;
    const QString written = load.unit() == MassUnit::Kilogram
                                ? byLocale(QString::fromStdString(load.number()))
                                : loadText(load);
    QString text = joined(loadPart(load, written, exercise), amount.value, amount.kind);
    if (done.performed.stopped == StopReason::Pain) {
        text = FloorWords::tr("%1 pain").arg(text);
    }
    if (!done.performed.reserve) {
        return text;
    }
    const Reserve reserve = *done.performed.reserve;
    const bool isRpe = effort == EffortScale::Rpe && isOnScale(reserve, effort);
    return (isRpe ? FloorWords::tr("%1 @%2") : FloorWords::tr("%1 r%2"))
        .arg(text, tenthsText(isRpe ? 100 - reserve.tenths : reserve.tenths));
}

QString placeText(const FloorReference& reference, const FloorColumn& column)
{
    const QString place = FloorWords::tr("%1, set %2")
                              .arg(exerciseName(reference, column.exercise))
                              .arg(QLocale().toString(column.number));
    return column.side == Side::Both ? place
                                     : FloorWords::tr("%1, %2").arg(place, sideText(column.side));
}

QString knownText(HowKnown known)
{
    switch (known) {
    case HowKnown::Counted:
        return FloorWords::tr("counted");
    case HowKnown::Accepted:
        return FloorWords::tr("as planned");
    case HowKnown::Group:
        return FloorWords::tr("whole group");
    case HowKnown::Sheet:
        break;
    }
    return FloorWords::tr("from a sheet");
}

QString sideText(Side side)
{
    switch (side) {
    case Side::Left:
        return FloorWords::tr("left");
    case Side::Right:
        return FloorWords::tr("right");
    case Side::Both:
        break;
    }
    return FloorWords::tr("both sides");
}

QString sideLetter(Side side)
{
    switch (side) {
    case Side::Left:
        return FloorWords::tr("L");
    case Side::Right:
        return FloorWords::tr("R");
    case Side::Both:
        break;
    }
    return {};
}

QString faultText(const Fault& fault)
{
    if (fault.code == FaultCode::NotACell) {
        return FloorWords::tr(
                   "'%1' is neither reps (9) nor reps with reserve (9.2); reps go from 0 to 200.")
            .arg(fault.arguments.empty() ? QString() : QString::fromStdString(fault.arguments[0]));
    }
    if (fault.code == FaultCode::NotARpeCell) {
        return FloorWords::tr("'%1' is neither reps (9) nor reps with RPE (9.8 for 8, 9.85 for "
                              "8.5); reps go from 0 to 200, RPE from 5 to 10.")
            .arg(fault.arguments.empty() ? QString() : QString::fromStdString(fault.arguments[0]));
    }
    const std::string_view text = sentenceTemplate(fault.code);
    QString sentence =
        QCoreApplication::translate("Fault", QByteArray(text.data(), qsizetype(text.size())));
    for (std::size_t place = 0; place < fault.arguments.size(); ++place) {
        sentence.replace(QLatin1Char('%') + QString::number(place + 1),
                         QString::fromStdString(fault.arguments[place]));
    }
    return sentence + QLatin1Char('.');
}

} // namespace levelbar::ui
