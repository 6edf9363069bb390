// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/target_card.h"

#include "core/plan/goal_table.h"
#include "core/plan/target_words.h"
#include "ui/words.h"

#include <QDoubleSpinBox>
#include <QHBoxLayout>
#include <QLabel>
#include <QScrollArea>
#include <QSpinBox>
#include <QVBoxLayout>

#include <cmath>

namespace levelbar::ui {

namespace {

constexpr double kTopRpe = 10.0;

QString loadWords(const AvailableLoad& load)
{
    return plain(load.load.number() + " " + std::string(unitWord(load.load.unit())));
}

QString rampText(const Target& target)
{
    QStringList sets;
    for (const WarmUpSet& set : target.ramp) {
        sets << QStringLiteral("%1 × %2").arg(loadWords(set.load), QLocale().toString(set.reps));
    }
    return sets.join(QStringLiteral(", "));
}

QString rangeText(const WholeRange& range)
{
    const QLocale locale;
    return range.low == range.high ? locale.toString(range.low)
                                   : TargetCard::tr("%1–%2").arg(locale.toString(range.low),
                                                                 locale.toString(range.high));
}

// "Handbook for strength, novice: 8–12 reps at 60–70 %, 1–3 sets, rest 120–180 s (ACSM 2009)."
QString handbookText(const Member& member)
{
    const GoalRow& row = goalRow(member.goal, member.experience);
    const QString share =
        row.percentOfMaximum.low == 0
            ? TargetCard::tr("up to %1 %").arg(QLocale().toString(row.percentOfMaximum.high))
            : TargetCard::tr("%1 %").arg(rangeText(row.percentOfMaximum));
    return TargetCard::tr("Handbook for %1, %2: %3 reps at %4, %5 sets, rest %6 s (%7).")
        .arg(word(goalWord(row.goal)),
             word(experienceWord(row.experience)),
             rangeText(row.reps),
             share,
             rangeText(row.sets),
             rangeText(row.restSeconds),
             plain(row.source));
}

} // namespace

TargetCard::TargetCard(QWidget* parent)
    : QFrame(parent)
    , m_reps(new QSpinBox(this))
    , m_reserve(new QDoubleSpinBox(this))
    , m_scale(new QLabel(this))
    , m_headline(new QLabel(this))
    , m_plates(new QLabel(this))
    , m_reasons(new QLabel(this))
{
    setObjectName(QStringLiteral("targetCard"));
    setAccessibleName(tr("Next load"));
    setFrameShape(QFrame::StyledPanel);
    m_reps->setObjectName(QStringLiteral("targetReps"));
    m_reps->setAccessibleName(tr("Reps to aim at"));
    m_reps->setRange(1, kMostTargetReps);
    m_reserve->setObjectName(QStringLiteral("targetReserve"));
    m_headline->setObjectName(QStringLiteral("targetHeadline"));
    m_plates->setObjectName(QStringLiteral("targetPlates"));
    m_reasons->setObjectName(QStringLiteral("targetReasons"));
    fillScale();
    makeLayout();
    connect(m_reps, &QSpinBox::valueChanged, this, &TargetCard::refresh);
    connect(m_reserve, &QDoubleSpinBox::valueChanged, this, &TargetCard::refresh);
}

void TargetCard::makeLayout()
{
    QFont large = m_headline->font();
    large.setPointSizeF(large.pointSizeF() * 1.4);
    large.setBold(true);
    m_headline->setFont(large);
    for (QLabel* label : {m_headline, m_plates, m_reasons}) {
        label->setWordWrap(true);
        label->setTextFormat(Qt::PlainText);
    }
    m_reasons->setAlignment(Qt::AlignTop | Qt::AlignLeft);
    auto* aim = new QHBoxLayout;
    auto* title = new QLabel(tr("Next load for"), this);
    title->setBuddy(m_reps);
    aim->addWidget(title);
    aim->addWidget(m_reps);
    aim->addWidget(m_scale);
    aim->addWidget(m_reserve);
    aim->addStretch(1);
    auto* inside = new QWidget(this);
    auto* words = new QVBoxLayout(inside);
    words->setContentsMargins(0, 0, 4, 0);
    words->addWidget(m_headline);
    words->addWidget(m_plates);
    words->addWidget(m_reasons, 1);
    auto* scroll = new QScrollArea(this);
    scroll->setWidgetResizable(true);
    scroll->setFrameShape(QFrame::NoFrame);
    scroll->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    scroll->setFocusPolicy(Qt::NoFocus);
    scroll->setWidget(inside);
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(10, 8, 10, 8);
    layout->addLayout(aim);
    layout->addWidget(scroll, 1);
}

void TargetCard::setGym(Kit kit, EffortScale effort)
{
    m_kit = std::move(kit);
    if (effort != m_effort) {
        const Reserve kept = typedReserve();
        m_effort = effort;
        fillScale();
        const QSignalBlocker blocker(m_reserve);
        m_reserve->setValue(effort == EffortScale::Rpe ? kTopRpe - kept.reps() : kept.reps());
    }
}

// The reserve box in the scale that this gym chose.
void TargetCard::fillScale()
{
    const QSignalBlocker blocker(m_reserve);
    const bool isRpe = m_effort == EffortScale::Rpe;
    m_scale->setText(isRpe ? tr("reps at RPE") : tr("reps, leaving"));
    m_reserve->setAccessibleName(isRpe ? tr("RPE to aim at") : tr("Reps to leave in reserve"));
    m_reserve->setDecimals(isRpe ? 1 : 0);
    m_reserve->setSingleStep(isRpe ? 0.5 : 1.0);
    m_reserve->setRange(isRpe ? kTopRpe - kMostRpeReserve.reps() : 0.0,
                        isRpe ? kTopRpe : kMostTargetReserve);
    m_reserve->setValue(isRpe ? kTopRpe - kUsualReserve : kUsualReserve);
}

Reserve TargetCard::typedReserve() const
{
    const double value = m_reserve->value();
    const double reserve = m_effort == EffortScale::Rpe ? kTopRpe - value : value;
    return Reserve{static_cast<int>(std::lround(10.0 * reserve))};
}

void TargetCard::show(const Subject& subject)
{
    const bool isOther = subject.exercise != m_subject.exercise ||
                         (subject.history != nullptr && subject.history->member.id != m_member);
    m_subject = subject;
    m_member = subject.history == nullptr ? MemberId{} : subject.history->member.id;
    if (isOther) {
        proposeReps();
    }
    refresh();
}

void TargetCard::proposeReps()
{
    const Member member = m_subject.history == nullptr ? Member() : m_subject.history->member;
    const QSignalBlocker blocker(m_reps);
    m_reps->setValue(proposedReps(goalRow(member.goal, member.experience)));
}

void TargetCard::refresh()
{
    m_headline->clear();
    m_plates->clear();
    m_reasons->clear();
    m_plates->hide();
    if (m_subject.history == nullptr || !m_subject.exercise.isStored()) {
        m_headline->setText(tr("Choose an exercise."));
        return;
    }
    const Exercise* exercise = m_subject.library->exercise(m_subject.exercise);
    const TargetQuestion question{
        m_subject.exercise, m_subject.side, m_reps->value(), typedReserve(), m_subject.today};
    const auto target = targetFor(*m_subject.history, *m_subject.library, m_kit, question);
    if (!target) {
        m_reasons->setText(words(target.error()) + QLatin1Char('.'));
        return;
    }
    showTarget(*target, *exercise);
}

void TargetCard::showTarget(const Target& target, const Exercise& exercise)
{
    m_headline->setText(words(headline(target)));
    QStringList lines;
    if (target.progression.load) {
        const std::string plates = platesText(*target.progression.load, exercise.implement);
        if (!plates.empty()) {
            lines << tr("On the bar: %1").arg(plain(plates));
        }
    }
    if (!target.ramp.empty()) {
        lines << tr("Warm up: %1").arg(rampText(target));
    }
    m_plates->setText(lines.join(QLatin1Char('\n')));
    m_plates->setVisible(!lines.isEmpty());
    QStringList reasons = {words(reasonPhrases(target)), words(loadPhrases(target, m_effort))};
    if (target.lastMove) {
        reasons << words(phrases(*target.lastMove));
    }
    reasons << words(curvePhrases(target)) << handbookText(m_subject.history->member);
    const auto caution = cautionPhrases(target);
    if (!caution.empty()) {
        reasons.prepend(words(caution));
    }
    m_reasons->setText(reasons.join(QLatin1Char('\n')));
}

} // namespace levelbar::ui
