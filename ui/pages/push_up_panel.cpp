// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/push_up_panel.h"

#include "core/bodyweight/push_up_words.h"
#include "core/plan/target.h"
#include "storage/gym_store.h"
#include "storage/scale_store.h"
#include "storage/set_store.h"
#include "storage/setup_store.h"
#include "storage/station_store.h"
#include "ui/change_notifier.h"
#include "ui/floor/load_steps.h"
#include "ui/perform.h"
#include "ui/words.h"

#include <QHBoxLayout>
#include <QLabel>
#include <QLineEdit>
#include <QListWidget>
#include <QPushButton>
#include <QShortcut>
#include <QSpinBox>
#include <QVBoxLayout>

#include <algorithm>

namespace levelbar::ui {

namespace {

constexpr int kMostReps = 60;

const Exercise* withKey(const Library& library, std::string_view key)
{
    const auto found = std::find_if(library.exercises.begin(),
                                    library.exercises.end(),
                                    [key](const Exercise& e) { return e.key == key; });
    return found == library.exercises.end() ? nullptr : &*found;
}

QString typedMass(const Mass& mass)
{
    return plain(mass.number() + " " + std::string(unitWord(mass.unit())));
}

} // namespace

PushUpPanel::PushUpPanel(Workspace& workspace, QWidget* parent)
    : QWidget(parent)
    , m_workspace(workspace)
    , m_fewest(new QSpinBox(this))
    , m_most(new QSpinBox(this))
    , m_next(new QLabel(this))
    , m_others(new QLabel(this))
    , m_basis(new QLabel(this))
    , m_hole(new QSpinBox(this))
    , m_lockedOut(new QLineEdit(this))
    , m_atChest(new QLineEdit(this))
    , m_line(new QLabel(this))
    , m_list(new QListWidget(this))
{
    setObjectName(QStringLiteral("pushUpPanel"));
    setAccessibleName(tr("Body weight as load"));
    makeLayout();
    for (QSpinBox* box : {m_fewest, m_most}) {
        connect(box, &QSpinBox::valueChanged, this, &PushUpPanel::refresh);
    }
}

void PushUpPanel::makeLayout()
{
    const RepsWanted usual;
    for (auto [box, value, name, said] :
         {std::tuple(m_fewest, usual.fewest, "pushUpFewest", tr("Fewest reps")),
          std::tuple(m_most, usual.most, "pushUpMost", tr("Most reps"))}) {
        box->setRange(1, kMostReps);
        box->setValue(static_cast<int>(value));
        box->setObjectName(QLatin1String(name));
        box->setAccessibleName(said);
    }
    m_next->setObjectName(QStringLiteral("pushUpNext"));
    m_others->setObjectName(QStringLiteral("pushUpOthers"));
    m_basis->setObjectName(QStringLiteral("pushUpBasis"));
    m_line->setObjectName(QStringLiteral("pushUpLine"));
    for (QLabel* label : {m_next, m_others, m_basis, m_line}) {
        label->setWordWrap(true);
        label->setTextFormat(Qt::PlainText);
        label->setAlignment(Qt::AlignTop | Qt::AlignLeft);
    }
    QFont large = m_next->font();
    large.setPointSizeF(large.pointSizeF() * 1.2);
    large.setBold(true);
    m_next->setFont(large);
    auto* aim = new QHBoxLayout;
    aim->addWidget(new QLabel(tr("Push-ups on a bar, for"), this));
    aim->addWidget(m_fewest);
    aim->addWidget(new QLabel(tr("to"), this));
    aim->addWidget(m_most);
    aim->addWidget(new QLabel(tr("reps to the end"), this));
    aim->addStretch(1);
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(0, 6, 6, 0);
    layout->addLayout(aim);
    layout->addWidget(m_next);
    layout->addWidget(m_others);
    layout->addWidget(m_basis);
    layout->addStretch(1);
    layout->addWidget(makeReadings());
}

QWidget* PushUpPanel::makeReadings()
{
    m_hole->setObjectName(QStringLiteral("scaleHole"));
    m_hole->setAccessibleName(tr("Hole of the bar under the scale"));
    m_hole->setSpecialValueText(tr("floor"));
    m_hole->setPrefix(tr("hole "));
    m_lockedOut->setObjectName(QStringLiteral("scaleLockedOut"));
    m_lockedOut->setAccessibleName(tr("Scale, arms straight"));
    m_lockedOut->setPlaceholderText(tr("arms straight"));
    m_atChest->setObjectName(QStringLiteral("scaleAtChest"));
    m_atChest->setAccessibleName(tr("Scale, chest a fist over it"));
    m_atChest->setPlaceholderText(tr("chest a fist over it"));
    m_list->setObjectName(QStringLiteral("scaleReadings"));
    m_list->setAccessibleName(tr("Readings of the scale"));
    m_list->setMaximumHeight(4 * (m_list->fontMetrics().height() + 4));
    auto* add = new QPushButton(tr("Add"), this);
    add->setObjectName(QStringLiteral("scaleAdd"));
    connect(add, &QPushButton::clicked, this, &PushUpPanel::addReading);
    connect(m_atChest, &QLineEdit::returnPressed, this, &PushUpPanel::addReading);
    auto* removal = new QShortcut(QKeySequence::Delete, m_list);
    removal->setContext(Qt::WidgetShortcut);
    connect(removal, &QShortcut::activated, this, &PushUpPanel::removeReading);
    auto* line = new QHBoxLayout;
    line->addWidget(m_hole);
    line->addWidget(m_lockedOut);
    line->addWidget(m_atChest);
    line->addWidget(add);
    auto* box = new QWidget(this);
    auto* layout = new QVBoxLayout(box);
    layout->setContentsMargins(0, 0, 0, 0);
    auto* how = new QLabel(tr("A bathroom scale under both hands makes these numbers the person's "
                              "own: hold still with arms straight, then with the chest a fist over "
                              "it. The floor and one box are enough. Delete removes a reading."),
                           this);
    how->setWordWrap(true);
    layout->addWidget(how);
    layout->addLayout(line);
    layout->addWidget(m_line);
    layout->addWidget(m_list);
    return box;
}

void PushUpPanel::show(const MemberHistory& history, const Library& library)
{
    m_history = &history;
    m_library = &library;
    m_isStale = true;
    if (isVisible()) {
        refresh();
    }
}

void PushUpPanel::showEvent(QShowEvent* event)
{
    QWidget::showEvent(event);
    if (m_isStale) {
        refresh();
    }
}

// The rack of the person's push-up card, else the gym's first.
RackHoles PushUpPanel::rackOf(MemberId member)
{
    const Stations stations = storage::StationStore(m_workspace.logbook).all();
    m_isRackAssumed = stations.racks.empty();
    if (m_isRackAssumed) {
        return assumedRack().holes;
    }
    if (const Exercise* incline = withKey(*m_library, "incline-push-up")) {
        const auto card = storage::SetupStore(m_workspace.logbook).find(member, incline->id);
        const Rack* rack = card && card->rack ? stations.rack(*card->rack) : nullptr;
        if (rack != nullptr) {
            return rack->holes;
        }
    }
    return stations.racks.front().holes;
}

std::optional<Estimate> PushUpPanel::benchMaximum() const
{
    const Exercise* bench = withKey(*m_library, "barbell-bench-press");
    if (bench == nullptr) {
        return std::nullopt;
    }
    TargetQuestion question;
    question.exercise = bench->id;
    question.on = m_workspace.clock.today();
    const auto target = targetsFor(*m_history, *m_library, assumedKit(), {&question, 1}).front();
    if (!target || target->strength.isFromRelated) {
        return std::nullopt;
    }
    return target->strength.oneRepMax;
}

void PushUpPanel::refresh()
{
    if (m_history == nullptr) {
        return;
    }
    m_isStale = false;
    perform(m_workspace.prompter, [&] {
        const MemberId member = m_history->member.id;
        m_holes = rackOf(member);
        m_hole->setRange(0, m_holes.count);
        const auto sets = storage::SetStore(m_workspace.logbook).ofMember(member);
        m_readings = storage::ScaleStore(m_workspace.logbook).ofMember(member);
        const PushUpRecords records{*m_history, *m_library, sets, m_readings, benchMaximum()};
        PushUpQuestion question;
        question.rack = m_holes;
        question.on = m_workspace.clock.today();
        question.wanted = {static_cast<double>(m_fewest->value()),
                           static_cast<double>(std::max(m_fewest->value(), m_most->value()))};
        const PushUpReview review = reviewPushUps(records, question);
        std::vector<Phrase> next = nextPhrases(review, question.wanted);
        const QString last = words(next.back());
        next.pop_back();
        m_next->setText(next.empty() ? last : QStringLiteral("%1\n%2").arg(words(next), last));
        say(review);
        m_list->clear();
        for (const DatedReading& dated : m_readings) {
            const Length hands = dated.reading.pushUp.height;
            const QString where =
                hands == Length{} ? tr("floor") : tr("hands at %1").arg(plain(centimetres(hands)));
            m_list->addItem(tr("%1: %2, %3 arms straight, %4 at the chest")
                                .arg(plain(shortText(dated.day)),
                                     where,
                                     typedMass(dated.reading.lockedOut),
                                     typedMass(dated.reading.atChest)));
        }
        m_list->setVisible(!m_readings.empty());
    });
}

void PushUpPanel::say(const PushUpReview& review)
{
    QStringList lines;
    for (const PushUpRung& rung : review.others) {
        lines << words(phrases(rung));
    }
    m_others->setText(lines.join(QLatin1Char('\n')));
    QString basis = words(basisPhrases(review));
    if (m_isRackAssumed) {
        basis += QLatin1Char(' ') + tr("No rack is known: holes 5 cm apart from 30 cm up are "
                                       "assumed (page Gym).");
    }
    m_basis->setText(basis);
}

void PushUpPanel::addReading()
{
    if (m_history == nullptr) {
        return;
    }
    const auto lockedOut = parseTypedLoad(m_lockedOut->text().toStdString(), MassUnit::Kilogram);
    const auto atChest = parseTypedLoad(m_atChest->text().toStdString(), MassUnit::Kilogram);
    if (!lockedOut || !atChest) {
        m_line->setText(
            tr("Not kept: %1.").arg(words(lockedOut ? atChest.error() : lockedOut.error())));
        return;
    }
    DatedReading dated{m_workspace.clock.today(), {}};
    dated.reading.lockedOut = *lockedOut;
    dated.reading.atChest = *atChest;
    if (m_hole->value() > 0) {
        dated.reading.pushUp = {PushUpKind::HandsRaised, m_holes.height(m_hole->value()), {}};
    }
    const auto mass = bodyMassOn(*m_history, *m_library, dated.day);
    const Presser presser{m_history->member.sex,
                          Length{m_history->member.statureTenthMillimetres.value_or(0)},
                          mass ? mass->mass : Mass{}};
    const auto lever = calibrated(PersonalLever(), presser, dated.reading);
    if (!lever) {
        m_line->setText(tr("Not kept: %1.").arg(words(lever.error())));
        return;
    }
    m_line->clear();
    write(m_history->member.id, &dated, nullptr);
    m_lockedOut->clear();
    m_atChest->clear();
    m_lockedOut->setFocus(Qt::OtherFocusReason);
}

void PushUpPanel::removeReading()
{
    const int row = m_list->currentRow();
    if (m_history != nullptr && row >= 0 && row < static_cast<int>(m_readings.size())) {
        const DatedReading chosen = m_readings[static_cast<std::size_t>(row)];
        write(m_history->member.id, nullptr, &chosen);
    }
}

void PushUpPanel::write(MemberId member, const DatedReading* added, const DatedReading* removed)
{
    perform(m_workspace.prompter, [&] {
        storage::Action action(
            m_workspace.logbook, storage::ActionKind::ReadScale, m_workspace.clock.now());
        if (added != nullptr) {
            storage::ScaleStore::put(action, member, *added);
        }
        if (removed != nullptr) {
            storage::ScaleStore::remove(
                action, member, removed->day, removed->reading.pushUp.height);
        }
        m_workspace.notifier.announce(action.commit());
    });
    refresh();
}

} // namespace levelbar::ui
