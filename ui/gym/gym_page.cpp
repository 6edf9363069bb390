// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/gym/gym_page.h"

#include "core/gym/bar_loads.h"
#include "storage/gym_store.h"
#include "storage/station_store.h"
#include "ui/change_notifier.h"
#include "ui/floor/load_steps.h"
#include "ui/gym/station_panel.h"
#include "ui/perform.h"
#include "ui/words.h"

#include <QComboBox>
#include <QFormLayout>
#include <QHeaderView>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QShortcut>
#include <QSpinBox>
#include <QTabWidget>
#include <QTableView>
#include <QVBoxLayout>

#include <algorithm>

namespace levelbar::ui {

namespace {

constexpr int kSideWidth = 360;
constexpr std::size_t kMostLoadsTold = 60;

QString typedMass(const Mass& mass)
{
    return plain(mass.number() + " " + std::string(unitWord(mass.unit())));
}

} // namespace

GymPage::GymPage(Workspace& workspace, QWidget* parent)
    : QWidget(parent)
    , m_workspace(workspace)
    , m_kit(new KitModel(this))
    , m_table(new QTableView(this))
    , m_stations(new StationPanel(workspace, this))
    , m_halves(new QTabWidget(this))
    , m_what(new QComboBox(this))
    , m_mass(new QLineEdit(this))
    , m_count(new QSpinBox(this))
    , m_collars(new QLineEdit(this))
    , m_step(new QLineEdit(this))
    , m_effort(new QComboBox(this))
    , m_assumed(new QLabel(this))
    , m_loads(new QLabel(this))
    , m_line(new QLabel(this))
{
    setObjectName(QStringLiteral("gymPage"));
    setAccessibleName(tr("Gym"));
    makeLayout();
    connect(m_kit, &KitModel::edited, this, &GymPage::keep);
    connect(m_kit, &KitModel::goneMarked, this, &GymPage::keepGone);
    connect(m_kit, &KitModel::refused, this, &GymPage::refuse);
    connect(m_effort, &QComboBox::activated, this, &GymPage::keepEffort);
    for (QLineEdit* edit : {m_collars, m_step}) {
        connect(edit, &QLineEdit::editingFinished, this, &GymPage::keepRest);
    }
    connect(&workspace.notifier, &ChangeNotifier::changed, this, [this](const auto& change) {
        if (change.touchesLibrary) {
            refresh();
        }
    });
    setFocusProxy(m_table);
    refresh();
}

void GymPage::makeLayout()
{
    m_halves->setObjectName(QStringLiteral("gymHalves"));
    m_halves->setDocumentMode(true);
    m_halves->addTab(makeKit(), tr("&What is lifted"));
    m_halves->addTab(m_stations, tr("&Racks and benches"));
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(0, 6, 0, 0);
    layout->addWidget(m_halves);
}

QWidget* GymPage::makeKit()
{
    m_table->setObjectName(QStringLiteral("kitTable"));
    m_table->setAccessibleName(tr("What the gym owns"));
    m_table->setModel(m_kit);
    m_table->setSelectionBehavior(QAbstractItemView::SelectRows);
    m_table->setSelectionMode(QAbstractItemView::SingleSelection);
    m_table->setAlternatingRowColors(true);
    m_table->setShowGrid(false);
    m_table->setTabKeyNavigation(false);
    m_table->verticalHeader()->hide();
    m_table->verticalHeader()->setDefaultSectionSize(m_table->fontMetrics().height() + 10);
    m_table->horizontalHeader()->setStretchLastSection(true);
    m_table->horizontalHeader()->setDefaultSectionSize(130);
    auto* removal = new QShortcut(QKeySequence::Delete, m_table);
    removal->setContext(Qt::WidgetShortcut);
    connect(removal, &QShortcut::activated, this, &GymPage::removeChosen);
    m_assumed->setObjectName(QStringLiteral("kitAssumed"));
    m_loads->setObjectName(QStringLiteral("kitLoads"));
    m_line->setObjectName(QStringLiteral("kitLine"));
    for (QLabel* label : {m_assumed, m_loads, m_line}) {
        label->setWordWrap(true);
        label->setTextFormat(Qt::PlainText);
    }
    auto* title = new QLabel(tr("What this gym owns"), this);
    QFont large = title->font();
    large.setPointSizeF(large.pointSizeF() * 1.5);
    large.setBold(true);
    title->setFont(large);
    auto* left = new QVBoxLayout;
    left->addWidget(title);
    left->addWidget(m_assumed);
    left->addWidget(makeAddLine());
    left->addWidget(m_line);
    left->addWidget(m_table, 1);
    auto* half = new QWidget(this);
    auto* layout = new QHBoxLayout(half);
    layout->setContentsMargins(16, 10, 16, 10);
    layout->setSpacing(20);
    layout->addLayout(left, 1);
    layout->addWidget(makeChoices());
    return half;
}

QWidget* GymPage::makeAddLine()
{
    for (const PieceWord what :
         {PieceWord::Bar, PieceWord::Plate, PieceWord::Dumbbell, PieceWord::Kettlebell}) {
        m_what->addItem(KitModel::word(what), static_cast<int>(what));
    }
    m_what->setCurrentIndex(static_cast<int>(PieceWord::Plate));
    m_what->setObjectName(QStringLiteral("pieceWhat"));
    m_what->setAccessibleName(tr("Kind of piece"));
    m_mass->setObjectName(QStringLiteral("pieceMass"));
    m_mass->setAccessibleName(tr("Mass of the piece"));
    m_mass->setPlaceholderText(tr("2.5 or 45 lb"));
    m_mass->setMaximumWidth(150);
    m_count->setObjectName(QStringLiteral("pieceCount"));
    m_count->setAccessibleName(tr("How many pieces"));
    m_count->setRange(1, kMostPieces);
    m_count->setValue(2);
    auto* add = new QPushButton(tr("Add"), this);
    add->setObjectName(QStringLiteral("pieceAdd"));
    auto* removal = new QPushButton(tr("Remove"), this);
    removal->setObjectName(QStringLiteral("pieceRemove"));
    removal->setToolTip(tr("Removes the chosen line (Delete)"));
    connect(add, &QPushButton::clicked, this, &GymPage::addTyped);
    connect(m_mass, &QLineEdit::returnPressed, this, &GymPage::addTyped);
    connect(removal, &QPushButton::clicked, this, &GymPage::removeChosen);
    auto* line = new QWidget(this);
    auto* layout = new QHBoxLayout(line);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->addWidget(m_what);
    layout->addWidget(m_count);
    layout->addWidget(new QLabel(tr("of"), this));
    layout->addWidget(m_mass);
    layout->addWidget(add);
    layout->addStretch(1);
    layout->addWidget(removal);
    return line;
}

QWidget* GymPage::makeChoices()
{
    m_collars->setObjectName(QStringLiteral("kitCollars"));
    m_step->setObjectName(QStringLiteral("kitStep"));
    m_effort->setObjectName(QStringLiteral("effortScale"));
    m_effort->addItem(tr("reps in reserve"));
    m_effort->addItem(tr("RPE (10 less the reserve)"));
    auto* side = new QWidget(this);
    side->setFixedWidth(kSideWidth);
    auto* column = new QVBoxLayout(side);
    column->setContentsMargins(0, 0, 0, 0);
    auto* form = new QFormLayout;
    form->setRowWrapPolicy(QFormLayout::WrapAllRows);
    form->addRow(tr("Both collars of a bar together"), m_collars);
    form->addRow(tr("Step of machines and cables"), m_step);
    form->addRow(tr("Effort is typed and shown as"), m_effort);
    column->addLayout(form);
    column->addWidget(new QLabel(tr("The usual bar can be"), this));
    m_loads->setAlignment(Qt::AlignTop | Qt::AlignLeft);
    column->addWidget(m_loads, 1);
    return side;
}

void GymPage::refresh()
{
    perform(m_workspace.prompter, [&] {
        const storage::GymStore gym(m_workspace.logbook);
        const Kit kit = gym.kit();
        const int row = m_table->currentIndex().row();
        const Day today = m_workspace.clock.today();
        m_kit->show(kit, storage::StationStore(m_workspace.logbook).goneOn(today));
        m_table->selectRow(std::clamp(row, 0, std::max(0, m_kit->rowCount() - 1)));
        m_collars->setText(typedMass(kit.collars));
        m_step->setText(typedMass(kit.stackStep));
        m_effort->setCurrentIndex(gym.effortScale() == EffortScale::Rpe ? 1 : 0);
        m_assumed->setText(
            kit.isAssumed ? tr("Nobody has said yet what stands here, so this is assumed, as "
                               "many as needed. The first change makes it yours: say how many.")
                          : tr("Next loads land on these pieces only, less what is gone today."));
        tellLoads(gym.kitOn(today));
    });
}

void GymPage::tellLoads(const Kit& kit)
{
    const auto there = std::find_if(
        kit.bars.begin(), kit.bars.end(), [](const BarKind& b) { return b.count > 0; });
    if (there == kit.bars.end()) {
        m_loads->setText(tr("No bar is there today."));
        return;
    }
    const BarLoads loads(kit, *there);
    QStringList told;
    for (std::size_t place = 0; place < std::min(loads.size(), kMostLoadsTold); ++place) {
        told << plain(loads.at(place).total.number());
    }
    QString text = told.join(QStringLiteral(", "));
    if (loads.size() > kMostLoadsTold) {
        text = tr("%1 … up to %2").arg(text, typedMass(loads.at(loads.size() - 1).total));
    }
    m_loads->setText(text);
}

void GymPage::keep(const Kit& kit)
{
    m_line->clear();
    perform(m_workspace.prompter, [&] {
        storage::Action action(
            m_workspace.logbook, storage::ActionKind::EditGym, m_workspace.clock.now());
        storage::GymStore::setKit(action, kit);
        m_workspace.notifier.announce(action.commit());
    });
}

void GymPage::keepGone(const PieceKey& key, int count)
{
    m_line->clear();
    perform(m_workspace.prompter, [&] {
        storage::Action action(
            m_workspace.logbook, storage::ActionKind::MarkGone, m_workspace.clock.now());
        storage::StationStore::setGone(action, m_workspace.clock.today(), key, count);
        m_workspace.notifier.announce(action.commit());
    });
}

void GymPage::keepEffort(int place)
{
    perform(m_workspace.prompter, [&] {
        storage::Action action(
            m_workspace.logbook, storage::ActionKind::EditGym, m_workspace.clock.now());
        storage::GymStore::setEffortScale(action,
                                          place == 1 ? EffortScale::Rpe : EffortScale::Reserve);
        m_workspace.notifier.announce(action.commit());
    });
}

void GymPage::keepRest()
{
    Kit kit = m_kit->kit();
    const auto collars = parseTypedLoad(m_collars->text().toStdString(), kit.collars.unit());
    const auto step = parseTypedLoad(m_step->text().toStdString(), kit.stackStep.unit());
    if (!collars || !step) {
        refuse(words(collars ? step.error() : collars.error()));
        return;
    }
    if (*collars == kit.collars && *step == kit.stackStep) {
        return;
    }
    kit.collars = *collars;
    kit.stackStep = *step;
    kit.isAssumed = false;
    const auto checked = checkKit(kit);
    if (checked) {
        keep(*checked);
    } else {
        refuse(words(checked.error()));
    }
}

void GymPage::addTyped()
{
    const auto mass =
        parseTypedLoad(m_mass->text().toStdString(), m_kit->kit().bars.front().mass.unit());
    if (!mass) {
        refuse(words(mass.error()));
        return;
    }
    const KitLine line{
        static_cast<PieceWord>(m_what->currentData().toInt()), *mass, m_count->value(), {}};
    if (m_kit->add(line)) {
        m_mass->clear();
    }
    m_mass->setFocus(Qt::OtherFocusReason);
}

void GymPage::removeChosen()
{
    m_kit->remove(m_table->currentIndex().row());
}

void GymPage::refuse(const QString& sentence)
{
    m_line->setText(tr("Not kept: %1.").arg(sentence));
}

} // namespace levelbar::ui
